package org.ouzelbook.tracker.exchange.file;

import java.util.List;

/**
 * One row of a table.
 *
 * @param row its number in the file as a spreadsheet shows it: the first row is 1, blank rows count, a row whose cells
 *     hold line breaks counts once
 * @param line the line of the text file that it starts in, from 1
 * @param cells its cells, as they stand in the file
 */
public record CsvRow(long row, long line, List<String> cells) {
    /** Copies the cells. */
    public CsvRow {
        cells = List.copyOf(cells);
    }

    /** {@return whether no cell holds anything} */
    boolean isBlank() {
        for (String cell : cells) {
            if (!cell.isBlank()) {
                return false;
            }
        }
        return true;
    }
}
