package org.ouzelbook.tracker.domain;

/** The way a surveyor went along the river. */
public enum Direction {
    /** Towards the source. */
    UPSTREAM,
    /** Towards the mouth. */
    DOWNSTREAM
}
