package org.ouzelbook.stats.simulate.skerra;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ouzelbook.stats.simulate.Draws;

/**
 * A table of field records in somebody's style.
 *
 * @param <T> what a row is about
 * @param columns the columns
 */
record FieldTable<T>(List<Column<T>> columns) {
    private static final byte[] MARK = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};

    /**
     * A column.
     *
     * @param <T> what a row is about
     * @param name its heading, as this person writes it
     * @param cell what stands in it
     */
    record Column<T>(String name, Function<T, String> cell) {}

    static <T> Column<T> column(String name, Function<T, String> cell) {
        return new Column<>(name, cell);
    }

    /** The file: clean and complete. */
    byte[] tidy(Style style, List<T> rows) {
        List<String> lines = new ArrayList<>();
        lines.add(joined(style, columns.stream().map(Column::name)));
        rows.forEach(row -> lines.add(joined(style, columns.stream().map(column -> column.cell.apply(row)))));
        return bytes(style, lines);
    }

    /** The file as people leave it: blanks after words, here and there an empty line. */
    byte[] careless(Style style, List<T> rows, Draws draws) {
        List<String> lines = new ArrayList<>();
        lines.add(joined(style, columns.stream().map(Column::name)));
        for (T row : rows) {
            lines.add(joined(
                    style,
                    columns.stream()
                            .map(column -> column.cell.apply(row))
                            .map(cell -> !cell.isEmpty() && draws.happens(0.02) ? cell + " " : cell)));
            if (draws.happens(0.02)) {
                lines.add(
                        draws.happens(0.5)
                                ? ""
                                : String.valueOf(style.separator()).repeat(columns.size() - 1));
            }
        }
        return bytes(style, lines);
    }

    private static String joined(Style style, Stream<String> cells) {
        return cells.map(cell -> quoted(style, cell)).collect(Collectors.joining(String.valueOf(style.separator())));
    }

    private static String quoted(Style style, String cell) {
        boolean needed = cell.indexOf(style.separator()) >= 0 || cell.indexOf('"') >= 0 || cell.indexOf('\n') >= 0;
        return needed ? '"' + cell.replace("\"", "\"\"") + '"' : cell;
    }

    private static byte[] bytes(Style style, List<String> lines) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        if (style.marked()) {
            out.writeBytes(MARK);
        }
        lines.forEach(line -> out.writeBytes((line + style.lineEnd()).getBytes(style.charset())));
        return out.toByteArray();
    }
}
