package org.ouzelbook.tracker.exchange.xlsx;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import javax.xml.stream.XMLStreamException;
import org.ouzelbook.tracker.exchange.file.LimitedStream;
import org.ouzelbook.tracker.exchange.file.PlainXml;

/** One part of a workbook: a piece of XML under a name in its zip. */
final class Part {
    /** The most bytes that one part may unpack to. A sheet of a million full rows has about 300 MB. */
    private static final long MOST_BYTES = 1L << 30;

    private Part() {}

    /** Reads a part. */
    @FunctionalInterface
    interface Reading<T> {
        T read(PlainXml xml) throws XMLStreamException, IOException;
    }

    /** {@return what a part says; empty if the workbook has none of that name} */
    static <T> Optional<T> read(ZipFile zip, String name, Reading<T> reading) throws IOException {
        ZipEntry entry = zip.getEntry(name);
        if (entry == null) {
            return Optional.empty();
        }
        try (InputStream in = new LimitedStream(zip.getInputStream(entry), MOST_BYTES)) {
            return Optional.of(reading.read(PlainXml.of(new Unread(in))));
        } catch (XMLStreamException e) {
            if (e.getNestedException() instanceof IOException unread) {
                throw unread;
            }
            throw PlainXml.unreadable(e);
        }
    }

    /** A stream that an XML reader may not close behind our back. */
    private static final class Unread extends FilterInputStream {
        private Unread(InputStream in) {
            super(in);
        }

        @Override
        public void close() {
            // whoever opened it closes it
        }
    }

    /** {@return a whole number; the other value if the text is none} */
    static int number(Optional<String> text, int otherwise) {
        return text.filter(digits -> digits.matches("\\d{1,9}"))
                .map(Integer::parseInt)
                .orElse(otherwise);
    }
}
