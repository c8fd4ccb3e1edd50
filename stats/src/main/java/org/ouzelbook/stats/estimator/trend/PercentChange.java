package org.ouzelbook.stats.estimator.trend;

import org.ouzelbook.stats.estimator.Estimate;

/** A change on the log scale, told in percent. An upper limit more than a hundredfold away says nothing, so it is left open. */
final class PercentChange {
    /** Limits a hundredfold away say nothing. Common practice, no source. */
    static final double LOOSE = Math.log(100);

    private PercentChange() {}

    /**
     * {@return the change in percent, its upper limit infinite where it is open}
     *
     * @param log a change on the log scale, with finite limits
     * @param times how many times it takes place, such as years; below 0 for the way back
     */
    static Estimate of(Estimate log, double times) {
        Estimate percent = log.on(change -> 100 * Math.expm1(times * change));
        return isOpen(log, times)
                ? new Estimate(
                        percent.value(),
                        percent.standardError(),
                        percent.lower(),
                        Double.POSITIVE_INFINITY,
                        percent.level(),
                        percent.n(),
                        percent.method(),
                        percent.warnings())
                : percent;
    }

    static boolean isOpen(Estimate log, double times) {
        return Math.max(log.upper() - log.value(), log.value() - log.lower()) * Math.abs(times) > LOOSE;
    }
}
