package org.ouzelbook.tracker.exchange.export;

import java.util.ArrayList;
import java.util.List;

/**
 * A table to be written out.
 *
 * @param name its name, as a file or sheet has it
 * @param columns the names of its columns
 * @param rows its rows; a cell is a text, a whole or decimal number, a {@link java.time.LocalDate} or a {@link
 *     java.time.LocalTime}; a blank text is nothing
 */
public record DataTable(String name, List<String> columns, List<List<Object>> rows) {
    /**
     * Copies the lists and checks their width.
     *
     * @throws IllegalArgumentException if a row has more or fewer cells than there are columns
     */
    public DataTable {
        columns = List.copyOf(columns);
        List<List<Object>> copied = new ArrayList<>();
        for (List<Object> row : rows) {
            if (row.size() != columns.size()) {
                throw new IllegalArgumentException(name + " has " + columns.size() + " columns, but a row had " + row);
            }
            copied.add(List.copyOf(row));
        }
        rows = List.copyOf(copied);
    }
}
