package org.ouzelbook.tracker.exchange;

import org.ouzelbook.tracker.domain.Message;

/**
 * Something that is wrong, open or odd in a file, where it stands, and what to do about it.
 *
 * @param file the file
 * @param row the row as a spreadsheet counts it, the first row being 1; 0 if it concerns the whole file
 * @param column the name of the column as the file has it; blank if it concerns the whole row
 * @param cell what the cell holds, shortened if very long
 * @param message what is wrong and what to do
 */
public record Problem(String file, long row, String column, String cell, Message message) {
    private static final int LONGEST_CELL = 80;
    private static final int LONGEST_FACT = 400;

    /** Shortens a cell, and what the message quotes of it, where they are too long to show. */
    public Problem {
        message = new Message(
                message.key(), message.facts().stream().map(Problem::shown).toList());
        if (cell.length() > LONGEST_CELL) {
            cell = cell.substring(0, LONGEST_CELL) + "…";
        }
    }

    private static Object shown(Object fact) {
        return fact instanceof String text && text.length() > LONGEST_FACT
                ? text.substring(0, LONGEST_FACT) + "…"
                : fact;
    }
}
