package org.ouzelbook.ui.window;

import java.time.Year;
import java.util.List;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.BirdScene;
import org.ouzelbook.ui.strip.PlaceScene;

/**
 * The finding of a season, or of all, in the few words that stand at the top.
 *
 * @param when the season or the seasons
 * @param what how much was walked
 * @param count the count itself
 * @param range its range and the count per km; blank where there is no count
 */
record Finding(String when, String what, String count, String range) {

    /**
     * {@return the finding of one season}
     *
     * @param map its territories
     */
    static Finding of(TerritoryMap map) {
        int visits =
                map.rivers().stream().mapToInt(TerritoryMap.RiverMap::visits).sum();
        double km = map.rivers().stream()
                .mapToDouble(TerritoryMap.RiverMap::surveyedKm)
                .sum();
        String when = Texts.word(Year.of(map.season()));
        String what = Texts.of("window.finding.walked", visits, km);
        return map.total()
                .map(total -> new Finding(
                        when,
                        what,
                        Texts.of("window.finding.territories", total.likely()),
                        Texts.of("window.finding.range", total.min(), total.max(), total.perKm())))
                .orElseGet(() -> new Finding(
                        when, what, Texts.of("window.finding.none"), Texts.of("window.finding.tooFewVisits")));
    }

    /**
     * {@return the finding of all seasons}
     *
     * @param maps their territories, by season; one or more
     */
    static Finding of(List<TerritoryMap> maps) {
        List<Integer> counts = maps.stream()
                .flatMap(map -> map.total().stream())
                .map(TerritoryMap.Total::likely)
                .toList();
        Year first = Year.of(maps.get(0).season());
        Year last = Year.of(maps.get(maps.size() - 1).season());
        String when = first.equals(last) ? Texts.word(first) : Texts.of("window.finding.seasons", first, last);
        String what = Texts.of("window.finding.counted", counts.size());
        if (counts.isEmpty()) {
            return new Finding(when, what, Texts.of("window.finding.none"), Texts.of("window.finding.tooFewVisits"));
        }
        int least = counts.stream().mapToInt(Integer::intValue).min().orElseThrow();
        int most = counts.stream().mapToInt(Integer::intValue).max().orElseThrow();
        return new Finding(
                when,
                what,
                least == most
                        ? Texts.of("window.finding.territories", least)
                        : Texts.of("window.finding.between", least, most),
                Texts.of("window.finding.inSeasons"));
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
                first.equals(last) ? Texts.word(first) : Texts.of("window.finding.seasons", first, last),
                Texts.of(
                        "window.finding.seen",
                        scene.seenOn(scene.passing()),
                        scene.passing().size()),
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
                Texts.of("window.finding.readIn", seasons));
    }
}
