package org.ouzelbook.tracker.exchange.darwin;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.QuoteStrategies;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.exchange.file.FileSource;

/** A table whose rows have the numbers that they have in another file. */
final class NumberedRows {
    private final StringWriter text = new StringWriter();
    private final CsvWriter csv =
            CsvWriter.builder().quoteStrategy(QuoteStrategies.ALWAYS).build(text);
    private final BitSet known = new BitSet();
    private int rows = 1;

    NumberedRows(List<String> header) {
        csv.writeRecord(header);
    }

    /** Adds a row below all others. A known row is one that the book has already. */
    void add(int number, boolean isKnown, List<String> cells) {
        for (; rows < number - 1; rows++) {
            csv.writeRecord("");
        }
        csv.writeRecord(cells);
        rows++;
        known.set(rows, isKnown);
    }

    /** {@return the table; empty if it has no rows} */
    Optional<ArchiveTables.Made> table(String name, ArchiveTables.Kind kind) {
        try {
            csv.flush();
        } catch (IOException e) {
            throw new IllegalStateException("Text in memory can always be written", e);
        }
        return rows == 1
                ? Optional.empty()
                : Optional.of(new ArchiveTables.Made(
                        new FileSource.Table(name, text.toString().getBytes(StandardCharsets.UTF_8)), kind, known));
    }
}
