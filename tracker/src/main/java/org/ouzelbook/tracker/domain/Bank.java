package org.ouzelbook.tracker.domain;

/** A side of the river, always named looking downstream. */
public enum Bank {
    /** The left bank, looking downstream. */
    LEFT,
    /** The right bank, looking downstream. */
    RIGHT,
    /** In the channel: a mid-stream rock, an island. */
    CHANNEL,
    /** Not written down. */
    UNKNOWN
}
