package org.ouzelbook.tracker.exchange.file;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/** One file to read, on its own, inside a zip or made of a part of another; it can be opened any number of times and is never written to. */
public sealed interface FileSource {
    /** The most bytes that one file may hold: 2 GiB. */
    long MAX_BYTES = 2L << 30;

    /** What the table in a file is written as. */
    enum Form {
        /** As text, whose encoding and separator are the file’s own. */
        TEXT,
        /** As a sheet of a spreadsheet, whose rows are the file’s own. */
        SHEET,
        /** As something that is no table, such as a walk or an archive. */
        NO_TABLE
    }

    /** {@return the name that problems are told by} */
    String name();

    /** {@return what its table was written as} */
    default Form form() {
        return Form.TEXT;
    }

    /**
     * {@return its bytes, from the start}
     *
     * @throws IOException if it cannot be read
     */
    InputStream open() throws IOException;

    /** {@return the name without folders, in lower case} */
    default String plainName() {
        String name = name().replace('\\', '/');
        return name.substring(name.lastIndexOf('/') + 1).toLowerCase(Locale.ROOT);
    }

    /**
     * A file on the disk.
     *
     * @param name the name that problems are told by
     * @param path where it is
     */
    record OnDisk(String name, Path path) implements FileSource {
        @Override
        public InputStream open() throws IOException {
            return new LimitedStream(Files.newInputStream(path), MAX_BYTES);
        }
    }

    /**
     * A file inside a zip.
     *
     * @param name the name that problems are told by
     * @param zip where the zip is
     * @param entry the name inside the zip
     * @param maxBytes the most bytes that it may unpack to
     */
    record InZip(String name, Path zip, String entry, long maxBytes) implements FileSource {
        @Override
        public InputStream open() throws IOException {
            ZipFile opened = new ZipFile(zip.toFile());
            try {
                ZipEntry found = opened.getEntry(entry);
                if (found == null) {
                    throw new IOException(entry + " is no longer in " + zip);
                }
                return new LimitedStream(opened.getInputStream(found), maxBytes) {
                    @Override
                    public void close() throws IOException {
                        super.close();
                        opened.close();
                    }
                };
            } catch (IOException | RuntimeException e) {
                opened.close();
                throw e;
            }
        }
    }

    /** A text table that was made of a part of a file of another form, such as a sheet of a spreadsheet. */
    final class Table implements FileSource {
        private final String name;
        private final Form form;
        private final byte[] text;

        /**
         * Makes the table.
         *
         * @param name the name that problems are told by
         * @param form what it was written as
         * @param text the table, comma-separated, in UTF-8
         */
        public Table(String name, Form form, byte[] text) {
            this.name = name;
            this.form = form;
            this.text = text.clone();
        }

        @Override
        public Form form() {
            return form;
        }

        @Override
        public String name() {
            return name;
        }

        @Override
        public InputStream open() {
            return new ByteArrayInputStream(text);
        }
    }
}
