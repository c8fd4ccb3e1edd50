package org.ouzelbook.stats.estimator.trend;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealVector;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.trend.TrendSettings.Spread;

/**
 * A smooth curve on the log scale, the same at every site: {@code log μᵢⱼ = αᵢ + log kmᵢⱼ + f(yearⱼ)}, with f a cubic P-spline.
 *
 * <p>How smooth it is follows from the counts: the smoothing parameter λ maximises the restricted likelihood, in Laplace's
 * approximation, of bends that are normal with variance φ/λ. As λ grows the curve becomes the straight line. φ is 1 for Poisson
 * counts, else the larger of 1 and X²/df, found by turns with λ. Limits come from the covariance of the bends given the counts
 * (they hold on the average over the seasons), the band for all seasons at once from the length of the path that the curve's
 * errors take: it holds the whole curve with the level's probability, or somewhat more.
 *
 * <p>Source: P. H. C. Eilers and B. D. Marx (1996), Stat. Sci. 11:89–121; λ: S. N. Wood (2011), J. R. Stat. Soc. B 73:3–36;
 * band: J. Sun and C. R. Loader (1994), Ann. Stat. 22:1328–1345 (all cited from memory).
 *
 * @param seasons the curve at the seasons that were counted, in order
 * @param smoothing λ
 * @param effectiveCoefficients what the curve is worth; 1 for a straight line
 * @param bandHalfWidth half-width of the band, in standard errors
 * @param fit how well the curve fits
 * @param totals the seasons that were counted
 */
public record CurveTrend(
        List<Point> seasons,
        double smoothing,
        double effectiveCoefficients,
        double bandHalfWidth,
        TrendFit fit,
        List<SeasonTotal> totals) {
    private static final double SMOOTHEST = 25;
    private static final double ROUGHEST = -10;
    private static final double STEP = 2.5;
    private static final double PRECISE = 1e-7;
    /** The restricted likelihood is flat at its peak: λ need not be known better. */
    private static final double NARROW = 1e-5;

    private static final int MOST_ROUNDS = 50;

    /** Copies the lists. */
    public CurveTrend {
        seasons = List.copyOf(seasons);
        totals = List.copyOf(totals);
    }

    /**
     * The curve at one season.
     *
     * @param season the calendar year
     * @param logRatio log of the ratio to the first season, with limits for this season alone
     * @param bandLower lower end of the band that holds the whole curve
     * @param bandUpper its upper end
     */
    public record Point(int season, Estimate logRatio, double bandLower, double bandUpper) {}

    /**
     * {@return the curve, or why these counts show none}
     *
     * @param counts at most one for each site and season
     * @param settings how to judge, without serial correlation: what is alike in successive seasons is what a curve follows
     * @throws IllegalArgumentException if a site has two counts in a season, or the settings ask for serial correlation
     */
    public static Answer<CurveTrend> of(List<SeasonCount> counts, TrendSettings settings) {
        if (settings.serial()) {
            throw new IllegalArgumentException("A curve and serial correlation cannot be told apart");
        }
        CountGrid grid = CountGrid.of(counts);
        Optional<Caution> refusal = Refusals.ofAnyTrend(grid).or(() -> Refusals.ofALine(grid));
        if (refusal.isPresent()) {
            return new Answer.NotEstimable<>(refusal.get());
        }
        SplineBasis basis = SplineBasis.of(grid.year(0), grid.year(grid.size() - 1), grid.size());
        Optional<SiteEffectsFit> smooth = smooth(grid, basis, settings);
        return smooth.map(fit -> held(of(fit, basis, settings))).orElse(Answer.notEstimable(Reason.NOT_CONVERGED));
    }

    /** A curve that could lie anywhere in some season is none. */
    private static Answer<CurveTrend> held(CurveTrend curve) {
        List<Integer> loose = curve.seasons.stream()
                .filter(point -> point.logRatio().upper() - point.logRatio().value() > PercentChange.LOOSE)
                .map(Point::season)
                .toList();
        return loose.isEmpty() ? Answer.of(curve) : Answer.notEstimable(Reason.CURVE_NOT_HELD, loose);
    }

    private static Optional<SiteEffectsFit> smooth(CountGrid grid, SplineBasis basis, TrendSettings settings) {
        double[][] rows = IntStream.range(0, grid.size())
                .mapToObj(season -> basis.at(grid.year(season)))
                .toArray(double[][]::new);
        double[][] line = IntStream.range(0, grid.size())
                .mapToObj(season -> new double[] {grid.year(season) - grid.year(0)})
                .toArray(double[][]::new);
        Optional<SiteEffectsFit> straight = Fitting.of(grid, line, settings);
        double scale = straight.map(fit -> TrendFit.of(fit, settings).scale()).orElse(1.0);
        Optional<SiteEffectsFit> fit = straight.flatMap(
                found -> SiteEffectsFit.of(grid, rows, penalty(basis, Math.exp(SMOOTHEST)), found.variation()));
        for (int round = 0; round < MOST_ROUNDS && fit.isPresent(); round++) {
            fit = best(fit.get(), basis, scale);
            double next = fit.map(found -> TrendFit.of(found, settings).scale()).orElse(scale);
            if (settings.spread() == Spread.POISSON || Math.abs(next / scale - 1) < PRECISE) {
                break;
            }
            scale = next;
        }
        return fit;
    }

    private static RealVector penalty(SplineBasis basis, double smoothing) {
        RealVector penalty = new ArrayRealVector(basis.size(), smoothing);
        penalty.setEntry(0, 0);
        return penalty;
    }

    /** The fit of the highest restricted likelihood: steps over log λ, then golden sections about the best of them. */
    private static Optional<SiteEffectsFit> best(SiteEffectsFit from, SplineBasis basis, double scale) {
        DoubleUnaryOperator likelihood = logSmoothing -> from.withPenalty(penalty(basis, Math.exp(logSmoothing)))
                .map(fit -> restricted(fit, basis, logSmoothing, scale))
                .orElse(Double.NEGATIVE_INFINITY);
        double best = SMOOTHEST;
        double highest = likelihood.applyAsDouble(best);
        for (double step = SMOOTHEST - STEP; step >= ROUGHEST; step -= STEP) {
            double height = likelihood.applyAsDouble(step);
            if (height > highest) {
                best = step;
                highest = height;
            }
        }
        double peak = GoldenSection.highest(
                likelihood, Math.max(ROUGHEST, best - STEP), Math.min(SMOOTHEST, best + STEP), NARROW);
        return from.withPenalty(penalty(basis, Math.exp(peak)));
    }

    private static double restricted(SiteEffectsFit fit, SplineBasis basis, double logSmoothing, double scale) {
        return (fit.logLikelihood() - fit.paid()) / scale
                + ((basis.size() - 1) * logSmoothing - fit.logDeterminant()) / 2;
    }

    private static CurveTrend of(SiteEffectsFit fit, SplineBasis basis, TrendSettings settings) {
        TrendFit quality = TrendFit.of(fit, settings);
        Contrasts contrasts = new Contrasts(fit, quality, settings.level());
        CountGrid grid = fit.grid();
        double band = Math.max(
                quality.law().halfWidth(settings.level()),
                BandWidth.of(fit.covariance(), basis, grid.year(0), grid.year(grid.size() - 1))
                        .inStandardErrors(quality.law(), settings.level()));
        RealVector first = new ArrayRealVector(basis.at(grid.year(0)));
        List<Point> points = new ArrayList<>();
        for (int season = 0; season < grid.size(); season++) {
            Estimate log = contrasts.of(new ArrayRealVector(basis.at(grid.year(season))).subtract(first));
            double halfWidth = band * log.standardError().orElseThrow();
            points.add(new Point(grid.year(season), log, log.value() - halfWidth, log.value() + halfWidth));
        }
        return new CurveTrend(
                points,
                fit.smoothing(),
                fit.effectiveCoefficients(),
                band,
                quality,
                SeasonTotal.of(fit, quality, settings.level()));
    }
}
