package org.ouzelbook.tracker.domain;

/** What sort of thing a landmark is. */
public enum LandmarkKind {
    /** A bridge, footbridge or aqueduct. */
    BRIDGE,
    /** A weir or sill. */
    WEIR,
    /** A rock or group of stones. */
    ROCK,
    /** The place where a side stream joins. */
    CONFLUENCE,
    /** A wall or revetment. */
    WALL,
    /** A waterfall. */
    FALL,
    /** Anything else. */
    OTHER
}
