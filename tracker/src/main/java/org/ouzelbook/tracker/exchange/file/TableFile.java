package org.ouzelbook.tracker.exchange.file;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.function.ToIntFunction;
import org.ouzelbook.tracker.domain.Message;

/**
 * A text table and how it is laid out.
 *
 * @param source the file
 * @param bytes what its bytes tell
 * @param separator what stands between its cells: comma, semicolon or tab
 * @param headerRow the row of its header
 * @param header the names of its columns, as written
 */
public record TableFile(FileSource source, FileBytes bytes, char separator, long headerRow, List<String> header) {
    private static final char[] SEPARATORS = {',', ';', '\t'};
    private static final int ROWS_BEFORE_HEADER = 20;

    /** Copies the header. */
    public TableFile {
        header = List.copyOf(header);
    }

    /**
     * Finds out how a table is laid out: the separator and header row that make the most known column names.
     *
     * @param source the file
     * @param knownColumns counts how many cells of a row are known column names
     * @return the table
     * @throws UnreadableFile if it is no text, or no row of its first 20 looks like a header
     * @throws IOException if it cannot be read
     */
    public static TableFile of(FileSource source, ToIntFunction<List<String>> knownColumns) throws IOException {
        FileBytes bytes = FileBytes.of(source);
        Optional<TableFile> best = Optional.empty();
        int most = 1;
        for (char separator : SEPARATORS) {
            try (CsvRows rows = CsvRows.of(source, bytes.encoding(), separator)) {
                Optional<CsvRow> row = rows.next();
                while (row.isPresent() && row.get().row() <= ROWS_BEFORE_HEADER) {
                    int known = knownColumns.applyAsInt(row.get().cells());
                    if (known > most) {
                        most = known;
                        best = Optional.of(new TableFile(
                                source,
                                bytes,
                                separator,
                                row.get().row(),
                                row.get().cells()));
                    }
                    row = rows.next();
                }
            }
        }
        return best.orElseThrow(() -> new UnreadableFile(Message.of("import.file.noHeader", source.name())));
    }

    /**
     * {@return the rows below the header}
     *
     * @throws IOException if the file cannot be read
     */
    public CsvRows rows() throws IOException {
        CsvRows rows = CsvRows.of(source, bytes.encoding(), separator);
        try {
            Optional<CsvRow> row = rows.next();
            while (row.isPresent() && row.get().row() < headerRow) {
                row = rows.next();
            }
            return rows;
        } catch (IOException | RuntimeException e) {
            rows.close();
            throw e;
        }
    }
}
