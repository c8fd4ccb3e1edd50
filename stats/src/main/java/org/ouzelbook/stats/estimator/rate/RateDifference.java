package org.ouzelbook.stats.estimator.rate;

import java.util.List;
import java.util.OptionalDouble;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.interval.GarwoodInterval;

/**
 * The difference of two Poisson rates, with limits recovered from those of the single rates.
 *
 * <p>With rates {@code r₁, r₂} and Garwood's limits {@code l, u} of each, the limits of {@code r₁ − r₂} are
 *
 * <pre>{@code r₁ − r₂ − √((r₁ − l₁)² + (u₂ − r₂)²)   and   r₁ − r₂ + √((u₁ − r₁)² + (r₂ − l₂)²)}</pre>
 *
 * <p>They are not exact, and may differ a little from the exact test of equal rates, which is {@link RateComparison}’s.
 *
 * <p>Source: G. Y. Zou and A. Donner (2008), Stat. Med. 27:1693–1702, as cited from memory.
 */
public final class RateDifference {
    private RateDifference() {}

    /**
     * {@return first rate less second rate, or that one of them has no exposure}
     *
     * @param firstCount 0 or more
     * @param firstExposure km, days or whatever it was counted over; 0 or more and finite
     * @param secondCount 0 or more
     * @param secondExposure in the unit of the first
     * @param level the interval's level, between 0 and 1
     * @throws IllegalArgumentException if a number is out of its range
     */
    public static Answer<Estimate> of(
            long firstCount, double firstExposure, long secondCount, double secondExposure, double level) {
        Answer<Estimate> first = GarwoodInterval.of(firstCount, firstExposure, level);
        Answer<Estimate> second = GarwoodInterval.of(secondCount, secondExposure, level);
        if (first instanceof Answer.NotEstimable<Estimate> || second instanceof Answer.NotEstimable<Estimate>) {
            return first.found().isEmpty() ? first : second;
        }
        Estimate a = first.found().orElseThrow();
        Estimate b = second.found().orElseThrow();
        double difference = a.value() - b.value();
        return Answer.of(new Estimate(
                difference,
                OptionalDouble.empty(),
                difference - Math.hypot(a.value() - a.lower(), b.upper() - b.value()),
                difference + Math.hypot(a.upper() - a.value(), b.value() - b.lower()),
                level,
                firstCount + secondCount,
                Method.RATE_DIFFERENCE,
                List.of()));
    }
}
