package org.ouzelbook.tracker.exchange;

/** Takes the rows of one kind of table into the book. */
interface KindRows {
    /** Takes one row, which may only be kept for the end. */
    void take(RowReader row);

    /** Settles what was kept for the end. */
    default void finish() {}
}
