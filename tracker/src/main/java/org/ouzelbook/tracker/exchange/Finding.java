package org.ouzelbook.tracker.exchange;

/** How much a finding in a file matters. */
public enum Finding {
    /** Wrong: the row cannot be added. */
    PROBLEM,
    /** Open: the row can be added once the surveyor has answered. */
    QUESTION,
    /** Odd: the row is added, but have a look. */
    WARNING
}
