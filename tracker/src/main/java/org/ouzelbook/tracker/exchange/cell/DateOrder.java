package org.ouzelbook.tracker.exchange.cell;

/** Which of day and month stands first in a date made of numbers. */
public enum DateOrder {
    /** 3/4/2025 is 3 April. */
    DAY_FIRST,
    /** 3/4/2025 is 4 March. */
    MONTH_FIRST
}
