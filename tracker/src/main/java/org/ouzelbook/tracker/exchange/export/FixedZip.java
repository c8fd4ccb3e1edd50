package org.ouzelbook.tracker.exchange.export;

import java.io.BufferedWriter;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** A zip whose bytes depend on what is put into it and on nothing else. */
public final class FixedZip implements Closeable {
    /** The first moment that a zip can tell. */
    private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 1, 1, 0, 0);

    private final ZipOutputStream zip;

    /**
     * Begins a zip.
     *
     * @param out where to
     */
    public FixedZip(OutputStream out) {
        zip = new ZipOutputStream(out, StandardCharsets.UTF_8);
    }

    /**
     * Puts a file in.
     *
     * @param name its name
     * @param text what it says
     * @throws IOException if it cannot be written
     */
    public void put(String name, String text) throws IOException {
        put(name, writer -> writer.write(text));
    }

    /**
     * Puts a file in that is written as it is made.
     *
     * @param name its name
     * @param text writes what it says
     * @throws IOException if it cannot be written
     */
    public void put(String name, Text text) throws IOException {
        ZipEntry entry = new ZipEntry(name);
        entry.setTimeLocal(NO_TIME);
        zip.putNextEntry(entry);
        Writer writer = new BufferedWriter(new OutputStreamWriter(zip, StandardCharsets.UTF_8));
        text.write(writer);
        writer.flush();
        zip.closeEntry();
    }

    /** What a file says. */
    @FunctionalInterface
    public interface Text {
        /**
         * Writes it.
         *
         * @param writer where to; it stays open
         * @throws IOException if it cannot be written
         */
        void write(Writer writer) throws IOException;
    }

    @Override
    public void close() throws IOException {
        zip.close();
    }
}
