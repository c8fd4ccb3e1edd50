package org.ouzelbook.tracker.exchange.export;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import org.ouzelbook.tracker.exchange.file.CellText;

/**
 * Tables as CSV files in a zip: UTF-8, comma, decimal point, days as {@code 2026-03-16}. Texts that a spreadsheet would take for
 * formulas are made harmless.
 *
 * <p>Source: Y. Shafranovich (2005), RFC 4180.
 */
public final class CsvFiles {
    private CsvFiles() {}

    /**
     * Writes a zip.
     *
     * @param tables the tables
     * @param others other files by name, with their text
     * @param out where to; it is closed
     * @throws IOException if it cannot be written
     */
    public static void write(List<DataTable> tables, Map<String, String> others, OutputStream out) throws IOException {
        try (FixedZip zip = new FixedZip(out)) {
            for (DataTable table : tables) {
                zip.put(table.name() + ".csv", writer -> write(table, writer));
            }
            for (Map.Entry<String, String> other : others.entrySet()) {
                zip.put(other.getKey(), other.getValue());
            }
        }
    }

    /**
     * {@return a table as the text of one CSV file}
     *
     * @param table the table
     */
    public static String text(DataTable table) {
        StringWriter text = new StringWriter();
        try {
            write(table, text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    /** Writes a table; the writer stays open, for more may follow in its file's zip. */
    private static void write(DataTable table, Writer writer) throws IOException {
        CsvWriter csv = CsvWriter.builder()
                .lineDelimiter(LineDelimiter.CRLF)
                .bufferSize(0)
                .build(writer);
        csv.writeRecord(table.columns());
        for (List<Object> row : table.rows()) {
            csv.writeRecord(row.stream().map(CsvFiles::text).toList());
        }
    }

    /** {@return a cell as text} */
    static String text(Object cell) {
        if (cell instanceof String text) {
            return CellText.harmless(text);
        }
        if (cell instanceof LocalTime time) {
            return time.withNano(0).toString();
        }
        return Numbers.text(cell);
    }
}
