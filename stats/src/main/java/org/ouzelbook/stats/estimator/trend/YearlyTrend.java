package org.ouzelbook.stats.estimator.trend;

import java.util.List;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.ReferenceLaw;

/** The same percentage every year, and what follows from it. */
public sealed interface YearlyTrend permits LineTrend, PooledTrend {
    /** {@return the change on the log scale, a year} */
    Estimate slope();

    /** {@return what the slope, less its true value and over its standard error, is taken to follow} */
    ReferenceLaw law();

    /** {@return the seasons that were counted, in order} */
    List<SeasonTotal> totals();

    /** {@return the standard error that the slope would have at these sites and seasons if it were 0} */
    double errorWithoutTrend();

    /** {@return the first season counted} */
    default int firstSeason() {
        return totals().get(0).season();
    }

    /** {@return the last season counted} */
    default int lastSeason() {
        return totals().get(totals().size() - 1).season();
    }

    /** {@return the change in a year, in percent: −5 is a fall by 5 %; its upper limit is infinite if more than a hundredfold away} */
    default Estimate percentPerYear() {
        return percentBetween(0, 1);
    }

    /** {@return the change from the first season counted to the last, in percent} */
    default Estimate percentOverPeriod() {
        return percentBetween(firstSeason(), lastSeason());
    }

    /**
     * {@return the change along the line between two seasons, in percent; its upper limit is infinite if more than a hundredfold away}
     *
     * @param from a season
     * @param to another season, usually later
     */
    default Estimate percentBetween(int from, int to) {
        return PercentChange.of(slope(), to - from);
    }

    /** {@return the probability that numbers fell: that of a slope below 0, if nothing was known before the counts} */
    default double probabilityFalling() {
        return law().cumulative(-slope().value() / slope().standardError().orElseThrow());
    }

    /**
     * {@return the smallest yearly fall and rise that counts at these sites and seasons would show}
     *
     * <p>A slope δ is found, in a two-sided test at 1 − level, with probability {@code power} if {@code |δ| = (q(1 − α/2) +
     * q(power)) · se₀}, with {@code q} the quantiles of the law of the limits and {@code se₀} the standard error without a
     * trend. Wald's test as D. F. Signorini (1991), Biometrika 78:446–450, uses it for Poisson regression; for one site counted
     * every year it is equation 4 of T. Gerrodette (1987), Ecology 68:1364–1372 (both cited from memory).
     *
     * @param power wanted probability of finding it, between 0.5 and 1
     * @throws IllegalArgumentException if the power is out of its range
     */
    default DetectableChange smallestDetectable(double power) {
        if (!(power >= 0.5 && power < 1)) {
            throw new IllegalArgumentException("Power must be 0.5 or more, below 1, but was " + power);
        }
        double slopeFound = (law().halfWidth(slope().level()) + law().quantile(power)) * errorWithoutTrend();
        return new DetectableChange(
                100 * Math.expm1(-slopeFound), 100 * Math.expm1(slopeFound), power, slope().level());
    }

    /**
     * The smallest yearly change that a survey would show.
     *
     * @param fall in percent a year; negative
     * @param rise in percent a year; positive
     * @param power probability of finding it
     * @param level of the two-sided test
     */
    record DetectableChange(double fall, double rise, double power, double level) {}
}
