package org.ouzelbook.ui.app.estimate;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.trend.CurveTrend;
import org.ouzelbook.stats.estimator.trend.TrendFit;
import org.ouzelbook.stats.estimator.trend.TrendSettings;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.ui.app.WrongRequest;

/** The smooth curve through a table with the columns {@code site}, {@code year}, {@code count} and, if wished, {@code km}. */
public final class EstimateCurve {
    private EstimateCurve() {}

    /**
     * A smooth curve on the log scale.
     *
     * @param model how it was computed
     * @param source where that was published
     * @param n counts at sites that ever had birds
     * @param logLikelihood with the log y! terms
     * @param aic Akaike's criterion, with what the curve is worth as its parameters
     * @param aicc the same for small samples; empty with too few counts
     * @param parameters the dispersion; effects of sites and coefficients of splines are not listed
     * @param curve the seasons, each against the first
     * @param totals all sites together
     * @param effectiveCoefficients what the curve is worth; 1 for a straight line
     * @param smoothing λ
     * @param bandHalfWidth half-width of the band, in standard errors
     * @param dispersion Pearson's X²/df; empty without degrees of freedom
     * @param scale what variances were multiplied by
     * @param degreesOfFreedom counts less parameters
     * @param emptySitesCount whether sites that never had any birds add to the degrees of freedom
     * @param sites sites with birds
     * @param emptySites sites that never had any
     * @param level level of all limits
     * @param warnings what else to know
     */
    public record Curve(
            Message model,
            String source,
            long n,
            double logLikelihood,
            double aic,
            OptionalDouble aicc,
            List<Parameter> parameters,
            List<Point> curve,
            List<TrendFigures.Total> totals,
            double effectiveCoefficients,
            double smoothing,
            double bandHalfWidth,
            OptionalDouble dispersion,
            double scale,
            double degreesOfFreedom,
            boolean emptySitesCount,
            int sites,
            List<String> emptySites,
            double level,
            List<Message> warnings)
            implements TableAnswer {}

    /**
     * A season against the first.
     *
     * @param season the calendar year
     * @param ratio to the first season
     * @param lower lower limit for this season alone
     * @param upper its upper limit
     * @param bandLower lower end of the band that holds the whole curve
     * @param bandUpper its upper end
     */
    public record Point(int season, double ratio, double lower, double upper, double bandLower, double bandUpper) {
        private static Point of(CurveTrend.Point point) {
            return new Point(
                    point.season(),
                    Math.exp(point.logRatio().value()),
                    Math.exp(point.logRatio().lower()),
                    Math.exp(point.logRatio().upper()),
                    Math.exp(point.bandLower()),
                    Math.exp(point.bandUpper()));
        }
    }

    /**
     * {@return the curve through a table of counts, or why there is none}
     *
     * @param file the table
     * @param settings how to judge
     * @throws BadTable if the table must be mended first
     * @throws WrongRequest if serial correlation is asked for
     */
    public static TableAnswer of(Path file, TrendSettings settings) {
        if (settings.serial()) {
            throw new WrongRequest(Message.of("estimate.trend.curveAndSerial"));
        }
        CountTable table = CountTable.read(file);
        Answer<CurveTrend> answer = CurveTrend.of(table.counts(), settings);
        if (answer instanceof Answer.NotEstimable<CurveTrend> none) {
            return TrendFigures.refused(table, none.because());
        }
        CurveTrend curve = answer.found().orElseThrow();
        TrendFit fit = curve.fit();
        return new Curve(
                MethodName.of(Method.PENALISED_SPLINE),
                Method.PENALISED_SPLINE.source(),
                fit.counts(),
                fit.logLikelihood(),
                fit.aic(),
                fit.aicc(),
                TrendFigures.spread(fit),
                curve.seasons().stream().map(Point::of).toList(),
                curve.totals().stream().map(TrendFigures.Total::of).toList(),
                curve.effectiveCoefficients(),
                curve.smoothing(),
                curve.bandHalfWidth(),
                fit.dispersion(),
                fit.scale(),
                fit.degreesOfFreedom(),
                settings.emptySitesCount(),
                fit.sites(),
                fit.emptySites(),
                settings.level(),
                TrendFigures.warnings(table, fit.cautions()));
    }
}
