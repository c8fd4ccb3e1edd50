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
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.text.PDFTextStripper;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.exchange.file.FileSource;
import org.ouzelbook.tracker.exchange.geopackage.DatabaseTables;
import org.ouzelbook.tracker.exchange.xlsx.Workbook;
import org.ouzelbook.ui.app.WrongRequest;

/**
 * Takes a file apart into what can be read in it: the files of a zip, the sheets of a workbook, the tables of a GeoPackage, text and properties of a PDF, what a
 * picture says of itself, pictures within a page. What is no text is handed on as bytes too.
 */
final class FileParts {
    /** Hears the parts of a file. */
    interface Reader {
        /** A text. */
        void text(String where, String text);

        /** Bytes that are no text. */
        void bytes(String where, byte[] bytes);
    }

    private static final int DEEPEST = 4;
    private static final long MOST_BYTES = 512L << 20;
    private static final long MOST_RATIO = 250;
    private static final long RATIO_MATTERS_ABOVE = 50L << 20;
    private static final int SHORTEST_RUN = 4;
    private static final Charset WINDOWS = Charset.forName("windows-1252");

    private static final Pattern DATA =
            Pattern.compile("data:([a-z]+)/[a-zA-Z0-9.+-]+(?:;[a-z0-9=-]+)*;base64,([A-Za-z0-9+/=\\s]+)");
    private static final Pattern RUN = Pattern.compile("[\\p{Print}\\p{L}]{" + SHORTEST_RUN + ",}");

    private final Reader reader;
    private long unpacked;

    FileParts(Reader reader) {
        this.reader = reader;
    }

    /**
     * Reads a file.
     *
     * @throws WrongRequest if it unpacks to an absurd size
     * @throws IOException if it cannot be taken apart, so that nobody can say what is in it
     */
    void read(String name, byte[] bytes) throws IOException {
        try {
            part("", name, bytes, 0);
        } catch (IOException | RuntimeException e) {
            if (e instanceof WrongRequest wrong) {
                throw wrong;
            }
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

    private void part(String where, String name, byte[] bytes, int depth) throws IOException {
        if (startsWith(bytes, "PK\u0003\u0004")) {
            if (depth > DEEPEST) {
                throw new WrongRequest(Message.of("leak.wrong.deep", name));
            }
            zip(where, name, bytes, depth);
        } else if (startsWith(bytes, "%PDF")) {
            pdf(where, bytes);
        } else if (DatabaseTables.isDatabase(bytes)) {
            database(where, bytes);
        } else if (isPicture(bytes)) {
            picture(where, bytes);
        } else {
            textOrBytes(where, name, bytes, depth);
        }
    }

    private static boolean startsWith(byte[] bytes, String start) {
        byte[] wanted = start.getBytes(StandardCharsets.ISO_8859_1);
        return bytes.length >= wanted.length
                && java.util.Arrays.equals(bytes, 0, wanted.length, wanted, 0, wanted.length);
    }

    private static boolean isPicture(byte[] bytes) {
        return startsWith(bytes, "\u0089PNG")
                || startsWith(bytes, "\u00ff\u00d8\u00ff")
                || startsWith(bytes, "GIF8")
                || startsWith(bytes, "II*\u0000")
                || startsWith(bytes, "MM\u0000*")
                || (startsWith(bytes, "RIFF") && bytes.length > 12 && bytes[8] == 'W' && bytes[9] == 'E');
    }

    private static String within(String where, String part) {
        return where.isEmpty() ? part : where + "!" + part;
    }

    private void zip(String where, String name, byte[] bytes, int depth) throws IOException {
        boolean workbook = false;
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                workbook |= entry.getName().equals("xl/workbook.xml");
                reader.text(where, entry.getName());
                part(within(where, entry.getName()), entry.getName(), limited(zip, name, bytes.length), depth + 1);
            }
        }
        if (workbook) {
            sheets(where, bytes);
        }
    }

    private byte[] limited(InputStream in, String name, long packed) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        byte[] block = new byte[1 << 16];
        for (int read = in.read(block); read > 0; read = in.read(block)) {
            unpacked += read;
            if (unpacked > MOST_BYTES || (unpacked > RATIO_MATTERS_ABOVE && unpacked / packed > MOST_RATIO)) {
                throw new WrongRequest(Message.of("leak.wrong.large", name));
            }
            out.write(block, 0, read);
        }
        return out.toByteArray();
    }

    /** The sheets of a workbook as tables, beside the files that it is made of. */
    private void sheets(String where, byte[] bytes) throws IOException {
        Path copy = Files.createTempFile("ouzelbook", ".xlsx");
        try {
            Files.write(copy, bytes);
            for (FileSource sheet : Workbook.sheets(new FileSource.OnDisk("workbook.xlsx", copy))) {
                try (InputStream in = sheet.open()) {
                    String name = sheet.name().replaceFirst(".*[!/\\\\]", "");
                    reader.text(within(where, name), new String(in.readAllBytes(), StandardCharsets.UTF_8));
                }
            }
        } finally {
            Files.deleteIfExists(copy);
        }
    }

    private void pdf(String where, byte[] bytes) throws IOException {
        try (PDDocument document = Loader.loadPDF(bytes)) {
            PDFTextStripper stripper = new PDFTextStripper();
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                reader.text(within(where, "page " + page), stripper.getText(document));
            }
            for (COSName key : document.getDocumentInformation().getCOSObject().keySet()) {
                reader.text(
                        within(where, key.getName()),
                        String.valueOf(document.getDocumentInformation().getPropertyStringValue(key.getName())));
            }
            PDMetadata metadata = document.getDocumentCatalog().getMetadata();
            if (metadata != null) {
                reader.text(within(where, "metadata"), new String(metadata.toByteArray(), StandardCharsets.UTF_8));
            }
        }
    }

    private void database(String where, byte[] bytes) throws IOException {
        for (DatabaseTables.Table table : DatabaseTables.read(bytes)) {
            String name = within(where, table.name());
            reader.text(name, table.text());
            table.bytes().forEach(some -> reader.bytes(name, some));
        }
    }

    private void picture(String where, byte[] bytes) throws IOException {
        try {
            Metadata metadata = ImageMetadataReader.readMetadata(new ByteArrayInputStream(bytes));
            for (Directory directory : metadata.getDirectories()) {
                for (Tag tag : directory.getTags()) {
                    reader.text(within(where, directory.getName()), String.valueOf(tag.getDescription()));
                }
                if (directory instanceof XmpDirectory xmp) {
                    xmp.getXmpProperties().values().forEach(value -> reader.text(within(where, "XMP"), value));
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
            reader.bytes(where, bytes);
        }
    }

    private void textOrBytes(String where, String name, byte[] bytes, int depth) throws IOException {
        boolean binary = false;
        for (byte one : bytes) {
            binary |= one == 0;
        }
        if (binary && !startsWith(bytes, "\u00ff\u00fe") && !startsWith(bytes, "\u00fe\u00ff")) {
            reader.bytes(where, bytes);
            Matcher run = RUN.matcher(new String(bytes, StandardCharsets.UTF_8));
            StringBuilder runs = new StringBuilder();
            while (run.find()) {
                runs.append(run.group()).append('\n');
            }
            reader.text(where, runs.toString());
            return;
        }
        String text = decoded(bytes);
        Matcher data = DATA.matcher(text);
        while (data.find()) {
            if (!data.group(1).equals("font") && !data.group(1).equals("application")) {
                part(within(where, "picture"), name, Base64.getMimeDecoder().decode(data.group(2)), depth + 1);
            }
        }
        reader.text(where, data.replaceAll("data:"));
    }

    private static String decoded(byte[] bytes) {
        if (startsWith(bytes, "\u00ff\u00fe") || startsWith(bytes, "\u00fe\u00ff")) {
            return new String(bytes, StandardCharsets.UTF_16);
        }
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException e) {
            return new String(bytes, WINDOWS);
        }
    }
}
