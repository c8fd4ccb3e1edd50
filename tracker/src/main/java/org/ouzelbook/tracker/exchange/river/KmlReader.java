package org.ouzelbook.tracker.exchange.river;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import org.ouzelbook.tracker.exchange.file.PlainXml;

/**
 * Reads the placemarks of a KML document.
 *
 * <p>Source: OGC KML 2.3 (12-007r2), 2015: positions are longitude, latitude and perhaps height, by commas, with spaces between
 * them; a position of a {@code Track}, which a receiver has recorded, stands by itself with spaces in it.
 */
final class KmlReader {
    private final PlainXml xml;
    private final List<String> folders = new ArrayList<>();
    private final List<Placemark> placemarks = new ArrayList<>();

    private KmlReader(PlainXml xml) {
        this.xml = xml;
    }

    /**
     * Something drawn.
     *
     * @param line the line of the file that it begins in
     * @param folder the name of the folder that it lies in; blank if in none
     * @param name its name; may be blank
     * @param points where its points are, as written
     * @param lines where its lines run, as written
     * @param data what else is told of it, by name
     */
    record Placemark(
            int line, String folder, String name, List<String> points, List<String> lines, Map<String, String> data) {
        Placemark {
            points = List.copyOf(points);
            lines = List.copyOf(lines);
            data = Map.copyOf(data);
        }
    }

    /** Another document than KML. */
    static final class NoKml extends XMLStreamException {
        private static final long serialVersionUID = 1;

        private NoKml(String root) {
            super(root);
        }
    }

    /**
     * {@return the placemarks of a document, in its order}
     *
     * @throws NoKml if it is another document
     * @throws XMLStreamException if it is broken, or has entities
     * @throws IOException if it cannot be read
     */
    static List<Placemark> read(InputStream in) throws XMLStreamException, IOException {
        KmlReader reader = new KmlReader(PlainXml.of(in));
        reader.read();
        return List.copyOf(reader.placemarks);
    }

    private void read() throws XMLStreamException {
        boolean atRoot = true;
        while (xml.hasNext()) {
            int event = xml.next();
            if (event == XMLStreamConstants.START_ELEMENT) {
                if (atRoot && !xml.getLocalName().equals("kml")) {
                    throw new NoKml(xml.getLocalName());
                }
                atRoot = false;
                switch (xml.getLocalName()) {
                    case "Folder", "Document" -> folders.add("");
                    case "name" -> nameFolder(xml.text().strip());
                    case "Placemark" -> placemark();
                    default -> {
                        // styles, views and overlays say nothing of a river
                    }
                }
            } else if (event == XMLStreamConstants.END_ELEMENT
                    && Set.of("Folder", "Document").contains(xml.getLocalName())) {
                folders.remove(folders.size() - 1);
            }
        }
    }

    private void nameFolder(String name) {
        if (!folders.isEmpty()) {
            folders.set(folders.size() - 1, name);
        }
    }

    private void placemark() throws XMLStreamException {
        int line = xml.line();
        String name = "";
        String geometry = "";
        List<String> points = new ArrayList<>();
        List<String> lines = new ArrayList<>();
        List<String> track = new ArrayList<>();
        Map<String, String> data = new HashMap<>();
        while (!isEndOf("Placemark", xml.next())) {
            if (xml.isStartElement()) {
                switch (xml.getLocalName()) {
                    case "name" -> name = xml.text().strip();
                    case "Point", "LineString", "LinearRing" -> geometry = xml.getLocalName();
                    case "coordinates" -> {
                        String positions = xml.text();
                        if (geometry.equals("Point")) {
                            points.add(positions);
                        } else if (geometry.equals("LineString")) {
                            lines.add(positions);
                        }
                    }
                    case "Track" -> endTrack(track, lines);
                    case "coord" -> track.add(xml.text().strip().replaceAll("\\s+", ","));
                    case "Data", "SimpleData" -> {
                        String key = xml.attribute("name").orElse("");
                        data.put(key, xml.text().strip());
                    }
                    default -> {
                        // nothing that a river or a landmark has
                    }
                }
            }
        }
        endTrack(track, lines);
        String folder = folders.isEmpty() ? "" : folders.get(folders.size() - 1);
        placemarks.add(new Placemark(line, folder, name, points, lines, data));
    }

    private static void endTrack(List<String> track, List<String> lines) {
        if (!track.isEmpty()) {
            lines.add(String.join(" ", track));
            track.clear();
        }
    }

    private boolean isEndOf(String element, int event) {
        return event == XMLStreamConstants.END_ELEMENT && xml.getLocalName().equals(element);
    }
}
