package org.ouzelbook.tracker.exchange.file;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.QuoteStrategies;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/** A table that is made of another file, with rows of the same numbers as there, or as near as can be where two stand in one line. */
public final class NumberedRows {
    private final ByteArrayOutputStream text = new ByteArrayOutputStream();
    private final CsvWriter csv = CsvWriter.builder()
            .quoteStrategy(QuoteStrategies.ALWAYS)
            .build(new OutputStreamWriter(text, StandardCharsets.UTF_8));
    private final BitSet known = new BitSet();
    private int rows = 1;

    /**
     * Begins a table.
     *
     * @param header the names of its columns
     */
    public NumberedRows(List<String> header) {
        csv.writeRecord(header);
    }

    /**
     * Adds a row below all others.
     *
     * @param number its number in the other file
     * @param cells its cells
     */
    public void add(int number, List<String> cells) {
        for (; rows < number - 1; rows++) {
            csv.writeRecord("");
        }
        csv.writeRecord(cells);
        rows++;
    }

    /**
     * Adds a row that the book is known to have already.
     *
     * @param number its number in the other file
     * @param cells its cells
     */
    public void addKnown(int number, List<String> cells) {
        add(number, cells);
        known.set(rows);
    }

    /** {@return the numbers of the rows that the book has already} */
    public BitSet known() {
        return (BitSet) known.clone();
    }

    /**
     * {@return the table; empty if it has no rows}
     *
     * @param name the name that problems are told by
     */
    public Optional<FileSource> table(String name) {
        try {
            csv.flush();
        } catch (IOException e) {
            throw new IllegalStateException("Text in memory can always be written", e);
        }
        return rows == 1
                ? Optional.empty()
                : Optional.of(new FileSource.Table(name, FileSource.Form.NO_TABLE, text.toByteArray()));
    }
}
