package org.ouzelbook.ui.app;

/** How territories are counted for a density or a trend. */
public enum Counting {
    /** By the mapping rules alone: quick, and blind to pairs that no visit found. */
    BY_RULE,
    /** By the model besides, so that what is not known of the counts widens the limits. */
    BY_MODEL
}
