package org.ouzelbook.tracker.domain;

/** Listens to long work, and may stop it. */
@FunctionalInterface
public interface Progress {
    /** Listens to nothing and never stops. */
    Progress NONE = (done, total) -> true;

    /**
     * Hears how far the work has come.
     *
     * @param done how much is done, in whatever the work counts
     * @param total how much there is in all; 0 if not known yet
     * @return whether to go on; false asks the work to stop and to leave everything as it was
     */
    boolean goOn(long done, long total);
}
