package org.ouzelbook.tracker.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.RandomAccessFile;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Properties;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.h2.Driver;

/** The file of a book: its full name, whether it can be one, and connections to it. */
final class BookFile {
    /** What H2 adds to the name of its files. */
    static final String ENDING = ".mv.db";

    /** The two header blocks, alike, with which every file of H2's store starts; data come after them. */
    private static final int HEADERS_BYTES = 8192;

    private static final int BLOCK_BYTES = 4096;

    private static final String CLEAN = ",clean:1,";

    private static final Pattern LAST_BLOCK = Pattern.compile(",block:([0-9a-f]+),");

    private static final Pattern CHUNK_BLOCKS = Pattern.compile("^chunk:[0-9a-f]+,.*?\\blen:([0-9a-f]+),");

    private static final byte[] HEADER_START = "H:2,".getBytes(StandardCharsets.US_ASCII);

    private BookFile() {}

    /**
     * {@return the full name of the file that a person means}
     *
     * @param given with or without the ending {@code .mv.db}, absolute or not
     * @throws BookException if the name has a semicolon, after which the database would read settings
     */
    static Path of(Path given) {
        Path file = given.toAbsolutePath().normalize();
        if (file.toString().indexOf(';') >= 0) {
            throw BookException.of("book.semicolon", file.toString());
        }
        Path name = file.getFileName();
        if (name == null || Files.isDirectory(file)) {
            throw BookException.of("book.isFolder", file.toString());
        }
        return name.toString().endsWith(ENDING) ? file : file.resolveSibling(name + ENDING);
    }

    /**
     * Checks that a new book can be made here.
     *
     * @throws BookException if the file is there already, even if empty, or its folder is missing or cannot be written
     */
    static void checkNew(Path file) {
        Path folder = file.getParent();
        if (Files.exists(file)) {
            throw BookException.of("book.exists", file.toString());
        }
        if (folder == null || !Files.isDirectory(folder)) {
            throw BookException.of("book.folder.missing", file.toString(), String.valueOf(folder));
        }
        if (!Files.isWritable(folder)) {
            throw BookException.of("book.folder.cannotWrite", file.toString(), folder.toString());
        }
    }

    /**
     * Checks the outside of a file that should be a book, and leaves the file alone: the database would take an empty or
     * cut-off file for a new one.
     *
     * @throws BookException if it is missing, unreadable, empty, cut off or something else
     */
    static void checkExisting(Path file) {
        if (!Files.isRegularFile(file)) {
            throw BookException.of("book.missing", file.toString());
        }
        if (!Files.isReadable(file)) {
            throw BookException.of("book.cannotRead", file.toString());
        }
        try (InputStream in = Files.newInputStream(file)) {
            byte[] headers = in.readNBytes(HEADERS_BYTES);
            if (headers.length == 0) {
                throw BookException.of("book.empty", file.toString());
            }
            if (!startsAsHeader(headers, 0) && !startsAsHeader(headers, HEADERS_BYTES / 2)) {
                throw BookException.of("book.foreign", file.toString());
            }
            if (in.read() < 0 || Files.size(file) < lengthWhenClosed(file, headers)) {
                throw BookException.of("book.cutOff", file.toString());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(file.toString(), e);
        }
    }

    /**
     * {@return how long the file must be at least if it was closed in an orderly way, else 0}
     *
     * <p>The header of a closed file names its last chunk of data, by the number of its first block and, in the chunk, its
     * length in blocks. The database itself would go back to an older chunk of a file that was cut off, and so lose the
     * newest changes without a word.
     */
    private static long lengthWhenClosed(Path file, byte[] headers) throws IOException {
        String header = new String(headers, 0, HEADERS_BYTES / 2, StandardCharsets.ISO_8859_1);
        Matcher block = LAST_BLOCK.matcher(header);
        if (!header.contains(CLEAN) || !block.find()) {
            return 0;
        }
        long start = Long.parseLong(block.group(1), 16) * BLOCK_BYTES;
        try (RandomAccessFile bytes = new RandomAccessFile(file.toFile(), "r")) {
            byte[] chunk = new byte[BLOCK_BYTES];
            bytes.seek(start);
            int length = Math.max(0, bytes.read(chunk));
            Matcher blocks = CHUNK_BLOCKS.matcher(new String(chunk, 0, length, StandardCharsets.ISO_8859_1));
            return start + (blocks.find() ? Long.parseLong(blocks.group(1), 16) : 1) * BLOCK_BYTES;
        }
    }

    private static boolean startsAsHeader(byte[] headers, int offset) {
        for (int i = 0; i < HEADER_START.length; i++) {
            if (offset + i >= headers.length || headers[offset + i] != HEADER_START[i]) {
                return false;
            }
        }
        return true;
    }

    /**
     * {@return a connection to the file}
     *
     * @param file the full name
     * @param mustExist whether the file must be there already
     * @throws BookException if the database refuses the file
     */
    static Database connect(Path file, boolean mustExist) {
        String name = file.toString();
        String url = "jdbc:h2:file:" + name.substring(0, name.length() - ENDING.length())
                + ";TRACE_LEVEL_FILE=0;DB_CLOSE_ON_EXIT=FALSE;IFEXISTS=" + mustExist;
        try {
            Properties login = new Properties();
            login.setProperty("user", "book");
            login.setProperty("password", "");
            Connection connection = new Driver().connect(url, login);
            if (connection == null) {
                throw new IllegalStateException("The database does not know " + url);
            }
            return new Database(file, connection);
        } catch (SQLException e) {
            throw BookFailure.of(e, file, "CONNECT");
        }
    }
}
