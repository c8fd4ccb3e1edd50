package org.ouzelbook.tracker.domain;

/** What a nest is built on or in. */
public enum NestSite {
    /** Under or on a bridge. */
    BRIDGE,
    /** Behind or beside a weir. */
    WEIR,
    /** On a rock face or boulder. */
    ROCK,
    /** In a wall. */
    WALL,
    /** In an earth bank. */
    BANK,
    /** Behind a waterfall. */
    FALL,
    /** In a nest box. */
    BOX,
    /** In a tree or its roots. */
    TREE,
    /** Anywhere else. */
    OTHER
}
