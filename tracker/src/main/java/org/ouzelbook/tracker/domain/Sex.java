package org.ouzelbook.tracker.domain;

/** Sex as known from plumage, the hand or rings; never from song, since both sexes of dipper sing. */
public enum Sex {
    /** Female. */
    FEMALE,
    /** Male. */
    MALE,
    /** Not known. */
    UNKNOWN
}
