package org.ouzelbook.stats.simulate.skerra;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.ouzelbook.stats.simulate.Draws;
import org.ouzelbook.stats.simulate.fieldwork.SimulatedSurvey;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.river.MeasuredLine;

/** The clean records of Skerra, with what a writer of files looks up in them. */
final class SkerraRecords {
    private static final double PHONE_ERROR_METRES = 6;
    private static final double METRES_PER_DEGREE = 111_270;

    final Skerra skerra = new Skerra();
    final SimulatedSurvey survey = SimulatedSurvey.of(SkerraSurvey.settings(skerra), Skerra.SEED);
    private final Map<UUID, String> labels =
            survey.sightings().stream().collect(Collectors.toMap(Sighting::id, Sighting::label));
    private final Map<UUID, MeasuredLine> lines = new HashMap<>(Map.of(
            Skerra.ARREL, skerra.line(Skerra.ARREL),
            Skerra.SORN, skerra.line(Skerra.SORN)));

    List<Visit> visits(int season) {
        return survey.visits().stream()
                .filter(visit -> visit.label().startsWith(season + "-"))
                .toList();
    }

    List<Sighting> sightings(int season) {
        return survey.sightings().stream()
                .filter(sighting -> sighting.label().startsWith(season + "-"))
                .toList();
    }

    /** The label of the visit of a sighting. */
    String visit(Sighting sighting) {
        return sighting.label().substring(0, sighting.label().lastIndexOf('-'));
    }

    String simultaneousWith(Sighting sighting) {
        return sighting.simultaneousWith().stream()
                .map(id -> Optional.ofNullable(labels.get(id)).orElseThrow())
                .sorted()
                .collect(Collectors.joining("; "));
    }

    /** Where a phone believes the bird to be. */
    GeoPoint fix(Sighting sighting) {
        Draws draws = Draws.of(Skerra.SEED).branch("fix", sighting.label());
        MeasuredLine line =
                Optional.ofNullable(lines.get(sighting.place().riverId())).orElseThrow();
        double metres = Math.min(sighting.place().chainage().metres(), line.length());
        GeoPoint point = line.point(new Chainage(metres)).orElseThrow();
        double north = draws.normal(0, PHONE_ERROR_METRES) / METRES_PER_DEGREE;
        double east = draws.normal(0, PHONE_ERROR_METRES)
                / (METRES_PER_DEGREE * StrictMath.cos(StrictMath.toRadians(point.latitude())));
        return new GeoPoint(point.latitude() + north, point.longitude() + east);
    }
}
