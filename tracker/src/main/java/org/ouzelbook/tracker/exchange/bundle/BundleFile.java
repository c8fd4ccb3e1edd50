package org.ouzelbook.tracker.exchange.bundle;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.exchange.file.LimitedStream;
import org.ouzelbook.tracker.exchange.file.UnreadableFile;
import org.ouzelbook.tracker.store.BookView;
import org.ouzelbook.tracker.store.Bundle;

/**
 * A {@link Bundle} as a zip. It is never unpacked to the disk; a zip with anything in it that a bundle has not, with a name twice,
 * or that would unpack to an absurd size is refused. The same book gives the same bytes.
 */
public final class BundleFile {
    private static final String NOTICE = "PRIVATE.txt";
    private static final long MOST_BYTES = 2L << 30;
    private static final long MOST_RATIO = 250;
    private static final long RATIO_MATTERS_ABOVE = 50L << 20;
    private static final byte[] BOOK_START = "H:2,".getBytes(StandardCharsets.US_ASCII);

    /** The first moment that a zip can tell. */
    private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 1, 1, 0, 0);

    private BundleFile() {}

    /**
     * Writes a book as a bundle.
     *
     * @param view the book
     * @param from whose book it is
     * @param notice what people who open the zip are to read first
     * @param out where to
     * @return how many lines each part has
     * @throws IOException if it cannot be written
     */
    public static Map<String, Long> write(BookView view, String from, String notice, OutputStream out)
            throws IOException {
        try (ZipOutputStream zip = new ZipOutputStream(out, StandardCharsets.UTF_8)) {
            put(zip, NOTICE);
            zip.write(notice.getBytes(StandardCharsets.UTF_8));
            return Bundle.write(view, from, part -> {
                put(zip, part);
                return zip;
            });
        }
    }

    private static void put(ZipOutputStream zip, String name) throws IOException {
        ZipEntry entry = new ZipEntry(name);
        entry.setTimeLocal(NO_TIME);
        zip.putNextEntry(entry);
    }

    /**
     * Reads and checks a bundle.
     *
     * @param file the zip
     * @return the bundle
     * @throws UnreadableFile if it is not there, no zip, or a zip that must be refused
     * @throws org.ouzelbook.tracker.store.BookException if it is a damaged bundle, none, or from a newer program
     * @throws IOException if it cannot be read
     */
    public static Bundle read(Path file) throws IOException {
        if (!Files.isRegularFile(file)) {
            throw new NoSuchFileException(file.toString());
        }
        refuseBook(file);
        try (ZipFile zip = new ZipFile(file.toFile())) {
            refuseStrange(zip, file);
            return Bundle.read(String.valueOf(file.getFileName()), part -> stream(zip, part));
        } catch (ZipException e) {
            throw new UnreadableFile(Message.of("bundle.noZip", file.toString()));
        }
    }

    /** A book is not taken for a bundle: opening it as a database would run what a stranger put into it. */
    private static void refuseBook(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            if (java.util.Arrays.equals(in.readNBytes(BOOK_START.length), BOOK_START)) {
                throw new UnreadableFile(Message.of("bundle.isBook", file.toString()));
            }
        }
    }

    private static void refuseStrange(ZipFile zip, Path file) throws UnreadableFile {
        Set<String> known = new HashSet<>(Bundle.parts());
        known.add(NOTICE);
        List<? extends ZipEntry> entries = Collections.list(zip.entries());
        if (entries.stream().noneMatch(entry -> entry.getName().equals("bundle.json"))) {
            throw new UnreadableFile(Message.of("bundle.foreign", file.toString()));
        }
        Set<String> seen = new HashSet<>();
        long total = 0;
        for (ZipEntry entry : entries) {
            if (!known.contains(entry.getName()) || !seen.add(entry.getName())) {
                throw new UnreadableFile(Message.of("bundle.strange", file.toString(), entry.getName()));
            }
            long size = Math.max(0, entry.getSize());
            total += size;
            if (total > MOST_BYTES
                    || (size > RATIO_MATTERS_ABOVE && size / Math.max(1, entry.getCompressedSize()) > MOST_RATIO)) {
                throw new UnreadableFile(Message.of("bundle.bomb", file.toString(), entry.getName()));
            }
        }
    }

    private static Optional<InputStream> stream(ZipFile zip, String part) throws IOException {
        ZipEntry entry = zip.getEntry(part);
        return entry == null
                ? Optional.empty()
                : Optional.of(new LimitedStream(zip.getInputStream(entry), Math.max(0, entry.getSize())));
    }
}
