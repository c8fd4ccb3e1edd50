package org.ouzelbook.stats.estimator.trend;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.ReferenceLaw;

/**
 * A trend by ranks alone: the Mann–Kendall test, and the Theil–Sen slope with its limits.
 *
 * <p>{@code S} is the number of pairs that rise with time less the number that fall; {@code z = (S − sign S) / √var S}, with
 * the variance corrected for ties in value and in time; the exact p-value is twice the smaller tail of the law of S under every
 * order of the values, ties included. The slope is the median of the slopes of all pairs at different times; with {@code N}
 * such slopes and {@code C = z√var S} its limits stand at ranks {@code (N − C)/2} and {@code (N + C)/2 + 1}. The line passes
 * through the medians of times and values. It assumes independent values and no shape of their law; it does not know how large
 * the counts are nor how much water was surveyed.
 *
 * <p>Source: H. B. Mann (1945), Econometrica 13:245–259; P. K. Sen (1968), J. Am. Stat. Assoc. 63:1379–1389; W. J. Conover
 * (1980) for the intercept; D. R. Helsel and R. M. Hirsch (2002), Statistical Methods in Water Resources, chapters 8, 10 and 12.
 *
 * @param n how many values
 * @param s rising pairs less falling pairs
 * @param varS its variance without a trend
 * @param z standardised, with continuity correction
 * @param p two-sided, from the normal law
 * @param exactP two-sided and exact, for up to {@value #EXACT_UP_TO} values at different times
 * @param tau Kendall's tau-a
 * @param tauB Kendall's tau-b
 * @param slope Theil–Sen slope, in values a unit of time; a limit that few values cannot set is infinite
 * @param intercept of the line through the medians, at time 0
 */
public record RankTrend(
        int n,
        long s,
        double varS,
        double z,
        double p,
        Answer<Double> exactP,
        double tau,
        double tauB,
        Estimate slope,
        double intercept) {
    /** More values than this, and the normal law is as good as exact. */
    public static final int EXACT_UP_TO = 50;

    private static final int AT_LEAST = 3;
    private static final int AT_MOST = 5000;

    /** What to do with limits of the slope that fall between two ranks. */
    public enum Ranks {
        /** Interpolate between the two slopes. */
        INTERPOLATED,
        /** Take the slope at the nearest rank, as tables worked by hand do. */
        ROUNDED
    }

    /**
     * {@return the trend, or why these values show none}
     *
     * @param times when each value was taken, in any order
     * @param values as many finite values
     * @param level the interval's level, between 0 and 1
     * @param ranks how to read limits between two ranks
     * @throws IllegalArgumentException if a number is out of its range or the lengths differ
     */
    public static Answer<RankTrend> of(double[] times, double[] values, double level, Ranks ranks) {
        int n = times.length;
        if (n != values.length
                || !Arrays.stream(times).allMatch(Double::isFinite)
                || !Arrays.stream(values).allMatch(Double::isFinite)) {
            throw new IllegalArgumentException("Times and values must be finite and as many");
        }
        double normal = ReferenceLaw.NORMAL.halfWidth(level);
        if (n < AT_LEAST) {
            return Answer.notEstimable(Reason.TOO_FEW_VALUES, n, AT_LEAST);
        }
        if (n > AT_MOST) {
            return Answer.notEstimable(Reason.TOO_MANY_VALUES, n, AT_MOST);
        }
        Pairs pairs = Pairs.of(times, values);
        if (pairs.timeGroups().size() == 1) {
            return Answer.notEstimable(Reason.ONE_POINT_IN_TIME);
        }
        if (pairs.valueGroups().size() == 1) {
            return Answer.notEstimable(Reason.ALL_VALUES_EQUAL);
        }
        double deviation = Math.sqrt(pairs.variance());
        double z = (pairs.s() - Math.signum((double) pairs.s())) / deviation;
        Estimate slope = slope(pairs.slopes(), normal * deviation, level, n, ranks);
        return Answer.of(new RankTrend(
                n,
                pairs.s(),
                pairs.variance(),
                z,
                2 * ReferenceLaw.NORMAL.cumulative(-Math.abs(z)),
                exactP(pairs, n),
                pairs.tau(),
                pairs.tauB(),
                slope,
                median(values) - slope.value() * median(times)));
    }

    private static Answer<Double> exactP(Pairs pairs, int n) {
        if (n > EXACT_UP_TO) {
            return Answer.notEstimable(Reason.TOO_MANY_FOR_EXACT, n, EXACT_UP_TO);
        }
        if (pairs.timeGroups().size() < n) {
            return Answer.notEstimable(Reason.REPEATED_TIMES);
        }
        return Answer.of(Math.min(1, 2 * KendallLaw.upperTail(pairs.valueGroups(), Math.abs(pairs.s()))));
    }

    private static Estimate slope(double[] slopes, double halfWidth, double level, int n, Ranks ranks) {
        double lower = atRank(slopes, (slopes.length - halfWidth) / 2, ranks);
        double upper = atRank(slopes, (slopes.length + halfWidth) / 2 + 1, ranks);
        boolean open = Double.isInfinite(lower) || Double.isInfinite(upper);
        return new Estimate(
                median(slopes),
                OptionalDouble.empty(),
                lower,
                upper,
                level,
                n,
                Method.KENDALL_THEIL_SEN,
                open ? List.of(Caution.of(Reason.SLOPE_LIMIT_OPEN, n)) : List.of());
    }

    /** The number at a rank that counts from 1; beyond the ranks there is no limit. */
    private static double atRank(double[] sorted, double exactRank, Ranks ranks) {
        double rank = ranks == Ranks.ROUNDED ? Math.rint(exactRank) : exactRank;
        if (rank < 1) {
            return Double.NEGATIVE_INFINITY;
        }
        if (rank > sorted.length) {
            return Double.POSITIVE_INFINITY;
        }
        int below = (int) rank;
        double share = rank - below;
        return share == 0 ? sorted[below - 1] : sorted[below - 1] + share * (sorted[below] - sorted[below - 1]);
    }

    private static double median(double[] numbers) {
        double[] sorted = numbers.clone();
        Arrays.sort(sorted);
        return (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
    }
}
