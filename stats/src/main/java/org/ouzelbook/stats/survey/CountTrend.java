package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.function.Function;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.trend.LineTrend;
import org.ouzelbook.stats.estimator.trend.PooledTrend;
import org.ouzelbook.stats.estimator.trend.RankTrend;
import org.ouzelbook.stats.estimator.trend.SeasonCount;
import org.ouzelbook.stats.estimator.trend.TrendSettings;
import org.ouzelbook.stats.estimator.trend.YearlyTrend;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Species;

/**
 * Whether the territories of a species have become more or fewer, from the maps of several seasons, and how sure that is.
 *
 * <p>The trend is the same percentage every year at every water, with the surveyed km as the base; a season with fewer than
 * two effective visits is a gap, not a zero. The verdict follows {@link Verdict}.
 *
 * @param species whose territories
 * @param settings the thresholds of the maps
 * @param counts what was counted, by season, then by water
 * @param seasons the counted seasons in all, and the gaps between them
 * @param line the log-linear trend, or why there is none: pooled over maps drawn from the model, or where the model was not
 *     asked, by rule
 * @param byRule the same of the counts by rule
 * @param byNegativeBinomial the same as {@code line} by the negative binomial model; empty unless counts by rule vary more than Poisson
 * @param ranks the rank trend of territories per km of the waters counted every time, or why there is none
 * @param leastSquares the same by least squares on the logs of those densities: a check by another error model
 * @param verdict what may be said
 * @param warnings what would mislead a reader who did not know it
 */
public record CountTrend(
        Species species,
        MapSettings settings,
        List<Counted> counts,
        List<SeasonTotals> seasons,
        Answer<YearlyTrend> line,
        Answer<YearlyTrend> byRule,
        Optional<YearlyTrend> byNegativeBinomial,
        Answer<RankTrend> ranks,
        Optional<LeastSquares> leastSquares,
        Verdict verdict,
        List<Message> warnings) {
    /** With fewer effective visits than this a season is not counted. Common practice, no source. */
    public static final int VISITS_TO_COUNT = 2;

    /** Copies the lists. */
    public CountTrend {
        counts = List.copyOf(counts);
        seasons = List.copyOf(seasons);
        warnings = List.copyOf(warnings);
    }

    /**
     * One water in one season.
     *
     * @param season the calendar year
     * @param water name of the river, and of the reach if it is one
     * @param count territories by rule; empty for a gap
     * @param min the fewest under any reading of the rules
     * @param max the most under any reading of the rules
     * @param surveyedKm km that effective visits covered
     * @param visits visits of the season, effective or not
     * @param effectiveVisits days with effective visits on this water
     * @param model territories by the model; empty for a gap, and where the model was not asked or cannot tell
     * @param gap why it is not counted; empty if it is
     */
    public record Counted(
            int season,
            String water,
            OptionalLong count,
            int min,
            int max,
            double surveyedKm,
            int visits,
            int effectiveVisits,
            Optional<ModelledCount> model,
            Optional<Message> gap) {}

    /**
     * All waters of one season.
     *
     * @param season the calendar year
     * @param count territories by rule on the waters that were counted; empty if none was
     * @param model territories by the model on the same waters; empty where it was not asked or cannot tell
     * @param surveyedKm their surveyed km
     * @param effectiveVisits the fewest effective visits on any of them; 0 if none was counted
     * @param notCounted waters that were not counted
     */
    public record SeasonTotals(
            int season,
            OptionalLong count,
            Optional<ModelledCount> model,
            double surveyedKm,
            int effectiveVisits,
            List<String> notCounted) {
        /** Copies the list. */
        public SeasonTotals {
            notCounted = List.copyOf(notCounted);
        }
    }

    /**
     * A straight line through the logs of the densities, by least squares, with limits from Student's t.
     *
     * @param percentPerYear yearly change in percent
     * @param lower lower limit
     * @param upper upper limit
     */
    public record LeastSquares(double percentPerYear, double lower, double upper) {}

    /**
     * {@return the trend of a species, of the counts by rule alone}
     *
     * @param records the records of the book
     * @param species whose territories
     * @param seasons calendar years, in order
     * @param settings the thresholds of the maps
     * @param waters the waters to count, none overlapping another; {@link Water#ALL} counts each river by itself
     * @param level level of the intervals, between 0 and 1
     */
    public static CountTrend of(
            SurveyRecords records,
            Species species,
            List<Integer> seasons,
            MapSettings settings,
            List<Water> waters,
            double level) {
        return of(records, species, seasons, settings, waters, level, ModelledCounts.NONE);
    }

    /**
     * {@return the trend that maps show, of the counts by rule alone}
     *
     * @param records the records that the maps were made from
     * @param maps maps of one species by the same settings, one a season, by season; one or more
     * @param water the water that they were made for
     * @param level level of the intervals, between 0 and 1
     * @throws IllegalArgumentException if there is no map
     */
    public static CountTrend of(SurveyRecords records, List<TerritoryMap> maps, Water water, double level) {
        return of(records, maps, water, level, ModelledCounts.NONE);
    }

    /**
     * {@return the trend of a species}
     *
     * @param records the records of the book
     * @param species whose territories
     * @param seasons calendar years, in order
     * @param settings the thresholds of the maps
     * @param waters the waters to count, none overlapping another; {@link Water#ALL} counts each river by itself
     * @param level level of the intervals, between 0 and 1
     * @param modelled what the model counts on the same waters; {@link ModelledCounts#NONE} for the counts by rule alone
     */
    public static CountTrend of(
            SurveyRecords records,
            Species species,
            List<Integer> seasons,
            MapSettings settings,
            List<Water> waters,
            double level,
            ModelledCounts modelled) {
        return of(SeasonMaps.of(records, species, settings), seasons, waters, level, modelled, Progress.NONE);
    }

    /**
     * {@return the trend of a species}
     *
     * @param maps the maps, those that are there and those to be made
     * @param seasons calendar years, in order
     * @param waters the waters to count, none overlapping another; {@link Water#ALL} counts each river by itself
     * @param level level of the intervals, between 0 and 1
     * @param modelled what the model counts on the same waters; {@link ModelledCounts#NONE} for the counts by rule alone
     * @param progress hears how far the mapping has come, and may stop it
     * @throws java.util.concurrent.CancellationException if it is stopped
     */
    public static CountTrend of(
            SeasonMaps maps,
            List<Integer> seasons,
            List<Water> waters,
            double level,
            ModelledCounts modelled,
            Progress progress) {
        return fitted(
                maps.records(),
                maps.species(),
                seasons,
                maps.settings(),
                maps.all(seasons, waters, progress),
                level,
                modelled);
    }

    /**
     * {@return the trend that maps show}
     *
     * @param records the records that the maps were made from
     * @param maps maps of one species by the same settings, one a season, by season; one or more
     * @param water the water that they were made for
     * @param level level of the intervals, between 0 and 1
     * @param modelled what the model counts on the same water; {@link ModelledCounts#NONE} for the counts by rule alone
     * @throws IllegalArgumentException if there is no map
     */
    public static CountTrend of(
            SurveyRecords records, List<TerritoryMap> maps, Water water, double level, ModelledCounts modelled) {
        List<WaterMap> mapped = WaterMap.of(maps, water);
        TerritoryMap first = maps.get(0);
        List<Integer> seasons = maps.stream().map(TerritoryMap::season).toList();
        return fitted(records, first.species(), seasons, first.settings(), mapped, level, modelled);
    }

    private static CountTrend fitted(
            SurveyRecords records,
            Species species,
            List<Integer> seasons,
            MapSettings settings,
            List<WaterMap> maps,
            double level,
            ModelledCounts modelled) {
        List<Counted> counts = SeasonCounts.of(maps, modelled);
        List<SeasonTotals> totals = totals(seasons, counts);
        TrendSettings judged = new TrendSettings(level, TrendSettings.Spread.AT_LEAST_POISSON);
        Answer<LineTrend> ofRules = LineTrend.of(byRule(counts), judged);
        Answer<YearlyTrend> byRule = ofRules.map(found -> found);
        List<List<SeasonCount>> drawn = drawn(counts);
        Answer<YearlyTrend> line =
                drawn.isEmpty() ? byRule : PooledTrend.of(drawn, judged).map(found -> found);
        ComparableDensities comparable = ComparableDensities.of(counts);
        Optional<LeastSquares> leastSquares = comparable.leastSquares(level);
        int counted =
                (int) totals.stream().filter(total -> total.count().isPresent()).count();
        Verdict verdict = Verdict.of(counted, line);
        return new CountTrend(
                species,
                settings,
                counts,
                totals,
                line,
                byRule,
                ofRules.found()
                        .filter(found -> found.fit().isOverdispersed())
                        .flatMap(found -> negativeBinomial(byRule(counts), drawn, level)),
                comparable.ranks(level),
                leastSquares,
                verdict,
                TrendWarnings.of(settings, species, records, counts, totals, byRule, leastSquares));
    }

    private static Optional<YearlyTrend> negativeBinomial(
            List<SeasonCount> byRule, List<List<SeasonCount>> drawn, double level) {
        TrendSettings judged = new TrendSettings(level, TrendSettings.Spread.NEGATIVE_BINOMIAL);
        return drawn.isEmpty()
                ? LineTrend.of(byRule, judged).map(found -> (YearlyTrend) found).found()
                : PooledTrend.of(drawn, judged)
                        .map(found -> (YearlyTrend) found)
                        .found();
    }

    /** The counts once for each drawn map; none if the model does not tell every count. */
    private static List<List<SeasonCount>> drawn(List<Counted> counts) {
        List<Counted> counted =
                counts.stream().filter(one -> one.gap().isEmpty()).toList();
        if (counted.isEmpty() || counted.stream().anyMatch(one -> one.model().isEmpty())) {
            return List.of();
        }
        int draws = counted.get(0).model().orElseThrow().draws().size();
        List<List<SeasonCount>> sets = new ArrayList<>();
        for (int i = 0; i < draws; i++) {
            int draw = i;
            sets.add(series(
                    counts,
                    one -> one.model()
                            .map(model -> OptionalLong.of(model.draws().get(draw)))
                            .orElse(OptionalLong.empty())));
        }
        return sets;
    }

    /** {@return whether the line is that of the model's counts} */
    public boolean isModelled() {
        return !drawn(counts).isEmpty();
    }

    private static List<SeasonCount> byRule(List<Counted> counts) {
        return series(counts, Counted::count);
    }

    private static List<SeasonCount> series(List<Counted> counts, Function<Counted, OptionalLong> count) {
        return counts.stream()
                .filter(counted -> counted.surveyedKm() > 0)
                .map(counted -> new SeasonCount(
                        counted.water(),
                        counted.season(),
                        count.apply(counted),
                        OptionalDouble.of(counted.surveyedKm())))
                .toList();
    }

    private static List<SeasonTotals> totals(List<Integer> seasons, List<Counted> counts) {
        TreeMap<Integer, List<Counted>> bySeason = new TreeMap<>();
        seasons.forEach(season -> bySeason.put(season, new ArrayList<>()));
        counts.forEach(counted -> bySeason.computeIfAbsent(counted.season(), season -> new ArrayList<>())
                .add(counted));
        List<SeasonTotals> totals = new ArrayList<>();
        bySeason.forEach((season, ofSeason) -> totals.add(total(season, ofSeason)));
        return totals;
    }

    private static SeasonTotals total(int season, List<Counted> ofSeason) {
        List<Counted> done =
                ofSeason.stream().filter(counted -> counted.gap().isEmpty()).toList();
        return new SeasonTotals(
                season,
                done.isEmpty()
                        ? OptionalLong.empty()
                        : OptionalLong.of(done.stream()
                                .mapToLong(counted -> counted.count().orElseThrow())
                                .sum()),
                ModelledCounts.together(done.stream().map(Counted::model).toList()),
                done.stream().mapToDouble(Counted::surveyedKm).sum(),
                done.stream().mapToInt(Counted::effectiveVisits).min().orElse(0),
                ofSeason.stream()
                        .filter(counted -> counted.gap().isPresent())
                        .map(Counted::water)
                        .toList());
    }
}
