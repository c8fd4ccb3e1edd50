package org.ouzelbook.tracker.exchange.river;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Optional;
import javax.xml.stream.XMLStreamException;
import org.ouzelbook.tracker.domain.LandmarkKind;
import org.ouzelbook.tracker.exchange.cell.Words;
import org.ouzelbook.tracker.exchange.file.FileSource;
import org.ouzelbook.tracker.exchange.file.NumberedRows;
import org.ouzelbook.tracker.exchange.file.PlainXml;

/**
 * What a KML document holds for a book.
 *
 * @param landmarks its points as a table of landmarks; empty if it has none
 * @param hasLines whether it has lines, which may be rivers
 */
public record KmlPlaces(Optional<FileSource> landmarks, boolean hasLines) {
    private static final List<String> COLUMNS = List.of("name", "latitude", "longitude", "river", "kind", "aliases");

    /**
     * {@return whether a file is KML, by the end of its name}
     *
     * @param source a file
     */
    public static boolean isOne(FileSource source) {
        return source.plainName().endsWith(".kml");
    }

    /**
     * {@return what a document holds}
     *
     * @param source the document
     * @throws org.ouzelbook.tracker.exchange.file.UnreadableFile if it is broken
     * @throws IOException if it cannot be read
     */
    public static KmlPlaces of(FileSource source) throws IOException {
        NumberedRows landmarks = new NumberedRows(COLUMNS);
        boolean hasLines = false;
        try (InputStream in = source.open()) {
            for (KmlReader.Placemark placemark : KmlReader.read(in)) {
                hasLines |= !placemark.lines().isEmpty();
                if (!placemark.points().isEmpty() && isLandmark(placemark)) {
                    landmarks.add(placemark.line(), row(placemark));
                }
            }
        } catch (XMLStreamException e) {
            throw PlainXml.unreadable(e);
        }
        return new KmlPlaces(landmarks.table(source.name() + "!points"), hasLines);
    }

    private static boolean isLandmark(KmlReader.Placemark placemark) {
        return placemark.folder().equals("landmarks") || !KmlRivers.OTHER_LAYERS.contains(placemark.folder());
    }

    private static List<String> row(KmlReader.Placemark placemark) {
        String[] numbers = placemark.points().get(0).strip().split(",", -1);
        String kind = placemark.data().getOrDefault("kind", "");
        return List.of(
                placemark.name(),
                numbers.length > 1 ? numbers[1] : "",
                numbers[0],
                placemark.data().getOrDefault("river", ""),
                kind.isEmpty() ? kind(placemark.name()) : kind,
                placemark.data().getOrDefault("aliases", ""));
    }

    /** {@return the kind that the last word of a name tells, as in Mill Bridge; blank if none} */
    private static String kind(String name) {
        String last = name.strip().replaceFirst("(?s).*\\s", "");
        return Words.LANDMARK_KINDS
                .term(last)
                .filter(kind -> kind != LandmarkKind.OTHER)
                .map(kind -> last)
                .orElse("");
    }
}
