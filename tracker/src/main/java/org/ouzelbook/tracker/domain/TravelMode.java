package org.ouzelbook.tracker.domain;

/** How a surveyor travelled. */
public enum TravelMode {
    /** Walking the bank or wading. */
    FOOT,
    /** In a canoe or kayak. */
    CANOE
}
