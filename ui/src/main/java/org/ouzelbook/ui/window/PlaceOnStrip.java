package org.ouzelbook.ui.window;

import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.ui.strip.HitArea;
import org.ouzelbook.ui.strip.Rect;
import org.ouzelbook.ui.strip.StripDrawing;
import org.ouzelbook.ui.strip.Subject;
import org.ouzelbook.ui.strip.Water;
import org.ouzelbook.ui.strip.Waters;

/** The place on the water where a point of the strip lies, as one would write it into a notebook line. */
final class PlaceOnStrip {
    private final SurveyRecords records;
    private final StripDrawing drawing;
    private final Waters waters;

    PlaceOnStrip(SurveyRecords records, StripDrawing drawing) {
        this.records = records;
        this.drawing = drawing;
        this.waters = Waters.of(records);
    }

    /**
     * A place on a river.
     *
     * @param water the river
     * @param chainage where on it
     */
    record Spot(Water water, Chainage chainage) {}

    /**
     * {@return the landmark or the river km at a point; empty beside the water}
     *
     * @param under what the drawing shows there
     * @param x to the right on the drawing, in pixels
     * @param y downwards, in pixels
     */
    Optional<String> words(Optional<HitArea> under, double x, double y) {
        Optional<Landmark> landmark = under.flatMap(area -> landmark(area.subject()));
        return landmark.map(Landmark::name).or(() -> spot(x, y).map(this::words));
    }

    private String words(Spot spot) {
        String km = String.format(Locale.ROOT, "%.2f", spot.chainage().km());
        return waters.list().size() == 1 ? km : spot.water().river().name() + " " + km;
    }

    /**
     * {@return the place on a river at a point; of rivers side by side, the one whose drawing is nearest; empty beside the water}
     *
     * @param x to the right on the drawing, in pixels
     * @param y downwards, in pixels
     */
    Optional<Spot> spot(double x, double y) {
        double metres = drawing.across().metres(x);
        Optional<Water> river = drawing.areas().stream()
                .filter(area -> river(area.subject()).isPresent())
                .min(Comparator.comparingDouble(area -> away(area.area(), x, y)))
                .flatMap((HitArea area) -> river(area.subject()))
                .flatMap(waters::of);
        return river.or(() -> waters.list().stream().findFirst())
                .filter(water -> metres >= water.mouthMetres())
                .map(water -> new Spot(water, new Chainage(metres - water.mouthMetres())))
                .filter(spot -> isOnLine(spot.water(), spot.chainage()));
    }

    private boolean isOnLine(Water water, Chainage chainage) {
        return records.rivers()
                .measuredLine(water.river().id())
                .map(line -> line.extent().contains(chainage))
                .orElse(true);
    }

    /** Up and down counts more than along the water, where a river may have nothing drawn. */
    private static double away(Rect area, double x, double y) {
        double across = Math.max(0, Math.max(area.x() - x, x - area.x() - area.width()));
        double down = Math.max(0, Math.max(area.y() - y, y - area.bottom()));
        return down * 1000 + across;
    }

    private Optional<Landmark> landmark(Subject subject) {
        return subject instanceof Subject.OfLandmark one
                ? records.landmarks().stream()
                        .filter(landmark -> landmark.id().equals(one.id()))
                        .findFirst()
                : Optional.empty();
    }

    private Optional<UUID> river(Subject subject) {
        if (subject instanceof Subject.OfTerritory territory) {
            return Optional.of(territory.riverId());
        }
        if (subject instanceof Subject.OfVisit one) {
            return records.visits().stream()
                    .filter(visit -> visit.id().equals(one.id()))
                    .findFirst()
                    .map(Visit::riverId);
        }
        if (subject instanceof Subject.OfSighting one) {
            return records.sightings().stream()
                    .filter(sighting -> sighting.id().equals(one.id()))
                    .findFirst()
                    .map((Sighting sighting) -> sighting.place().riverId());
        }
        if (subject instanceof Subject.OfSeason season) {
            return Optional.of(season.riverId());
        }
        return landmark(subject).map(landmark -> landmark.place().riverId());
    }
}
