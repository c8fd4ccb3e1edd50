package org.ouzelbook.tracker.exchange;

/**
 * What became of one table.
 *
 * @param file the file
 * @param understood what it was taken for
 * @param read rows read, sums apart
 * @param added rows whose records were added
 * @param duplicates rows that the book or an earlier row says already
 * @param noneSeen rows that say that none were seen, which their visits show already
 * @param open rows that wait for an answer
 * @param rejected rows with a problem
 * @param totals rows that only sum up others
 * @param attached sightings that belong to the one visit of their day that passed their place
 * @param importedBefore whether a file with exactly this content was imported before
 */
public record TableResult(
        String file,
        TableUnderstood understood,
        long read,
        long added,
        long duplicates,
        long noneSeen,
        long open,
        long rejected,
        long totals,
        long attached,
        boolean importedBefore) {}
