package org.ouzelbook.tracker.exchange.file;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Message;

/** The rows of a table one after another; blank rows and comments (from {@code #}) are passed over but counted. */
public final class CsvRows implements Closeable {
    /** The most characters that one row may have; more means a quotation mark that is never closed. */
    private static final int MAX_ROW = 1 << 20;

    /** No text holds it: it is set aside for programs (Unicode, noncharacters). */
    private static final char NO_LETTER = '\uFFFF';

    private final CloseableIterator<CsvRecord> records;
    private long row;

    private CsvRows(CloseableIterator<CsvRecord> records) {
        this.records = records;
    }

    /**
     * {@return the rows of a file}
     *
     * @param source the file
     * @param encoding how its letters are stored
     * @param separator what stands between its cells
     * @throws IOException if it cannot be read
     */
    public static CsvRows of(FileSource source, Encoding encoding, char separator) throws IOException {
        return of(source, encoding, separator, Optional.of('"'));
    }

    /**
     * {@return the rows of a file}
     *
     * @param source the file
     * @param encoding how its letters are stored
     * @param separator what stands between its cells
     * @param quote what stands around cells that hold separators or line breaks; empty if nothing does
     * @throws IOException if it cannot be read
     */
    public static CsvRows of(FileSource source, Encoding encoding, char separator, Optional<Character> quote)
            throws IOException {
        InputStream in = source.open();
        try {
            in.skipNBytes(encoding.mark().length);
            Reader reader = new InputStreamReader(in, encoding.charset());
            CsvReader<CsvRecord> csv = CsvReader.builder()
                    .fieldSeparator(separator)
                    .quoteCharacter(quote.orElse(NO_LETTER))
                    .commentStrategy(CommentStrategy.READ)
                    .skipEmptyLines(false)
                    .allowExtraFields(true)
                    .allowMissingFields(true)
                    .allowExtraCharsAfterClosingQuote(true)
                    .maxBufferSize(MAX_ROW)
                    .ofCsvRecord(reader);
            return new CsvRows(csv.iterator());
        } catch (IOException | RuntimeException e) {
            in.close();
            throw e;
        }
    }

    /**
     * {@return the next row that is neither blank nor a comment; empty at the end}
     *
     * @throws UnreadableFile if a row is too long, as after a quotation mark that is never closed
     * @throws IOException if the file cannot be read
     */
    public Optional<CsvRow> next() throws IOException {
        try {
            while (records.hasNext()) {
                CsvRecord record = records.next();
                row++;
                CsvRow read = new CsvRow(
                        row,
                        record.getStartingLineNumber(),
                        record.getFields().stream().map(CellText::visible).toList());
                if (!record.isComment() && !read.isBlank()) {
                    return Optional.of(read);
                }
            }
            return Optional.empty();
        } catch (CsvParseException e) {
            throw new UnreadableFile(Message.of("import.file.rowTooLong", row + 1, MAX_ROW >> 20));
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    @Override
    public void close() throws IOException {
        records.close();
    }
}
