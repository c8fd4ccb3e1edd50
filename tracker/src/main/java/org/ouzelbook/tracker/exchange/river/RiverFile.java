package org.ouzelbook.tracker.exchange.river;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.exchange.file.CellText;
import org.ouzelbook.tracker.exchange.file.FileSource;
import org.ouzelbook.tracker.exchange.file.FileSources;
import org.ouzelbook.tracker.exchange.file.UnreadableFile;
import org.ouzelbook.tracker.river.DrawnRiver;

/**
 * The rivers drawn in one or more files.
 *
 * @param rivers the rivers, in the order of the files; pieces of one name are one river
 * @param problems what could not be read, with the file and the place in it; the rivers are complete only if there are none
 * @param remarks what was passed over, such as features without a line
 */
public record RiverFile(List<DrawnRiver> rivers, List<Message> problems, List<Message> remarks) {
    /** More is no river, and would not fit into memory. */
    private static final long MOST_BYTES = 200_000_000;

    /** No river is longer. */
    private static final double MOST_KM = 8000;

    private static final int SHOWN_OF_NAME = 40;

    /** Copies the lists. */
    public RiverFile {
        rivers = List.copyOf(rivers);
        problems = List.copyOf(problems);
        remarks = List.copyOf(remarks);
    }

    /**
     * {@return the rivers drawn in these files}
     *
     * @param files GeoJSON, GPX, KML or KMZ files, told apart by what is in them
     * @throws UncheckedIOException if a file cannot be read
     */
    public static RiverFile read(List<Path> files) {
        Pieces pieces = new Pieces();
        for (Path file : files) {
            read(file, pieces);
        }
        return pieces.file();
    }

    private static void read(Path file, Pieces pieces) {
        String name = String.valueOf(file.getFileName());
        try {
            if (Files.size(file) > MOST_BYTES) {
                pieces.problem("river.file.tooBig", name, MOST_BYTES / 1_000_000);
                return;
            }
            String start = start(file);
            if (start.startsWith("{") || start.startsWith("[")) {
                try (BufferedReader text = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
                    skipByteOrderMark(text);
                    new GeoJsonRivers(name, pieces).read(text);
                }
            } else if (start.startsWith("PK")) {
                readKmz(file, name, pieces);
            } else if (start.startsWith("<")
                    && (start.contains("<kml") || name.toLowerCase(Locale.ROOT).endsWith(".kml"))) {
                try (InputStream in = Files.newInputStream(file)) {
                    new KmlRivers(name, pieces).read(in);
                }
            } else if (start.startsWith("<")) {
                new GpxRivers(name, pieces).read(file);
            } else {
                pieces.problem("river.file.unknown", name);
            }
        } catch (CharacterCodingException e) {
            pieces.problem("river.file.notUtf8", name);
        } catch (IOException e) {
            throw new UncheckedIOException(file.toString(), e);
        }
    }

    /** A KMZ is a zip with one KML document in it. */
    private static void readKmz(Path file, String name, Pieces pieces) throws IOException {
        try {
            List<FileSource> documents = FileSources.of(List.of(file)).files().stream()
                    .filter(source -> source.plainName().endsWith(".kml"))
                    .toList();
            if (documents.isEmpty()) {
                pieces.problem("river.file.unknown", name);
            }
            for (FileSource document : documents) {
                try (InputStream in = document.open()) {
                    new KmlRivers(name, pieces).read(in);
                }
            }
        } catch (UnreadableFile e) {
            pieces.problem(e.why().key(), e.why().facts().toArray());
        }
    }

    /**
     * {@return the km of the lower end that somebody wrote; 0 if nobody did; empty if it is no distance in km between 0 and 8000}
     *
     * @param written a number
     */
    static Optional<Double> kmOrigin(String written) {
        if (written.isBlank()) {
            return Optional.of(0.0);
        }
        try {
            double km = Double.parseDouble(written.strip().replace(',', '.'));
            return km >= 0 && km <= MOST_KM ? Optional.of(km) : Optional.empty();
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }

    private static String start(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return new String(in.readNBytes(512), StandardCharsets.UTF_8)
                    .replace("\uFEFF", "")
                    .strip();
        }
    }

    private static void skipByteOrderMark(BufferedReader text) throws IOException {
        text.mark(1);
        if (text.read() != '\uFEFF') {
            text.reset();
        }
    }

    /** Gathers pieces of line by the name of their river. */
    static final class Pieces {
        private final Map<String, DrawnRiver> rivers = new LinkedHashMap<>();
        private final List<Message> problems = new ArrayList<>();
        private final List<Message> remarks = new ArrayList<>();

        void problem(String key, Object... facts) {
            problems.add(Message.of(key, facts));
        }

        void remark(String key, Object... facts) {
            remarks.add(Message.of(key, facts));
        }

        void add(DrawnRiver drawn) {
            if (drawn.name().length() > CellText.LONGEST_NAME) {
                problem(
                        "river.file.longName",
                        drawn.source(),
                        drawn.name().substring(0, SHOWN_OF_NAME),
                        CellText.LONGEST_NAME);
                return;
            }
            DrawnRiver river = new DrawnRiver(
                    CellText.visible(drawn.name()),
                    drawn.mouthOn().map(CellText::visible),
                    drawn.kmOrigin(),
                    drawn.pieces(),
                    drawn.walked(),
                    drawn.source());
            rivers.merge(river.name().strip().toLowerCase(Locale.ROOT), river, Pieces::joined);
        }

        private static DrawnRiver joined(DrawnRiver one, DrawnRiver other) {
            List<List<GeoPoint>> all = new ArrayList<>(one.pieces());
            all.addAll(other.pieces());
            String source = one.source().equals(other.source()) ? one.source() : one.source() + ", " + other.source();
            return new DrawnRiver(
                    one.name(),
                    one.mouthOn().or(other::mouthOn),
                    Math.max(one.kmOrigin(), other.kmOrigin()),
                    all,
                    one.walked() && other.walked(),
                    source);
        }

        RiverFile file() {
            return new RiverFile(List.copyOf(rivers.values()), problems, remarks);
        }
    }
}
