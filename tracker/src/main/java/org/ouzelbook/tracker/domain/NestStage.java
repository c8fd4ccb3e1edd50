package org.ouzelbook.tracker.domain;

/** What was found in a nest at a check. */
public enum NestStage {
    /** Being built. */
    BUILDING,
    /** Complete, no eggs seen. */
    COMPLETE,
    /** Eggs. */
    EGGS,
    /** Young. */
    YOUNG,
    /** Empty: by itself neither success nor failure. */
    EMPTY,
    /** Not seen into, or not written down. */
    UNKNOWN
}
