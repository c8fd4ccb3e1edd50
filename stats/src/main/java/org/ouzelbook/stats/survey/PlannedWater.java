package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.ouzelbook.stats.estimator.power.CountPlan;
import org.ouzelbook.stats.survey.SurveyPlan.Surer;
import org.ouzelbook.stats.survey.SurveyPlan.Window;
import org.ouzelbook.stats.survey.SurveyPlan.Worth;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * The water of a river that was ever surveyed, and the days of this season on it: what one more visit is worth there, and when it fits.
 *
 * @param river name of the river
 * @param stretches the water
 * @param days the effective visits of the season
 */
record PlannedWater(String river, List<Stretch> stretches, List<Effort.Day> days) {
    /** Longer pieces are told in parts, in metres: about an hour's walk. Common practice, no source. */
    private static final double LONGEST_PIECE = 3000;

    PlannedWater {
        stretches = List.copyOf(stretches);
        days = List.copyOf(days);
    }

    static PlannedWater of(SurveyRecords records, River river, CountTrend trend, List<TerritoryMap> maps, int season) {
        List<Stretch> ever = Stretch.union(maps.stream()
                .flatMap(map -> map.rivers().stream())
                .filter(map -> map.river().id().equals(river.id()))
                .flatMap(map -> map.surveyed().stream())
                .toList());
        return new PlannedWater(
                river.name(),
                ever,
                Effort.of(records.visits(), river.id(), trend.species(), season, trend.settings())
                        .effective());
    }

    /** A first visit finds nothing twice, but is the way there: it is worth half of what two visits bring. */
    List<Worth> worth(CountPlan present, double perKm, Optional<NextVisit> next) {
        List<Worth> worth = new ArrayList<>();
        for (Stretch piece : pieces()) {
            int visits = visits(piece);
            double gain = present.withVisits(visits + 1).shareCounted()
                    - (visits == 0 ? 0 : present.withVisits(visits).shareCounted());
            double half = visits == 0 ? present.withVisits(2).shareCounted() / 2 : 0;
            worth.add(new Worth(
                    river,
                    piece,
                    visits,
                    Math.max(gain, half) * perKm * piece.length() / 1000,
                    next.map(visit -> Surer.of(visit.of(piece)))));
        }
        return worth;
    }

    private int visits(Stretch piece) {
        return (int) days.stream()
                .filter(day -> day.walked().stream().anyMatch(walked -> walked.contains(piece.middle())))
                .count();
    }

    private List<Stretch> pieces() {
        TreeSet<Double> ends = new TreeSet<>();
        for (Stretch stretch : stretches) {
            ends.add(stretch.lower().metres());
            ends.add(stretch.upper().metres());
        }
        days.forEach(day -> day.walked().forEach(walked -> {
            ends.add(walked.lower().metres());
            ends.add(walked.upper().metres());
        }));
        double[] sorted = ends.stream().mapToDouble(Double::doubleValue).toArray();
        List<Stretch> pieces = new ArrayList<>();
        for (int i = 1; i < sorted.length; i++) {
            add(pieces, new Stretch(new Chainage(sorted[i - 1]), new Chainage(sorted[i])));
        }
        return pieces.stream().flatMap(PlannedWater::parts).toList();
    }

    private static Stream<Stretch> parts(Stretch piece) {
        int parts = (int) Math.ceil(piece.length() / LONGEST_PIECE);
        double length = piece.length() / parts;
        double lower = piece.lower().metres();
        return IntStream.range(0, parts)
                .mapToObj(i -> new Stretch(
                        new Chainage(lower + i * length),
                        i == parts - 1 ? piece.upper() : new Chainage(lower + (i + 1) * length)));
    }

    /** Pieces side by side with as many visits are one. */
    private void add(List<Stretch> pieces, Stretch piece) {
        boolean surveyed = stretches.stream().anyMatch(stretch -> stretch.contains(piece.middle()));
        Stretch last = pieces.isEmpty() ? piece : pieces.get(pieces.size() - 1);
        if (!surveyed) {
            return;
        }
        if (!pieces.isEmpty() && last.upper().equals(piece.lower()) && visits(last) == visits(piece)) {
            pieces.set(pieces.size() - 1, new Stretch(last.lower(), piece.upper()));
        } else {
            pieces.add(piece);
        }
    }

    /** Days for the visits that are still wanted, as far as the season has room for them. */
    List<Window> windows(MapSettings settings, int season, LocalDate today, int wanted) {
        LocalDate start = settings.seasonFrom().atYear(season);
        LocalDate end = settings.seasonTo().atYear(season);
        int spacing = Math.max(1, settings.minimumSpreadDays());
        LocalDate earliest = today.isAfter(start) ? today : start;
        if (!days.isEmpty()) {
            LocalDate after = days.get(days.size() - 1).date().plusDays(spacing);
            earliest = after.isAfter(earliest) ? after : earliest;
        }
        int left = stretches.isEmpty() ? 0 : Math.max(0, wanted - days.size());
        long room = ChronoUnit.DAYS.between(earliest, end);
        int fit = (int) Math.min(left, room < 0 ? 0 : room / spacing + 1);
        List<Window> windows = new ArrayList<>();
        for (int i = 0; i < fit; i++) {
            long step = fit == 1 ? 0 : Math.max(spacing, room / fit);
            LocalDate from = earliest.plusDays(step * i);
            LocalDate to = i == fit - 1 ? end : from.plusDays(Math.max(0, step - spacing));
            windows.add(new Window(river, days.size() + i + 1, from, to));
        }
        return windows;
    }
}
