package org.ouzelbook.ui.app.estimate;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.trend.LineTrend;
import org.ouzelbook.stats.estimator.trend.SeasonEffects;
import org.ouzelbook.stats.estimator.trend.SeasonTotal;
import org.ouzelbook.stats.estimator.trend.TrendFit;
import org.ouzelbook.stats.estimator.trend.TrendSettings;
import org.ouzelbook.stats.estimator.trend.TrendSettings.Spread;
import org.ouzelbook.stats.survey.CautionMessage;
import org.ouzelbook.tracker.domain.Message;

/**
 * The log-linear trend of a table with the columns {@code site}, {@code year}, {@code count} and, if wished, {@code km}. A row
 * without a count says that nobody counted.
 */
public final class EstimateTrend {
    private static final double POWER = 0.8;
    private static final long MOST_COUNTS_TWICE = 20_000;

    private EstimateTrend() {}

    /**
     * A straight line on the log scale.
     *
     * @param model how it was computed
     * @param source where that was published
     * @param n counts at sites that ever had birds
     * @param logLikelihood of Poisson counts, with the log y! terms
     * @param aic Akaike's criterion
     * @param aicc the same for small samples; empty with too few counts
     * @param parameters the slope, and the dispersion; effects of sites are not listed
     * @param perYear change a year
     * @param wholePeriod change from the first season counted to the last
     * @param probabilityFalling probability that the direction is down
     * @param byNegativeBinomial the same by the negative binomial model, called up where counts vary more than Poisson and nothing else was
     *     asked for
     * @param smallestDetectable the smallest fall a year that counts at these sites and seasons would show
     * @param totals all sites together, as the line expects them and as counted with missing counts filled
     * @param dispersion Pearson's X²/df; empty without degrees of freedom
     * @param scale what variances were multiplied by
     * @param degreesOfFreedom counts less parameters
     * @param emptySitesCount whether sites that never had any birds add to the degrees of freedom
     * @param negativeBinomial share of the squared mean that the variance has beyond the mean; empty unless estimated
     * @param serialCorrelation correlation of counts a season apart; empty unless estimated
     * @param robust whether limits hold whatever ties counts of one site together
     * @param deviance twice the log-likelihood below that of a perfect fit
     * @param sites sites with birds
     * @param emptySites sites that never had any, which take no part
     * @param level level of all limits
     * @param warnings what else to know
     */
    public record Line(
            Message model,
            String source,
            long n,
            double logLikelihood,
            double aic,
            OptionalDouble aicc,
            List<Parameter> parameters,
            Percent perYear,
            Percent wholePeriod,
            double probabilityFalling,
            Optional<OtherLaw> byNegativeBinomial,
            Detectable smallestDetectable,
            List<Total> totals,
            OptionalDouble dispersion,
            double scale,
            double degreesOfFreedom,
            boolean emptySitesCount,
            OptionalDouble negativeBinomial,
            OptionalDouble serialCorrelation,
            boolean robust,
            double deviance,
            int sites,
            List<String> emptySites,
            double level,
            List<Message> warnings)
            implements TableAnswer {}

    /**
     * An effect for each season.
     *
     * @param model how it was computed
     * @param source where that was published
     * @param n counts at sites that ever had birds, in seasons with birds
     * @param logLikelihood of Poisson counts, with the log y! terms
     * @param aic Akaike's criterion
     * @param aicc the same for small samples; empty with too few counts
     * @param parameters each season against the first, and the dispersion; effects of sites are not listed
     * @param totals all sites together, missing counts filled
     * @param dispersion Pearson's X²/df; empty without degrees of freedom
     * @param scale what variances were multiplied by
     * @param degreesOfFreedom counts less parameters
     * @param emptySitesCount whether sites that never had any birds add to the degrees of freedom
     * @param negativeBinomial share of the squared mean that the variance has beyond the mean; empty unless estimated
     * @param serialCorrelation correlation of counts a season apart; empty unless estimated
     * @param robust whether limits hold whatever ties counts of one site together
     * @param deviance twice the log-likelihood below that of a perfect fit
     * @param sites sites with birds
     * @param emptySites sites that never had any, which take no part
     * @param level level of all limits
     * @param warnings what else to know
     */
    public record Seasons(
            Message model,
            String source,
            long n,
            double logLikelihood,
            double aic,
            OptionalDouble aicc,
            List<Parameter> parameters,
            List<Total> totals,
            OptionalDouble dispersion,
            double scale,
            double degreesOfFreedom,
            boolean emptySitesCount,
            OptionalDouble negativeBinomial,
            OptionalDouble serialCorrelation,
            boolean robust,
            double deviance,
            int sites,
            List<String> emptySites,
            double level,
            List<Message> warnings)
            implements TableAnswer {}

    /**
     * A change in percent.
     *
     * @param percent −5 is a fall by 5 %
     * @param lower lower limit
     * @param upper upper limit; empty if it lies more than a hundredfold away
     * @param why why there is no upper limit; empty if there is one
     */
    public record Percent(double percent, double lower, OptionalDouble upper, Optional<Message> why) {
        static Percent of(Estimate change) {
            OptionalDouble upper = Parameter.finite(change.upper());
            return new Percent(change.value(), change.lower(), upper, noUpperLimit(upper));
        }
    }

    private static Optional<Message> noUpperLimit(OptionalDouble upper) {
        return upper.isPresent() ? Optional.empty() : Optional.of(CautionMessage.of(Caution.of(Reason.NO_UPPER_LIMIT)));
    }

    /**
     * The line by another law of how counts vary.
     *
     * @param perYear change a year
     * @param wholePeriod change from the first season counted to the last
     * @param probabilityFalling probability that the direction is down
     * @param share share of the squared mean that the variance has beyond the mean
     * @param aic Akaike's criterion
     */
    public record OtherLaw(Percent perYear, Percent wholePeriod, double probabilityFalling, double share, double aic) {}

    /**
     * The smallest fall that would show.
     *
     * @param percentPerYear in percent a year, below 0
     * @param power probability of finding it
     */
    public record Detectable(double percentPerYear, double power) {}

    /**
     * All sites of a season together.
     *
     * @param season the calendar year
     * @param total expected by the model
     * @param se its standard error; empty in a season of zeros
     * @param lower lower limit
     * @param upper upper limit; empty if it lies more than a hundredfold away
     * @param filled what was counted, with the model’s expectation where nobody did
     * @param observed what was counted
     * @param counted how many sites were counted
     * @param why why there is no upper limit; empty if there is one
     */
    public record Total(
            int season,
            double total,
            OptionalDouble se,
            double lower,
            OptionalDouble upper,
            double filled,
            long observed,
            int counted,
            Optional<Message> why) {
        static Total of(SeasonTotal total) {
            Estimate expected = total.expected();
            return new Total(
                    total.season(),
                    expected.value(),
                    expected.standardError(),
                    expected.lower(),
                    Parameter.finite(expected.upper()),
                    total.filled(),
                    total.observed(),
                    total.counted(),
                    noUpperLimit(Parameter.finite(expected.upper())));
        }
    }

    /**
     * {@return the straight line through a table of counts, or why there is none}
     *
     * @param file the table
     * @param settings how to judge
     * @throws BadTable if the table must be mended first
     */
    public static TableAnswer line(Path file, TrendSettings settings) {
        CountTable table = CountTable.read(file);
        Answer<LineTrend> answer = LineTrend.of(table.counts(), settings);
        if (answer instanceof Answer.NotEstimable<LineTrend> none) {
            return refused(table, none.because());
        }
        LineTrend trend = answer.found().orElseThrow();
        TrendFit fit = trend.fit();
        return new Line(
                MethodName.of(trend.slope().method()),
                trend.slope().method().source(),
                fit.counts(),
                fit.logLikelihood(),
                fit.aic(),
                fit.aicc(),
                Stream.concat(
                                Stream.of(Parameter.of("slope", "year", Parameter.LOG, trend.slope())),
                                spread(fit).stream())
                        .toList(),
                Percent.of(trend.percentPerYear()),
                Percent.of(trend.percentOverPeriod()),
                trend.probabilityFalling(),
                otherLaw(table, trend, settings),
                new Detectable(trend.smallestDetectable(POWER).fall(), POWER),
                trend.totals().stream().map(Total::of).toList(),
                fit.dispersion(),
                fit.scale(),
                fit.degreesOfFreedom(),
                settings.emptySitesCount(),
                fit.negativeBinomial(),
                fit.serialCorrelation(),
                fit.robust(),
                fit.deviance(),
                fit.sites(),
                fit.emptySites(),
                settings.level(),
                warnings(table, trend.slope().warnings()));
    }

    /** Counts that vary more than Poisson may do so by a factor, as limits are widened for, or the more the more there are. */
    private static Optional<OtherLaw> otherLaw(CountTable table, LineTrend trend, TrendSettings settings) {
        boolean asked = settings.spread() == Spread.AT_LEAST_POISSON && !settings.serial();
        if (!asked || !trend.fit().isOverdispersed() || trend.fit().counts() > MOST_COUNTS_TWICE) {
            return Optional.empty();
        }
        TrendSettings other =
                new TrendSettings(settings.level(), Spread.NEGATIVE_BINOMIAL, false, settings.emptySitesCount());
        return LineTrend.of(table.counts(), other)
                .found()
                .filter(line -> line.fit().negativeBinomial().orElse(0) > 0)
                .map(line -> new OtherLaw(
                        Percent.of(line.percentPerYear()),
                        Percent.of(line.percentOverPeriod()),
                        line.probabilityFalling(),
                        line.fit().negativeBinomial().orElseThrow(),
                        line.fit().aic()));
    }

    /**
     * {@return the season effects and filled totals of a table of counts, or why there are none}
     *
     * @param file the table
     * @param settings how to judge
     * @throws BadTable if the table must be mended first
     */
    public static TableAnswer seasons(Path file, TrendSettings settings) {
        CountTable table = CountTable.read(file);
        Answer<SeasonEffects> answer = SeasonEffects.of(table.counts(), settings);
        if (answer instanceof Answer.NotEstimable<SeasonEffects> none) {
            return refused(table, none.because());
        }
        SeasonEffects effects = answer.found().orElseThrow();
        TrendFit fit = effects.fit();
        return new Seasons(
                MethodName.of(fit.method()),
                fit.method().source(),
                fit.counts(),
                fit.logLikelihood(),
                fit.aic(),
                fit.aicc(),
                parameters(effects),
                effects.totals().stream().map(Total::of).toList(),
                fit.dispersion(),
                fit.scale(),
                fit.degreesOfFreedom(),
                settings.emptySitesCount(),
                fit.negativeBinomial(),
                fit.serialCorrelation(),
                fit.robust(),
                fit.deviance(),
                fit.sites(),
                fit.emptySites(),
                settings.level(),
                warnings(table, effects.cautions()));
    }

    private static List<Parameter> parameters(SeasonEffects effects) {
        List<Parameter> parameters = new ArrayList<>();
        int first = effects.seasons().get(0);
        effects.totals().forEach(total -> {
            String term = "year=" + total.season();
            if (total.season() != first) {
                parameters.add(effects.logRatio(first, total.season())
                        .found()
                        .map(ratio -> Parameter.of("season", term, Parameter.LOG, ratio))
                        .orElseGet(() -> Parameter.without(
                                "season",
                                term,
                                Parameter.LOG,
                                CautionMessage.of(Caution.of(Reason.SEASON_WITHOUT_EFFECT, total.season())))));
            }
        });
        parameters.addAll(spread(effects.fit()));
        return parameters;
    }

    static List<Parameter> spread(TrendFit fit) {
        List<Parameter> spread = new ArrayList<>();
        dispersion(fit).ifPresent(spread::add);
        fit.negativeBinomial().ifPresent(share -> spread.add(withoutLimits("negative binomial", share)));
        fit.serialCorrelation().ifPresent(correlation -> spread.add(withoutLimits("serial correlation", correlation)));
        return spread;
    }

    private static Optional<Parameter> dispersion(TrendFit fit) {
        return fit.dispersion().isEmpty()
                ? Optional.empty()
                : Optional.of(withoutLimits("dispersion", fit.dispersion().getAsDouble()));
    }

    private static Parameter withoutLimits(String part, double value) {
        OptionalDouble none = OptionalDouble.empty();
        return new Parameter(
                part,
                Parameter.INTERCEPT,
                Parameter.NATURAL,
                OptionalDouble.of(value),
                none,
                none,
                none,
                false,
                Optional.of(Message.of("estimate.trend.withoutLimits")));
    }

    static NoAnswer refused(CountTable table, Caution because) {
        long counted = table.counts().stream()
                .filter(count -> count.count().isPresent())
                .count();
        return NoAnswer.of(Method.LOG_LINEAR_POISSON, counted, because, table.warnings());
    }

    static List<Message> warnings(CountTable table, List<Caution> cautions) {
        return Stream.concat(table.warnings().stream(), cautions.stream().map(CautionMessage::of))
                .toList();
    }
}
