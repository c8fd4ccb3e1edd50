package org.ouzelbook.stats.estimator.trend;

import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * What was counted at one site in one season.
 *
 * @param site name of the site
 * @param season the calendar year
 * @param count 0 or more; empty where nobody counted, which is no zero
 * @param km length of water counted, or any other exposure; above 0 and finite; empty where the site is always counted whole,
 *     which is taken as 1
 */
public record SeasonCount(String site, int season, OptionalLong count, OptionalDouble km) {
    /**
     * Checks the numbers.
     *
     * @throws IllegalArgumentException if the count is negative, or km is not above 0 and finite
     */
    public SeasonCount {
        double length = km.orElse(1);
        if (count.orElse(0) < 0 || !(length > 0 && length < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("A count must be 0 or more over km above 0, but was " + count + " over "
                    + km + " at " + site + " in " + season);
        }
    }

    /**
     * {@return a count at a site that is always counted whole}
     *
     * @param site name of the site
     * @param season the calendar year
     * @param count 0 or more
     */
    public static SeasonCount of(String site, int season, long count) {
        return new SeasonCount(site, season, OptionalLong.of(count), OptionalDouble.empty());
    }
}
