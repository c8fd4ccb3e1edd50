package org.ouzelbook.tracker.exchange;

/** What became of a row that could be read. */
enum Outcome {
    /** It is in the book now. */
    ADDED,
    /** The book, or an earlier row, says the same already. */
    DUPLICATE,
    /** It says that none were seen, which its visit shows already. */
    NONE_SEEN
}
