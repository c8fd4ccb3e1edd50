package org.ouzelbook.tracker.exchange.river;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.exchange.file.PlainXml;
import org.ouzelbook.tracker.river.DrawnRiver;

/**
 * Reads rivers from the tracks and routes of a GPX file. Nothing outside of the file is ever fetched: a document type or an
 * entity of its own is refused.
 *
 * <p>Source: GPX 1.1 schema, topografix.com/GPX/1/1.
 */
final class GpxRivers {
    private final String file;
    private final RiverFile.Pieces pieces;
    private final List<List<GeoPoint>> segments = new ArrayList<>();
    private @Nullable String name;
    private boolean inTrack;
    private boolean inRoute;
    private int points;
    private boolean found;

    GpxRivers(String file, RiverFile.Pieces pieces) {
        this.file = file;
        this.pieces = pieces;
    }

    void read(Path path) throws IOException {
        try (InputStream in = Files.newInputStream(path)) {
            read(PlainXml.of(in));
        } catch (PlainXml.Refused e) {
            pieces.problem("river.file.doctype", file, e.line());
        } catch (XMLStreamException e) {
            int line = e.getLocation() == null ? 0 : e.getLocation().getLineNumber();
            pieces.problem("river.file.brokenXml", file, line);
        }
    }

    private void read(PlainXml xml) throws XMLStreamException {
        int depth = 0;
        while (xml.hasNext()) {
            int event = xml.next();
            if (event == XMLStreamConstants.START_ELEMENT) {
                depth++;
                if (depth == 1 && !xml.getLocalName().equals("gpx")) {
                    pieces.problem("river.file.notGpx", file, xml.getLocalName());
                    return;
                }
                if (!start(xml)) {
                    return;
                }
                if (xml.isEndElement()) {
                    depth--;
                }
            } else if (event == XMLStreamConstants.END_ELEMENT) {
                depth--;
                end(xml.getLocalName());
            }
        }
        if (!found) {
            pieces.problem("river.file.noTrack", file);
        }
    }

    /** {@return whether to go on} */
    private boolean start(PlainXml xml) throws XMLStreamException {
        switch (xml.getLocalName()) {
            case "trk" -> begin(true);
            case "rte" -> {
                begin(false);
                segments.add(new ArrayList<>());
            }
            case "trkseg" -> segments.add(new ArrayList<>());
            case "name" -> {
                if ((inTrack || inRoute) && points == 0 && name == null) {
                    name = xml.text().strip();
                }
            }
            case "trkpt", "rtept" -> {
                return point(xml);
            }
            default -> {
                // heights, times and extensions say nothing of the line
            }
        }
        return true;
    }

    private void begin(boolean track) {
        inTrack = track;
        inRoute = !track;
        name = null;
        points = 0;
        segments.clear();
    }

    private boolean point(PlainXml xml) {
        points++;
        int line = xml.line();
        Optional<Double> latitude = number(xml.attribute("lat").orElse(null));
        Optional<Double> longitude = number(xml.attribute("lon").orElse(null));
        if (latitude.isEmpty() || longitude.isEmpty() || segments.isEmpty()) {
            pieces.problem("river.file.noLatLon", file, line);
            return false;
        }
        Coordinates coordinates =
                Coordinates.of(longitude.get(), latitude.get(), file, Message.of("river.file.at.line", line));
        if (coordinates.point().isEmpty()) {
            Message problem = coordinates.problem().orElseThrow();
            pieces.problem(problem.key(), problem.facts().toArray());
            return false;
        }
        segments.get(segments.size() - 1).add(coordinates.point().get());
        return true;
    }

    private static Optional<Double> number(@Nullable String text) {
        try {
            return text == null
                    ? Optional.empty()
                    : Optional.of(Double.valueOf(text.strip())).filter(Double::isFinite);
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }

    private void end(String element) {
        if (!element.equals("trk") && !element.equals("rte")) {
            return;
        }
        segments.removeIf(List::isEmpty);
        if (!segments.isEmpty()) {
            found = true;
            String called = name == null || name.isBlank() ? RiverNames.fromFile(file) : name;
            pieces.add(new DrawnRiver(called, Optional.empty(), 0, segments, inTrack, file));
        }
        inTrack = false;
        inRoute = false;
    }
}
