package org.ouzelbook.ui.app.estimate;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.trend.LineTrend;
import org.ouzelbook.stats.estimator.trend.TrendFit;
import org.ouzelbook.stats.estimator.trend.TrendSettings;
import org.ouzelbook.stats.estimator.trend.TrendSettings.Spread;
import org.ouzelbook.tracker.domain.Message;

/**
 * The straight line on the log scale through a table with the columns {@code site}, {@code year}, {@code count} and, if wished,
 * {@code km}. A row without a count says that nobody counted.
 */
public final class EstimateLine {
    private static final double POWER = 0.8;
    private static final long MOST_COUNTS_TWICE = 20_000;

    private EstimateLine() {}

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
            TrendFigures.Percent perYear,
            TrendFigures.Percent wholePeriod,
            double probabilityFalling,
            Optional<OtherLaw> byNegativeBinomial,
            Detectable smallestDetectable,
            List<TrendFigures.Total> totals,
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
     * The line by another law of how counts vary.
     *
     * @param perYear change a year
     * @param wholePeriod change from the first season counted to the last
     * @param probabilityFalling probability that the direction is down
     * @param share share of the squared mean that the variance has beyond the mean
     * @param aic Akaike's criterion
     */
    public record OtherLaw(
            TrendFigures.Percent perYear,
            TrendFigures.Percent wholePeriod,
            double probabilityFalling,
            double share,
            double aic) {}

    /**
     * The smallest fall that would show.
     *
     * @param percentPerYear in percent a year, below 0
     * @param power probability of finding it
     */
    public record Detectable(double percentPerYear, double power) {}

    /**
     * {@return the straight line through a table of counts, or why there is none}
     *
     * @param file the table
     * @param settings how to judge
     * @throws BadTable if the table must be mended first
     */
    public static TableAnswer of(Path file, TrendSettings settings) {
        CountTable table = CountTable.read(file);
        Answer<LineTrend> answer = LineTrend.of(table.counts(), settings);
        if (answer instanceof Answer.NotEstimable<LineTrend> none) {
            return TrendFigures.refused(table, none.because());
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
                                TrendFigures.spread(fit).stream())
                        .toList(),
                TrendFigures.Percent.of(trend.percentPerYear()),
                TrendFigures.Percent.of(trend.percentOverPeriod()),
                trend.probabilityFalling(),
                otherLaw(table, trend, settings),
                new Detectable(trend.smallestDetectable(POWER).fall(), POWER),
                trend.totals().stream().map(TrendFigures.Total::of).toList(),
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
                TrendFigures.warnings(table, trend.slope().warnings()));
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
                        TrendFigures.Percent.of(line.percentPerYear()),
                        TrendFigures.Percent.of(line.percentOverPeriod()),
                        line.probabilityFalling(),
                        line.fit().negativeBinomial().orElseThrow(),
                        line.fit().aic()));
    }
}
