package org.ouzelbook.tracker.exchange.darwin;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.ouzelbook.tracker.exchange.file.CsvRow;
import org.ouzelbook.tracker.exchange.file.CsvRows;
import org.ouzelbook.tracker.exchange.file.Encoding;
import org.ouzelbook.tracker.exchange.file.FileSource;

/**
 * One file of an archive that is being read. Terms are told by their bare name: the vocabularies that we read share no name.
 *
 * @param source the file
 * @param rowType the bare name of what its rows are, with {@code eco} before that of the Humboldt extension
 * @param encoding how its letters are stored
 * @param separator what stands between its cells
 * @param quote what stands around cells that hold separators; empty if nothing does
 * @param headerRows how many rows stand before the first
 * @param id the column of the event's identifier
 * @param columns the columns of terms, from 0
 * @param constants what terms without a column say in every row
 */
record ArchiveFile(
        FileSource source,
        String rowType,
        Encoding encoding,
        char separator,
        Optional<Character> quote,
        int headerRows,
        int id,
        Map<String, Integer> columns,
        Map<String, String> constants) {
    ArchiveFile {
        columns = Map.copyOf(columns);
        constants = Map.copyOf(constants);
    }

    /**
     * What a row says.
     *
     * @param number its number in the file
     * @param file the file
     * @param cells its cells
     */
    record Told(int number, ArchiveFile file, List<String> cells) {
        /** {@return the identifier of the event that the row is or hangs on; blank if it has none} */
        String event() {
            return cell(file.id);
        }

        /** {@return what a term says; blank if nothing} */
        String value(String term) {
            Integer column = file.columns.get(term);
            String text = column == null ? "" : cell(column);
            return text.isEmpty() ? file.constants.getOrDefault(term, "") : text;
        }

        private String cell(int column) {
            return column < 0 || column >= cells.size() ? "" : cells.get(column).strip();
        }
    }

    /** Tells its rows one after another. */
    void each(Consumer<Told> reader) throws IOException {
        try (CsvRows rows = CsvRows.of(source, encoding, separator, quote)) {
            for (Optional<CsvRow> row = rows.next(); row.isPresent(); row = rows.next()) {
                if (row.get().row() > headerRows) {
                    reader.accept(new Told(
                            Math.toIntExact(row.get().row()), this, row.get().cells()));
                }
            }
        }
    }
}
