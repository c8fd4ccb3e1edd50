package org.ouzelbook.stats.estimator.exposure;

import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.ReferenceLaw;

/**
 * Daily survival of nests from exposure days.
 *
 * <p>With L losses in E exposure days the daily survival is {@code s = 1 − L/E} and its variance {@code (E − L)·L/E³}. A nest that
 * survived an interval adds all its days; one that was lost adds a share of them, half unless told otherwise, since nobody saw
 * on which day. Limits are {@code s ± z·SE}, cut to [0, 1]. Without a loss the estimate is 1 and has only a lower limit, that of
 * the likelihood {@code s^E}.
 *
 * <p>Assumes the same daily survival of all nests on all days, and looks that do no harm. The middle of an interval is a good
 * guess while intervals are short (up to about two weeks).
 *
 * <p>Source: H. F. Mayfield (1961), Wilson Bull. 73:255–261, and (1975), Wilson Bull. 87:456–466; the variance: D. H. Johnson
 * (1979), Auk 96:651–661, and G. L. Hensler &amp; J. D. Nichols (1981), Wilson Bull. 93:42–53.
 *
 * @param days exposure days
 * @param losses nests that were lost
 * @param intervals how many intervals they come from
 * @param dailySurvival the probability to survive one day; its {@code n} is the number of intervals
 */
public record ExposureDays(double days, long losses, long intervals, Estimate dailySurvival) {
    /** A lost nest is taken to have been lost half-way through the interval (Mayfield 1961). */
    public static final double HALF = 0.5;

    /**
     * {@return the daily survival, or why there is none}
     *
     * @param intervals the intervals of all nests
     * @param lostShare the share of an interval that a nest lost in it is taken to have survived, between 0 and 1; 0.4 is the
     *     choice of Miller and Johnson (1978) for long intervals
     * @param level level of the limits, between 0 and 1
     * @throws IllegalArgumentException if the share or the level is out of its range
     */
    public static Answer<ExposureDays> of(List<WatchedInterval> intervals, double lostShare, double level) {
        if (!(lostShare > 0 && lostShare < 1)) {
            throw new IllegalArgumentException("A share lies between 0 and 1, but was " + lostShare);
        }
        double days = 0;
        long losses = 0;
        for (WatchedInterval interval : intervals) {
            days += interval.survived() ? interval.days() : lostShare * interval.days();
            losses += interval.survived() ? 0 : 1;
        }
        return of(days, losses, intervals.size(), level);
    }

    /**
     * {@return the daily survival, or why there is none}
     *
     * @param days exposure days, 0 or more
     * @param losses nests lost, 0 or more
     * @param intervals how many intervals they come from
     * @param level level of the limits, between 0 and 1
     */
    public static Answer<ExposureDays> of(double days, long losses, long intervals, double level) {
        if (intervals == 0 || days == 0) {
            return Answer.notEstimable(Reason.NO_NEST_DAYS);
        }
        if (losses > days) {
            return Answer.notEstimable(Reason.MORE_LOSSES_THAN_DAYS, losses, days);
        }
        return Answer.of(new ExposureDays(days, losses, intervals, survival(days, losses, intervals, level)));
    }

    private static Estimate survival(double days, long losses, long n, double level) {
        double lost = losses;
        double survival = 1 - lost / days;
        if (losses == 0 || survival == 0) {
            boolean all = losses == 0;
            double fall = new ChiSquaredDistribution(1).inverseCumulativeProbability(level) / 2;
            double limit = all ? Math.exp(-fall / days) : -Math.expm1(-fall / lost);
            return new Estimate(
                    all ? 1 : 0,
                    OptionalDouble.empty(),
                    all ? limit : 0,
                    all ? 1 : limit,
                    level,
                    n,
                    Method.EXPOSURE_DAYS,
                    List.of(Caution.of(Reason.AT_BOUNDARY)));
        }
        double error = Math.sqrt((days - lost) * lost / (days * days * days));
        double half = ReferenceLaw.NORMAL.halfWidth(level) * error;
        return new Estimate(
                survival,
                OptionalDouble.of(error),
                Math.max(0, survival - half),
                Math.min(1, survival + half),
                level,
                n,
                Method.EXPOSURE_DAYS,
                List.of());
    }

    /**
     * {@return the probability to survive several days: s to that power, its limits likewise, its standard error by the delta
     * method}
     *
     * @param period how many days, above 0
     */
    public Estimate success(double period) {
        Estimate mapped = dailySurvival.on(survival -> Math.pow(survival, period));
        OptionalDouble error = dailySurvival.standardError().isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(period
                        * Math.pow(dailySurvival.value(), period - 1)
                        * dailySurvival.standardError().getAsDouble());
        return new Estimate(
                mapped.value(),
                error,
                mapped.lower(),
                mapped.upper(),
                mapped.level(),
                mapped.n(),
                mapped.method(),
                mapped.warnings());
    }
}
