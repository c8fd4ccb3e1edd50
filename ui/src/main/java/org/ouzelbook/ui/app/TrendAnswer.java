package org.ouzelbook.ui.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.trend.PooledTrend;
import org.ouzelbook.stats.estimator.trend.RankTrend;
import org.ouzelbook.stats.estimator.trend.SeasonTotal;
import org.ouzelbook.stats.estimator.trend.YearlyTrend;
import org.ouzelbook.stats.survey.CautionMessage;
import org.ouzelbook.stats.survey.CountTrend;
import org.ouzelbook.stats.survey.CountTrend.Counted;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.ModelledCount;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;

/**
 * Whether territories have become more or fewer, and how sure that is: the answer of {@code trend}. Its names are those that
 * scripts rely on. Where a number cannot be had it is empty, and {@code why} says why.
 *
 * @param species whose territories
 * @param settings every threshold of the mapping rules
 * @param seasons what was counted
 * @param model the model of the trend
 * @param perYear yearly change
 * @param wholePeriod change from the first to the last season
 * @param probabilityFalling probability that numbers fell
 * @param shareFromCounts share of the variance of the change that comes from not knowing the counts, 0 to 1; empty if only the
 *     rules counted
 * @param byRule the same change of the counts by rule; empty if only the rules counted
 * @param byNegativeBinomial the same change by the negative binomial model, called up where counts vary more than Poisson; empty where
 *     they do not
 * @param mannKendall rank test of territories per km
 * @param theilSen slope of territories per km a year, by ranks
 * @param smallestDetectable the smallest yearly fall that these visits would have shown
 * @param verdict what may be said
 * @param why why a number is missing
 * @param warnings what would mislead a reader who did not know it
 */
public record TrendAnswer(
        Species species,
        MapSettings settings,
        List<Season> seasons,
        Optional<Message> model,
        Percent perYear,
        Percent wholePeriod,
        OptionalDouble probabilityFalling,
        OptionalDouble shareFromCounts,
        Optional<OtherTrend> byRule,
        Optional<OtherTrend> byNegativeBinomial,
        MannKendall mannKendall,
        TheilSen theilSen,
        SmallestDetectable smallestDetectable,
        Message verdict,
        List<Message> why,
        List<Message> warnings) {
    private static final double POWER = 0.8;

    /** Where the limits of a count come from. */
    public enum Limits {
        /** The fewest and the most under other readings of the mapping rules. */
        RULES,
        /** The trend's model, which filled in water that was not counted. */
        MODEL
    }

    /**
     * One season.
     *
     * @param season the calendar year
     * @param count territories; empty for a gap
     * @param lower lower limit
     * @param upper upper limit
     * @param limits where the limits come from
     * @param byModel the count by the model; empty where it was not asked or cannot tell
     * @param surveyedKm km on the waters that were counted
     * @param effectiveVisits the fewest effective visits on any of them
     * @param imputed whether the model filled in water that was not counted
     * @param why why it is a gap
     */
    public record Season(
            int season,
            OptionalDouble count,
            OptionalDouble lower,
            OptionalDouble upper,
            Limits limits,
            Optional<ByModel> byModel,
            double surveyedKm,
            int effectiveVisits,
            boolean imputed,
            Optional<Message> why) {}

    /**
     * The count of a season by the model.
     *
     * @param estimate the expected number, pairs that no visit found included
     * @param lower lower limit
     * @param upper upper limit
     * @param level probability that the number lies between the limits, at least
     * @param unseen the expected number of those that no visit found
     */
    public record ByModel(double estimate, double lower, double upper, double level, double unseen) {
        static ByModel of(ModelledCount count) {
            return new ByModel(count.expected(), count.lower(), count.upper(), count.level(), count.unseen());
        }
    }

    /**
     * A change in percent.
     *
     * @param percent the change
     * @param lower lower limit
     * @param upper upper limit
     * @param level confidence level
     */
    public record Percent(OptionalDouble percent, OptionalDouble lower, OptionalDouble upper, double level) {}

    /**
     * The change by other counts or another law.
     *
     * @param perYear yearly change
     * @param wholePeriod change from the first to the last season
     * @param probabilityFalling probability that numbers fell
     */
    public record OtherTrend(Percent perYear, Percent wholePeriod, OptionalDouble probabilityFalling) {
        static OtherTrend of(Optional<YearlyTrend> line, double level) {
            return new OtherTrend(
                    TrendAnswer.percent(line.map(YearlyTrend::percentPerYear), level),
                    TrendAnswer.percent(line.map(YearlyTrend::percentOverPeriod), level),
                    Numbers.of(line, YearlyTrend::probabilityFalling));
        }
    }

    /**
     * The Mann–Kendall test.
     *
     * @param s rising pairs less falling pairs
     * @param tau the same as a share of all pairs, ties allowed for
     * @param p two-sided probability, exact where it can be
     */
    public record MannKendall(OptionalLong s, OptionalDouble tau, OptionalDouble p) {}

    /**
     * The Theil–Sen slope.
     *
     * @param slope territories per km a year
     * @param lower lower limit; empty where few seasons leave it open
     * @param upper upper limit
     */
    public record TheilSen(OptionalDouble slope, OptionalDouble lower, OptionalDouble upper) {}

    /**
     * The smallest fall that would have shown.
     *
     * @param percentPerYear the fall, a negative number
     * @param power with this probability
     */
    public record SmallestDetectable(OptionalDouble percentPerYear, double power) {}

    /**
     * {@return the trend over every season of the book, or those between the days asked about}
     *
     * @param book an open book
     * @param scope what is asked
     * @param change what is changed in the usual settings of the species
     * @param counting how territories are counted
     * @param progress hears how far the work has come, and may stop it
     * @throws WrongRequest if one season was asked about, or the book has no such river or reach
     */
    public static TrendAnswer of(
            Book book, Scope scope, UnaryOperator<MapSettings> change, Counting counting, Progress progress) {
        if (scope.season().isPresent()) {
            throw new WrongRequest(Message.of("app.trend.oneSeason"));
        }
        SurveyReading reading = SurveyReading.of(book, scope);
        List<Integer> seasons = reading.everySeason();
        MapSettings settings = change.apply(MapSettings.usualFor(scope.species()));
        List<Water> waters = List.of(reading.water());
        return of(
                CountTrend.of(
                        reading.records(),
                        scope.species(),
                        seasons,
                        settings,
                        waters,
                        scope.level(),
                        reading.modelled(reading.model(counting, settings, progress), seasons, waters, progress)),
                scope.level());
    }

    /**
     * {@return the answer that a trend gives}
     *
     * @param trend a trend
     * @param level confidence level of its intervals
     */
    public static TrendAnswer of(CountTrend trend, double level) {
        Optional<YearlyTrend> line = trend.line().found();
        Optional<RankTrend> ranks = trend.ranks().found();
        return new TrendAnswer(
                trend.species(),
                trend.settings(),
                seasons(trend),
                line.map(found -> Message.of(
                        "app.trend.model",
                        found.slope().method(),
                        found.slope().method().source())),
                percent(line.map(YearlyTrend::percentPerYear), level),
                percent(line.map(YearlyTrend::percentOverPeriod), level),
                Numbers.of(line, YearlyTrend::probabilityFalling),
                line.filter(PooledTrend.class::isInstance)
                        .map(pooled -> OptionalDouble.of(((PooledTrend) pooled).shareDrawn()))
                        .orElse(OptionalDouble.empty()),
                trend.isModelled() ? Optional.of(OtherTrend.of(trend.byRule().found(), level)) : Optional.empty(),
                trend.byNegativeBinomial().map(other -> OtherTrend.of(Optional.of(other), level)),
                new MannKendall(
                        ranks.map(found -> OptionalLong.of(found.s())).orElse(OptionalLong.empty()),
                        Numbers.of(ranks, RankTrend::tauB),
                        Numbers.of(ranks, found -> found.exactP().found().orElse(found.p()))),
                new TheilSen(
                        Numbers.of(ranks, found -> found.slope().value()),
                        Numbers.of(ranks, found -> found.slope().lower()),
                        Numbers.of(ranks, found -> found.slope().upper())),
                new SmallestDetectable(
                        Numbers.of(
                                line, found -> found.smallestDetectable(POWER).fall()),
                        POWER),
                trend.verdict().sentence(),
                why(trend),
                trend.warnings());
    }

    private static List<Message> why(CountTrend trend) {
        List<Message> why = new ArrayList<>();
        if (trend.line() instanceof Answer.NotEstimable<YearlyTrend> not) {
            why.add(CautionMessage.of(not.because()));
        }
        trend.line()
                .found()
                .filter(line -> line.percentOverPeriod().upper() == Double.POSITIVE_INFINITY)
                .ifPresent(line -> why.add(CautionMessage.of(Caution.of(Reason.NO_UPPER_LIMIT))));
        if (trend.ranks() instanceof Answer.NotEstimable<RankTrend> not) {
            why.add(CautionMessage.of(not.because()));
        }
        return why.stream().distinct().toList();
    }

    private static Percent percent(Optional<Estimate> estimate, double level) {
        return new Percent(
                Numbers.of(estimate, Estimate::value),
                Numbers.of(estimate, Estimate::lower),
                Numbers.of(estimate, Estimate::upper),
                level);
    }

    private static List<Season> seasons(CountTrend trend) {
        Map<Integer, SeasonTotal> filled = trend.byRule().found().stream()
                .flatMap(line -> line.totals().stream())
                .collect(Collectors.toMap(SeasonTotal::season, Function.identity()));
        return trend.seasons().stream()
                .map(total -> season(trend, total, Optional.ofNullable(filled.get(total.season()))))
                .toList();
    }

    private static Season season(CountTrend trend, CountTrend.SeasonTotals total, Optional<SeasonTotal> model) {
        List<Counted> waters = trend.counts().stream()
                .filter(counted -> counted.season() == total.season())
                .toList();
        boolean counted = total.count().isPresent();
        boolean imputed = counted && !total.notCounted().isEmpty() && model.isPresent();
        return new Season(
                total.season(),
                imputed
                        ? Numbers.of(model, SeasonTotal::filled)
                        : total.count().stream().asDoubleStream().findFirst(),
                imputed ? Numbers.of(model, season -> season.expected().lower()) : sum(waters, counted, Counted::min),
                imputed ? Numbers.of(model, season -> season.expected().upper()) : sum(waters, counted, Counted::max),
                imputed ? Limits.MODEL : Limits.RULES,
                total.model().map(ByModel::of),
                total.surveyedKm(),
                total.effectiveVisits(),
                imputed,
                counted
                        ? Optional.empty()
                        : waters.stream().flatMap(water -> water.gap().stream()).findFirst());
    }

    private static OptionalDouble sum(List<Counted> waters, boolean counted, ToDoubleFunction<Counted> number) {
        return counted
                ? OptionalDouble.of(waters.stream()
                        .filter(water -> water.gap().isEmpty())
                        .mapToDouble(number)
                        .sum())
                : OptionalDouble.empty();
    }
}
