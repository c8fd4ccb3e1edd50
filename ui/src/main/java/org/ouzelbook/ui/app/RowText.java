package org.ouzelbook.ui.app;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.exchange.TableUnderstood;
import org.ouzelbook.tracker.exchange.file.CsvRow;
import org.ouzelbook.tracker.exchange.file.CsvRows;
import org.ouzelbook.tracker.exchange.file.FileSource;
import org.ouzelbook.tracker.exchange.file.FileSources;

/**
 * One row of a file, as it stands there.
 *
 * @param file the file
 * @param row its number as a spreadsheet counts it
 * @param cells its cells, each with the name of its column
 */
public record RowText(String file, long row, List<Cell> cells) {
    /** Copies the cells. */
    public RowText {
        cells = List.copyOf(cells);
    }

    /**
     * A cell.
     *
     * @param column the name of its column; blank beyond the header
     * @param text what it holds
     */
    public record Cell(String column, String text) {}

    /**
     * {@return a row of a text table; empty if the file has no such row, cannot be read any more, or is no text}
     *
     * @param files the files, folders and zips that were named
     * @param file the file's name, as problems tell it
     * @param understood what the file was taken for
     * @param row its number as a spreadsheet counts it
     */
    public static Optional<RowText> of(List<Path> files, String file, TableUnderstood understood, long row) {
        try {
            for (FileSource source : FileSources.of(files).files()) {
                if (source.name().equals(file)) {
                    return read(source, understood, row);
                }
            }
        } catch (IOException gone) {
            return Optional.empty();
        }
        return Optional.empty();
    }

    private static Optional<RowText> read(FileSource source, TableUnderstood understood, long wanted)
            throws IOException {
        List<String> header = List.of();
        try (CsvRows rows = CsvRows.of(source, understood.encoding(), understood.separator())) {
            for (Optional<CsvRow> row = rows.next(); row.isPresent(); row = rows.next()) {
                if (row.get().row() == understood.headerRow()) {
                    header = row.get().cells();
                }
                if (row.get().row() == wanted) {
                    return Optional.of(new RowText(
                            source.name(), wanted, cells(header, row.get().cells())));
                }
            }
        }
        return Optional.empty();
    }

    private static List<Cell> cells(List<String> header, List<String> texts) {
        List<Cell> cells = new ArrayList<>();
        for (int i = 0; i < texts.size(); i++) {
            cells.add(new Cell(i < header.size() ? header.get(i).strip() : "", texts.get(i)));
        }
        return cells;
    }
}
