package org.ouzelbook.ui.window;

import java.time.Year;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.BirdScene;
import org.ouzelbook.ui.strip.PlaceScene;

/**
 * The finding of a season, or of all, in the few words that stand at the top. What the model counts comes first where it has
 * counted, and the count by the mapping rules stands beside it.
 *
 * @param when the season or the seasons
 * @param what how much was walked
 * @param count the count itself
 * @param range its range and the count per km; blank where there is no count
 * @param beside who counted, and what the other way of counting says; blank where nothing was counted
 */
record Finding(String when, String what, String count, String range, String beside) {

    /**
     * {@return the finding of one season}
     *
     * @param map its territories
     * @param model what the model counts
     */
    static Finding of(TerritoryMap map, ModelFigures.Told model) {
        int visits =
                map.rivers().stream().mapToInt(TerritoryMap.RiverMap::visits).sum();
        double km = map.rivers().stream()
                .mapToDouble(TerritoryMap.RiverMap::surveyedKm)
                .sum();
        String when = Texts.word(Year.of(map.season()));
        String what = Texts.of("window.finding.walked", visits, km);
        Optional<TerritoryMap.Total> total = map.total();
        if (total.isEmpty()) {
            return uncounted(when, what);
        }
        TerritoryMap.Total rules = total.get();
        return model.counts()
                .flatMap(counts -> counts.total(map))
                .map(counted -> new Finding(
                        when,
                        what,
                        Texts.of("window.finding.territories", Math.round(counted.expected())),
                        range(
                                counted.lower(),
                                counted.upper(),
                                rules.surveyedKm() > 0 ? counted.expected() / rules.surveyedKm() : 0),
                        byModel(
                                model.standing(),
                                Texts.of("window.finding.byRules", rules.likely(), rules.min(), rules.max()))))
                .orElseGet(() -> new Finding(
                        when,
                        what,
                        Texts.of("window.finding.territories", rules.likely()),
                        range(rules.min(), rules.max(), rules.perKm()),
                        byRulesAlone(model.standing())));
    }

    /** The range and the count per km; the latter alone where there is but one number. */
    static String range(long lower, long upper, double perKm) {
        return lower < upper
                ? Texts.of("window.finding.range", lower, upper, perKm)
                : Texts.of("window.finding.perKm", perKm);
    }

    private static Finding uncounted(String when, String what) {
        return new Finding(when, what, Texts.of("window.finding.none"), Texts.of("window.finding.tooFewVisits"), "");
    }

    /** That the model has counted, perhaps before the last change, and what the rules say. */
    private static String byModel(ModelFigures.Standing standing, String rules) {
        return Texts.of(
                standing == ModelFigures.Standing.COUNTED ? "window.finding.byModel" : "window.finding.byModelBefore",
                rules);
    }

    /** Why only the rules have counted. */
    private static String byRulesAlone(ModelFigures.Standing standing) {
        return Texts.of(
                switch (standing) {
                    case COUNTING -> "window.finding.modelCounts";
                    case STOPPED -> "window.finding.modelStopped";
                    case COUNTED -> "window.finding.modelCannot";
                });
    }

    /**
     * {@return the finding of all seasons}
     *
     * @param maps their territories, by season; one or more
     * @param model what the model counts
     */
    static Finding of(List<TerritoryMap> maps, ModelFigures.Told model) {
        List<TerritoryMap> counted =
                maps.stream().filter(map -> map.total().isPresent()).toList();
        Year first = Year.of(maps.get(0).season());
        Year last = Year.of(maps.get(maps.size() - 1).season());
        String when = seasons(first, last);
        String what = Texts.of("window.finding.counted", counted.size());
        if (counted.isEmpty()) {
            return uncounted(when, what);
        }
        List<Long> byRules = counted.stream()
                .map(map -> (long) map.total().orElseThrow().likely())
                .toList();
        List<Long> byModel = counted.stream()
                .flatMap(map -> model.counts().flatMap(counts -> counts.total(map)).stream())
                .map(one -> Math.round(one.expected()))
                .toList();
        boolean modelled = byModel.size() == counted.size();
        return new Finding(
                when,
                what,
                between(modelled ? byModel : byRules),
                Texts.of("window.finding.inSeasons"),
                modelled
                        ? byModel(
                                model.standing(),
                                least(byRules) == most(byRules)
                                        ? Texts.of("window.finding.seasonByRules", least(byRules))
                                        : Texts.of("window.finding.seasonsByRules", least(byRules), most(byRules)))
                        : byRulesAlone(model.standing()));
    }

    /** {@return the first and the last season in words; of one alone, that one} */
    static String seasons(Year first, Year last) {
        return first.equals(last) ? Texts.word(first) : Texts.of("window.finding.seasons", first, last);
    }

    private static String between(List<Long> counts) {
        return least(counts) == most(counts)
                ? Texts.of("window.finding.territories", least(counts))
                : Texts.of("window.finding.between", least(counts), most(counts));
    }

    private static long least(List<Long> counts) {
        return Collections.min(counts);
    }

    private static long most(List<Long> counts) {
        return Collections.max(counts);
    }

    /**
     * {@return the finding of one place over the years}
     *
     * @param scene what was ever seen there
     */
    static Finding of(PlaceScene scene) {
        Year first = Year.of(scene.years().get(0));
        Year last = Year.of(scene.years().get(scene.years().size() - 1));
        return new Finding(
                scene.place().name(),
                seasons(first, last),
                Texts.of(
                        "window.finding.seen",
                        scene.seenOn(scene.passing()),
                        scene.passing().size()),
                "",
                "");
    }

    /**
     * {@return the finding of one bird}
     *
     * @param scene its life
     */
    static Finding of(BirdScene scene) {
        long seasons = scene.readings().stream()
                .map(reading -> reading.sighting().date().getYear())
                .distinct()
                .count();
        return new Finding(
                scene.bird().label(),
                Texts.of("window.finding.ringedBird"),
                Texts.of("window.finding.read", scene.readings().size()),
                Texts.of("window.finding.readIn", seasons),
                "");
    }
}
