package org.ouzelbook.tracker.domain;

/** Listens to long work, and may stop it. */
@FunctionalInterface
public interface Progress {
    /** Listens to nothing and never stops. */
    Progress NONE = (done, total) -> true;

    /** How finely parts of work are told. */
    long FINE = 10_000;

    /**
     * Hears how far the work has come.
     *
     * @param done how much is done, in whatever the work counts
     * @param total how much there is in all; 0 if not known yet
     * @return whether to go on; false asks the work to stop and to leave everything as it was
     */
    boolean goOn(long done, long total);

    /**
     * {@return what listens to one part of the work, and hears it as that part of the whole}
     *
     * @param from where the part begins, as a share of the whole, 0 to 1
     * @param to where it ends, not below {@code from}
     */
    default Progress part(double from, double to) {
        return (done, total) -> goOn(
                Math.round(FINE * (from + (to - from) * (total > 0 ? Math.min(1.0, (double) done / total) : 0))), FINE);
    }
}
