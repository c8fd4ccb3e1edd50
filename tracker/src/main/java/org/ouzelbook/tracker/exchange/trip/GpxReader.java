package org.ouzelbook.tracker.exchange.trip;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.exchange.file.FileSource;
import org.ouzelbook.tracker.exchange.file.PlainXml;

/** Reads waypoints and tracks of a GPX file. */
final class GpxReader {
    final List<Waypoint> waypoints = new ArrayList<>();
    final List<Track> tracks = new ArrayList<>();
    private final PlainXml xml;

    private GpxReader(PlainXml xml) {
        this.xml = xml;
    }

    static GpxReader of(FileSource source) throws IOException {
        try (InputStream in = source.open()) {
            GpxReader reader = new GpxReader(PlainXml.of(in));
            reader.read();
            return reader;
        } catch (XMLStreamException e) {
            throw PlainXml.unreadable(e);
        }
    }

    private void read() throws XMLStreamException {
        while (xml.hasNext()) {
            if (xml.next() == XMLStreamConstants.START_ELEMENT) {
                switch (xml.getLocalName()) {
                    case "wpt" -> waypoint();
                    case "trk" -> track();
                    default -> {
                        // routes are plans, and tell of no walk
                    }
                }
            }
        }
    }

    private void waypoint() throws XMLStreamException {
        int line = xml.line();
        String latitude = xml.attribute("lat").orElse("");
        String longitude = xml.attribute("lon").orElse("");
        String time = "";
        List<String> texts = new ArrayList<>();
        while (!isEndOf("wpt", xml.next())) {
            if (xml.isStartElement()) {
                switch (xml.getLocalName()) {
                    case "time" -> time = xml.text().strip();
                    case "name", "cmt", "desc" -> texts.add(xml.text());
                    default -> xml.text();
                }
            }
        }
        waypoints.add(new Waypoint(line, latitude, longitude, time, texts));
    }

    private void track() throws XMLStreamException {
        int line = xml.line();
        String name = "";
        List<List<GeoPoint>> segments = new ArrayList<>();
        List<String> times = new ArrayList<>();
        while (!isEndOf("trk", xml.next())) {
            if (xml.isStartElement()) {
                switch (xml.getLocalName()) {
                    case "name" -> name = segments.isEmpty() ? xml.text().strip() : name;
                    case "trkseg" -> segments.add(new ArrayList<>());
                    case "trkpt" -> trackPoint(segments, times);
                    default -> xml.text();
                }
            }
        }
        Optional<String> start = times.stream().findFirst();
        Optional<String> end = times.isEmpty() ? Optional.empty() : Optional.of(times.get(times.size() - 1));
        tracks.add(new Track(line, name, segments, start, end));
    }

    private void trackPoint(List<List<GeoPoint>> segments, List<String> times) throws XMLStreamException {
        Optional<GeoPoint> point = point(xml.attribute("lat"), xml.attribute("lon"));
        if (point.isPresent() && !segments.isEmpty()) {
            segments.get(segments.size() - 1).add(point.get());
        }
        while (!isEndOf("trkpt", xml.next())) {
            if (xml.isStartElement() && xml.getLocalName().equals("time")) {
                times.add(xml.text().strip());
            }
        }
    }

    private boolean isEndOf(String element, int event) {
        return event == XMLStreamConstants.END_DOCUMENT
                || (event == XMLStreamConstants.END_ELEMENT
                        && xml.getLocalName().equals(element));
    }

    /** A receiver that lost its satellites writes points that are none; the walk goes on without them. */
    private static Optional<GeoPoint> point(Optional<String> latitude, Optional<String> longitude) {
        try {
            return Optional.of(
                    new GeoPoint(Double.parseDouble(latitude.orElse("")), Double.parseDouble(longitude.orElse(""))));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }
}
