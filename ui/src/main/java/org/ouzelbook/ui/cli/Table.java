package org.ouzelbook.ui.cli;

import java.util.ArrayList;
import java.util.List;

/** Rows under headings, for a person's eyes: numbers stand right, words left, two blanks between columns. */
final class Table {
    private static final String GAP = "  ";

    private final List<String> headings;
    private final List<List<String>> rows = new ArrayList<>();

    private Table(List<String> headings) {
        this.headings = headings;
    }

    /**
     * {@return an empty table}
     *
     * @param headings one a column
     */
    static Table of(String... headings) {
        return new Table(List.of(headings));
    }

    /**
     * Adds a row.
     *
     * @param cells one a column
     * @throws IllegalArgumentException if there are more or fewer cells than headings
     */
    void add(String... cells) {
        if (cells.length != headings.size()) {
            throw new IllegalArgumentException(headings.size() + " columns, but " + cells.length + " cells");
        }
        rows.add(List.of(cells));
    }

    /**
     * Prints headings and rows; nothing where there are no rows.
     *
     * @param terminal where to
     */
    void print(Terminal terminal) {
        if (rows.isEmpty()) {
            return;
        }
        terminal.out().println(terminal.bold(line(headings)));
        rows.forEach(row -> terminal.out().println(line(row)));
    }

    private String line(List<String> cells) {
        StringBuilder line = new StringBuilder();
        for (int column = 0; column < cells.size(); column++) {
            String cell = cells.get(column);
            String blanks = " ".repeat(width(column) - length(cell));
            line.append(column == 0 ? "" : GAP).append(isNumeric(column) ? blanks + cell : cell + blanks);
        }
        return line.toString().stripTrailing();
    }

    private int width(int column) {
        int widest = length(headings.get(column));
        for (List<String> row : rows) {
            widest = Math.max(widest, length(row.get(column)));
        }
        return widest;
    }

    private boolean isNumeric(int column) {
        return rows.stream().map(row -> row.get(column)).allMatch(cell -> cell.isEmpty() || isNumber(cell));
    }

    private static boolean isNumber(String cell) {
        return cell.matches("[−+-]?[0-9][0-9 .,()–]*( ?%)?|–");
    }

    private static int length(String text) {
        return text.codePointCount(0, text.length());
    }
}
