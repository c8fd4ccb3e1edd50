package org.ouzelbook.tracker.exchange.river;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.xml.stream.XMLStreamException;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.exchange.file.PlainXml;
import org.ouzelbook.tracker.river.DrawnRiver;

/** Reads rivers from the lines of a KML document. Lines of our own other layers are no rivers. */
final class KmlRivers {
    /** Layers that we write beside rivers, and that are no rivers. */
    static final Set<String> OTHER_LAYERS = Set.of("territories", "sightings", "nests", "landmarks");

    private static final int LONGEST_SHOWN = 60;

    private final String file;
    private final RiverFile.Pieces pieces;

    KmlRivers(String file, RiverFile.Pieces pieces) {
        this.file = file;
        this.pieces = pieces;
    }

    void read(InputStream in) throws IOException {
        boolean found = false;
        try {
            for (KmlReader.Placemark placemark : KmlReader.read(in)) {
                found |= !placemark.lines().isEmpty();
                if (!placemark.lines().isEmpty() && !OTHER_LAYERS.contains(placemark.folder())) {
                    add(placemark);
                }
            }
        } catch (PlainXml.Refused e) {
            pieces.problem("river.file.doctype", file, e.line());
            return;
        } catch (KmlReader.NoKml e) {
            pieces.problem("river.file.notGpx", file, String.valueOf(e.getMessage()));
            return;
        } catch (XMLStreamException e) {
            int line = e.getLocation() == null ? 0 : e.getLocation().getLineNumber();
            pieces.problem("river.file.brokenXml", file, line);
            return;
        }
        if (!found) {
            pieces.problem("river.file.noLine", file);
        }
    }

    private void add(KmlReader.Placemark placemark) {
        Message where = Message.of("river.file.at.line", placemark.line());
        List<List<GeoPoint>> lines = new ArrayList<>();
        for (String line : placemark.lines()) {
            List<GeoPoint> points = new ArrayList<>();
            for (String position : line.strip().split("\\s+", -1)) {
                Coordinates found = position(position, where);
                if (found.point().isEmpty()) {
                    found.problem()
                            .ifPresent(problem -> pieces.problem(
                                    problem.key(), problem.facts().toArray()));
                    return;
                }
                points.add(found.point().get());
            }
            lines.add(points);
        }
        Optional<Double> origin = kmOrigin(placemark, where);
        if (origin.isPresent()) {
            pieces.add(new DrawnRiver(
                    placemark.name().isBlank() ? RiverNames.fromFile(file) : placemark.name(),
                    Optional.ofNullable(placemark.data().get("mouth_on")).filter(name -> !name.isBlank()),
                    origin.get(),
                    lines,
                    false,
                    file));
        }
    }

    private Optional<Double> kmOrigin(KmlReader.Placemark placemark, Message where) {
        String written = placemark.data().getOrDefault("km_origin", "");
        Optional<Double> origin = RiverFile.kmOrigin(written);
        if (origin.isEmpty()) {
            pieces.problem("river.file.kmOrigin", file, where, written);
        }
        return origin;
    }

    private Coordinates position(String written, Message where) {
        return position(written, file, where);
    }

    /** {@return the point that a position of KML tells} */
    static Coordinates position(String written, String file, Message where) {
        String[] numbers = written.strip().split(",", -1);
        try {
            if (numbers.length == 2 || numbers.length == 3) {
                double longitude = Double.parseDouble(numbers[0]);
                double latitude = Double.parseDouble(numbers[1]);
                if (Double.isFinite(longitude) && Double.isFinite(latitude)) {
                    return Coordinates.of(longitude, latitude, file, where);
                }
            }
        } catch (NumberFormatException e) {
            // told below, with what is no pair of numbers at all
        }
        String shown = written.length() > LONGEST_SHOWN ? written.substring(0, LONGEST_SHOWN) + "…" : written;
        return new Coordinates(Optional.empty(), Optional.of(Message.of("river.file.noDegrees", file, where, shown)));
    }
}
