package org.ouzelbook.stats.survey;

import java.time.Year;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.interval.GarwoodInterval;
import org.ouzelbook.stats.estimator.rate.RateComparison;
import org.ouzelbook.stats.estimator.rate.RateDifference;
import org.ouzelbook.stats.estimator.rate.ShownChange;
import org.ouzelbook.stats.survey.TerritoryMap.RiverMap;
import org.ouzelbook.tracker.domain.Message;

/**
 * Two densities held against each other: two seasons of one water, or two waters in one season; territories by rule over the km that
 * effective visits covered.
 *
 * @param from the one it starts from
 * @param to the other
 * @param ratio density of {@code to} over that of {@code from}, exactly, with the p-value of equal densities
 * @param difference density of {@code to} less that of {@code from}, per km
 * @param shown what change from {@code from} would have been shown; empty where nothing was counted or surveyed there
 * @param warnings what would mislead a reader who did not know it
 */
public record DensityChange(
        Side from,
        Side to,
        Answer<RateComparison> ratio,
        Answer<Estimate> difference,
        Optional<ShownChange> shown,
        List<Message> warnings) {
    private static final Set<String> OF_EFFORT = Set.of(
            "map.warning.noEffort", "map.warning.fewVisits", "map.warning.thinWater", "map.warning.lowEfficiency");

    /** Copies the warnings. */
    public DensityChange {
        warnings = List.copyOf(warnings);
    }

    /**
     * One of the two.
     *
     * @param season the calendar year
     * @param waters the rivers that were counted, or the reach
     * @param effectiveVisits days with effective visits, of each river
     * @param territories territories that count
     * @param surveyedKm km that effective visits covered
     * @param perKm territories per km
     */
    public record Side(
            int season,
            List<String> waters,
            List<Integer> effectiveVisits,
            int territories,
            double surveyedKm,
            Answer<Estimate> perKm) {
        private static Side of(TerritoryMap map, List<RiverMap> counted, Water water, double level) {
            int territories =
                    counted.stream().mapToInt(river -> river.count().likely()).sum();
            double km = counted.stream().mapToDouble(RiverMap::surveyedKm).sum();
            List<String> names = water.name()
                    .map(List::of)
                    .orElseGet(() ->
                            counted.stream().map(river -> river.river().name()).toList());
            return new Side(
                    map.season(),
                    names,
                    counted.stream().map(RiverMap::effectiveVisits).toList(),
                    territories,
                    km,
                    GarwoodInterval.of(territories, km, level));
        }
    }

    /**
     * {@return the change from one season to another, on the rivers that were counted in both}
     *
     * @param from territories of one season
     * @param to territories of the other, by the same rules
     * @param water the water that both maps are of
     * @param level level of the intervals, between 0 and 1
     */
    public static DensityChange ofSeasons(TerritoryMap from, TerritoryMap to, Water water, double level) {
        List<RiverMap> before = new ArrayList<>();
        List<RiverMap> after = new ArrayList<>();
        List<String> leftOut = new ArrayList<>();
        for (int i = 0; i < from.rivers().size(); i++) {
            RiverMap one = from.rivers().get(i);
            RiverMap other = to.rivers().get(i);
            if (one.isCounted() && other.isCounted()) {
                before.add(one);
                after.add(other);
            } else if (one.isCounted() || other.isCounted()) {
                leftOut.add(one.river().name());
            }
        }
        List<Message> warnings = new ArrayList<>();
        if (!leftOut.isEmpty()) {
            warnings.add(Message.of("density.warning.leftOut", leftOut));
        }
        for (int i = 0; i < before.size(); i++) {
            int earlier = before.get(i).effectiveVisits();
            int later = after.get(i).effectiveVisits();
            if (earlier != later) {
                warnings.add(Message.of(
                        "map.warning.otherEffort",
                        before.get(i).river().name(),
                        later,
                        Year.of(to.season()),
                        earlier,
                        Year.of(from.season())));
            }
        }
        return of(Side.of(from, before, water, level), Side.of(to, after, water, level), level, warnings, from, to);
    }

    /**
     * {@return the difference between two waters in one season}
     *
     * @param from territories on one water
     * @param to territories on the other, in the same season by the same rules
     * @param fromWater the one water
     * @param toWater the other
     * @param level level of the intervals, between 0 and 1
     */
    public static DensityChange ofWaters(
            TerritoryMap from, TerritoryMap to, Water fromWater, Water toWater, double level) {
        return of(
                Side.of(from, counted(from), fromWater, level),
                Side.of(to, counted(to), toWater, level),
                level,
                List.of(),
                from,
                to);
    }

    private static List<RiverMap> counted(TerritoryMap map) {
        return map.rivers().stream().filter(RiverMap::isCounted).toList();
    }

    private static DensityChange of(
            Side from, Side to, double level, List<Message> own, TerritoryMap one, TerritoryMap other) {
        boolean can = from.territories > 0
                && from.territories <= ShownChange.MOST
                && from.surveyedKm > 0
                && to.surveyedKm > 0;
        List<Message> warnings = Stream.of(
                        Stream.of(Message.of("density.warning.neighbours")),
                        own.stream(),
                        one.warnings().stream().filter(DensityChange::isOfEffort),
                        other.warnings().stream().filter(DensityChange::isOfEffort))
                .flatMap(each -> each)
                .distinct()
                .toList();
        return new DensityChange(
                from,
                to,
                from.waters.isEmpty() || to.waters.isEmpty()
                        ? Answer.notEstimable(Reason.NO_EXPOSURE)
                        : RateComparison.of(to.territories, to.surveyedKm, from.territories, from.surveyedKm, level),
                RateDifference.of(to.territories, to.surveyedKm, from.territories, from.surveyedKm, level),
                can
                        ? Optional.of(new ShownChange(level, from.territories, to.surveyedKm / from.surveyedKm))
                        : Optional.empty(),
                warnings);
    }

    /** Notes of a single map are the map’s business, except those that make its count no match for another. */
    private static boolean isOfEffort(Message warning) {
        return OF_EFFORT.contains(warning.key());
    }
}
