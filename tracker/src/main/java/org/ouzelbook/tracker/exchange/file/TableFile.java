package org.ouzelbook.tracker.exchange.file;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.BitSet;
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
        return best.orElseThrow(() -> new UnreadableFile(Message.of("import.file.noHeader")));
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

    /**
     * Writes some rows into a new file of the same layout: same header, separator and encoding. A cell that a spreadsheet
     * would take for a formula is made {@linkplain CellText#harmless harmless}.
     *
     * @param wanted the numbers of the rows
     * @param target the new file
     * @throws IOException if it is there already or cannot be written
     */
    public void copyRows(BitSet wanted, Path target) throws IOException {
        try (OutputStream out = Files.newOutputStream(target, StandardOpenOption.CREATE_NEW)) {
            out.write(bytes.encoding().mark());
            try (Writer text = new OutputStreamWriter(out, bytes.encoding().charset());
                    CsvWriter csv = CsvWriter.builder()
                            .fieldSeparator(separator)
                            .lineDelimiter(LineDelimiter.CRLF)
                            .build(text);
                    CsvRows rows = rows()) {
                csv.writeRecord(header);
                for (Optional<CsvRow> row = rows.next(); row.isPresent(); row = rows.next()) {
                    if (wanted.get(Math.toIntExact(row.get().row()))) {
                        csv.writeRecord(row.get().cells().stream()
                                .map(CellText::harmless)
                                .toList());
                    }
                }
            }
        }
    }
}
