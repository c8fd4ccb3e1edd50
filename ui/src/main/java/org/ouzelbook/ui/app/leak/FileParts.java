package org.ouzelbook.ui.app.leak;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.lang.GeoLocation;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.Tag;
import com.drew.metadata.exif.GpsDirectory;
import com.drew.metadata.xmp.XmpDirectory;
import java.io.ByteArrayInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Base64;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.exchange.file.FileSource;
import org.ouzelbook.tracker.exchange.geopackage.DatabaseTables;
import org.ouzelbook.tracker.exchange.geopackage.FreedRoom;
import org.ouzelbook.tracker.exchange.xlsx.Workbook;
import org.ouzelbook.ui.app.WrongRequest;

/**
 * Takes a file apart into what can be read in it: the files of a zip, the sheets of a workbook, the tables of a GeoPackage, text and properties of a PDF, what a
 * picture says of itself, pictures within a page. What is no text is handed on as bytes too.
 */
final class FileParts {
    /** Hears the parts of a file. */
    interface Reader {
        /** A text, which can be read until this returns. */
        void text(String where, CharSequence text) throws IOException;

        /** Bytes that are no text. */
        void bytes(String where, byte[] bytes);

        /** Bytes that were left over, in which a line may be broken off anywhere. */
        void remains(String where, byte[] bytes);
    }

    private static final int DEEPEST = 4;
    private static final long MOST_BYTES = 512L << 20;
    private static final long MOST_RATIO = 250;
    private static final long RATIO_MATTERS_ABOVE = 50L << 20;
    private static final int SHORTEST_RUN = 4;

    private static final Pattern DATA =
            Pattern.compile("data:([a-z]+)/[a-zA-Z0-9.+-]+(?:;[a-z0-9=-]+)*;base64,([A-Za-z0-9+/=\\s]+)");
    private static final Pattern RUN = Pattern.compile("[\\p{Print}\\p{L}]{" + SHORTEST_RUN + ",}");

    private static final Pattern WIDE_RUN = Pattern.compile("[\\x20-\\x7e\u00a0-\u024f]{" + SHORTEST_RUN + ",}");

    /** How archives begin that are not unpacked here: 7z, RAR, bzip2, xz, Zstandard, LZ4. */
    private static final List<String> PACKED =
            List.of("7z\u00bc\u00af", "Rar!", "BZh", "\u00fd7zXZ", "(\u00b5/\u00fd", "\u0004\"M\u0018");

    private final Reader reader;
    private final LookProgress looked;
    private long unpacked;

    /**
     * @param reader hears the parts
     * @param looked hears how far it has come
     */
    FileParts(Reader reader, LookProgress looked) {
        this.reader = reader;
        this.looked = looked;
    }

    /**
     * Reads a file.
     *
     * @throws WrongRequest if it unpacks to an absurd size
     * @throws CancellationException if it is stopped
     * @throws IOException if it cannot be taken apart, so that nobody can say what is in it
     */
    void read(String name, LongBytes bytes) throws IOException {
        try {
            reader.text("", name.replaceFirst(".*[/\\\\]", ""));
            part("", name, bytes, 0);
        } catch (WrongRequest | CancellationException e) {
            throw e;
        } catch (IOException | RuntimeException e) {
            throw new Broken(name, e);
        }
    }

    /** A file that cannot be taken apart. */
    static final class Broken extends IOException {
        private static final long serialVersionUID = 1;

        private final String file;

        private Broken(String file, Exception cause) {
            super(file, cause);
            this.file = file;
        }

        String file() {
            return file;
        }
    }

    private void part(String where, String name, LongBytes bytes, int depth) throws IOException {
        if (depth > DEEPEST + 1) {
            throw new WrongRequest(Message.of("leak.wrong.deep", name));
        }
        if (bytes.startWith("PK\u0003\u0004")) {
            zip(where, name, bytes, depth);
            return;
        }
        if (depth == 0) {
            looked.part(bytes.size());
        }
        if (bytes.startWith("%PDF")) {
            pdf(where, name, bytes, depth);
        } else if (DatabaseTables.isDatabase(bytes.first(DatabaseTables.START))) {
            database(where, bytes);
        } else if (isPicture(bytes)) {
            picture(where, bytes);
        } else if (bytes.startWith("\u001f\u008b")) {
            try (InputStream in = new GZIPInputStream(bytes.open());
                    LongBytes part = new LongBytes()) {
                unpack(in, name, bytes.size(), part);
                part(where, name, part, depth + 1);
            }
        } else if (isPackedOtherwise(bytes)) {
            throw new WrongRequest(Message.of("leak.wrong.packed", name));
        } else {
            textOrBytes(where, name, bytes, depth);
        }
    }

    private static boolean isPicture(LongBytes bytes) throws IOException {
        byte[] first = bytes.first(10);
        return bytes.startWith("\u0089PNG")
                || bytes.startWith("\u00ff\u00d8\u00ff")
                || bytes.startWith("GIF8")
                || bytes.startWith("II*\u0000")
                || bytes.startWith("MM\u0000*")
                || (first.length > 8 && new String(first, 4, 4, StandardCharsets.ISO_8859_1).equals("ftyp"))
                || (bytes.startWith("RIFF") && bytes.size() > 12 && first[8] == 'W' && first[9] == 'E');
    }

    private static boolean isPackedOtherwise(LongBytes bytes) throws IOException {
        for (String start : PACKED) {
            if (bytes.startWith(start)) {
                return true;
            }
        }
        // a spreadsheet or document that wants a password is a file of the older form with the real one in it,
        // encrypted
        return bytes.startWith("\u00d0\u00cf\u0011\u00e0")
                && new String(bytes.all(), StandardCharsets.ISO_8859_1)
                        .contains(new String(
                                "EncryptedPackage".getBytes(StandardCharsets.UTF_16LE), StandardCharsets.ISO_8859_1));
    }

    private static String within(String where, String part) {
        return where.isEmpty() ? part : where + "!" + part;
    }

    private void zip(String where, String name, LongBytes bytes, int depth) throws IOException {
        boolean workbook = false;
        try (CountedStream packed = new CountedStream(bytes.open());
                ZipInputStream zip = new ZipInputStream(packed)) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                workbook |= entry.getName().equals("xl/workbook.xml");
                reader.text(where, entry.getName());
                try (LongBytes part = new LongBytes()) {
                    unpack(zip, name, bytes.size(), part);
                    if (depth == 0) {
                        looked.part(packed.count());
                    }
                    part(within(where, entry.getName()), entry.getName(), part, depth + 1);
                }
            }
        }
        if (workbook) {
            sheets(where, bytes);
        }
        reader.text(where, ZipRemarks.of(bytes.all()));
    }

    private void unpack(InputStream in, String name, long packed, OutputStream out) throws IOException {
        byte[] block = new byte[1 << 16];
        for (int read = in.read(block); read > 0; read = in.read(block)) {
            unpacked += read;
            if (unpacked > MOST_BYTES || (unpacked > RATIO_MATTERS_ABOVE && unpacked / packed > MOST_RATIO)) {
                throw new WrongRequest(Message.of("leak.wrong.large", name));
            }
            out.write(block, 0, read);
        }
    }

    /** The sheets of a workbook as tables, beside the files that it is made of. */
    private void sheets(String where, LongBytes bytes) throws IOException {
        Path copy = Files.createTempFile("ouzelbook", ".xlsx");
        copy.toFile().deleteOnExit();
        try {
            try (InputStream in = bytes.open()) {
                Files.copy(in, copy, StandardCopyOption.REPLACE_EXISTING);
            }
            for (FileSource sheet : Workbook.sheets(new FileSource.OnDisk("workbook.xlsx", copy))) {
                String name = sheet.name().replaceFirst(".*[!/\\\\]", "");
                try (InputStream in = sheet.open();
                        LongBytes table = new LongBytes();
                        Scratch scratch = new Scratch(looked)) {
                    in.transferTo(table);
                    reader.text(within(where, name), scratch.decoded(table, StandardCharsets.UTF_8));
                }
            }
        } finally {
            Files.deleteIfExists(copy);
        }
    }

    private void pdf(String where, String name, LongBytes bytes, int depth) throws IOException {
        new PdfParts(
                        (part, text) -> reader.text(within(where, part), text),
                        (part, file) -> part(within(where, part), name, LongBytes.of(file), depth + 1))
                .read(bytes.all());
    }

    private void database(String where, LongBytes bytes) throws IOException {
        byte[] all = bytes.all();
        remains(where, all);
        try (DatabaseTables tables = DatabaseTables.of(all)) {
            for (String table : tables.names()) {
                String name = within(where, table);
                try (Scratch scratch = new Scratch(looked)) {
                    reader.text(
                            name, scratch.written(out -> tables.write(table, out, some -> reader.bytes(name, some))));
                }
            }
        }
    }

    /** Rows that were removed are in the file until their room is used again. */
    private void remains(String where, byte[] bytes) throws IOException {
        for (byte[] room : FreedRoom.of(bytes)) {
            try (Scratch scratch = new Scratch(looked)) {
                runs(where, LongBytes.of(room), scratch);
            }
            reader.remains(where, room);
        }
    }

    /** The readable runs in bytes, in letters of one or two bytes. */
    private void runs(String where, LongBytes bytes, Scratch scratch) throws IOException {
        reader.text(where, scratch.matches(scratch.decoded(bytes, StandardCharsets.UTF_8), RUN));
        for (int start = 0; start < 2; start++) {
            try (InputStream in = bytes.open();
                    LongBytes shifted = new LongBytes()) {
                in.skipNBytes(Math.min(start, bytes.size()));
                in.transferTo(shifted);
                reader.text(where, scratch.matches(scratch.decoded(shifted, StandardCharsets.UTF_16LE), WIDE_RUN));
            }
        }
    }

    private void picture(String where, LongBytes bytes) throws IOException {
        try {
            Metadata metadata = ImageMetadataReader.readMetadata(new ByteArrayInputStream(bytes.all()));
            for (Directory directory : metadata.getDirectories()) {
                for (Tag tag : directory.getTags()) {
                    reader.text(within(where, directory.getName()), String.valueOf(tag.getDescription()));
                }
                if (directory instanceof XmpDirectory xmp) {
                    for (String value : xmp.getXmpProperties().values()) {
                        reader.text(within(where, "XMP"), value);
                    }
                }
                if (directory instanceof GpsDirectory gps) {
                    GeoLocation place = gps.getGeoLocation();
                    if (place != null) {
                        reader.text(
                                within(where, "GPS"),
                                String.format(
                                        java.util.Locale.ROOT, "%.7f %.7f", place.getLatitude(), place.getLongitude()));
                    }
                }
            }
        } catch (ImageProcessingException e) {
            reader.bytes(where, bytes.all());
        }
    }

    private void textOrBytes(String where, String name, LongBytes bytes, int depth) throws IOException {
        try (Scratch scratch = new Scratch(looked)) {
            boolean wide = bytes.startWith("\u00ff\u00fe") || bytes.startWith("\u00fe\u00ff");
            if (!wide && holdsNought(bytes)) {
                reader.bytes(where, bytes.all());
                runs(where, bytes, scratch);
                return;
            }
            CharSequence text = scratch.decoded(bytes);
            Matcher data = DATA.matcher(text);
            while (data.find()) {
                if (!data.group(1).equals("font") && !data.group(1).equals("application")) {
                    byte[] picture = Base64.getMimeDecoder().decode(data.group(2));
                    part(within(where, "picture"), name, LongBytes.of(picture), depth + 1);
                }
            }
            reader.text(where, scratch.replaced(text, DATA, any -> "data:"));
        }
    }

    private static boolean holdsNought(LongBytes bytes) throws IOException {
        try (InputStream in = bytes.open()) {
            for (int one = in.read(); one >= 0; one = in.read()) {
                if (one == 0) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Counts the bytes that were read. */
    private static final class CountedStream extends FilterInputStream {
        private long count;

        CountedStream(InputStream in) {
            super(in);
        }

        long count() {
            return count;
        }

        @Override
        public int read(byte[] into, int from, int length) throws IOException {
            int some = super.read(into, from, length);
            count += Math.max(0, some);
            return some;
        }
    }
}
