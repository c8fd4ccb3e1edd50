package org.ouzelbook.tracker.exchange.export;

import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.GeoPoint;

/**
 * Features as GPX for a hand-held receiver: points as waypoints, lines as routes.
 *
 * <p>Source: GPX 1.1 schema, topografix.com/GPX/1/1, which wants waypoints before routes.
 */
public final class GpxFile {
    private GpxFile() {}

    /**
     * Writes the features as a GPX document.
     *
     * @param title its title
     * @param features the features
     * @param out where to; it stays open
     * @throws IOException if it cannot be written
     */
    public static void write(String title, List<Feature> features, Writer out) throws IOException {
        XmlText xml = new XmlText()
                .open("gpx", "version", "1.1", "creator", "Ouzelbook", "xmlns", "http://www.topografix.com/GPX/1/1")
                .open("metadata")
                .element("name", title)
                .close();
        for (Feature feature : features) {
            if (feature.isPoint()) {
                open(xml, "wpt", feature.points().get(0));
                describe(xml, feature);
                xml.close().drainTo(out);
            }
        }
        for (Feature feature : features) {
            if (!feature.isPoint()) {
                xml.open("rte");
                describe(xml, feature);
                feature.points().forEach(point -> open(xml, "rtept", point).close());
                xml.close().drainTo(out);
            }
        }
        xml.end(out);
    }

    private static XmlText open(XmlText xml, String element, GeoPoint point) {
        return xml.open(element, "lat", Degrees.of(point.latitude()), "lon", Degrees.of(point.longitude()));
    }

    private static void describe(XmlText xml, Feature feature) {
        String told = feature.properties().entrySet().stream()
                .map(property -> property.getKey() + ": " + Numbers.text(property.getValue()))
                .collect(Collectors.joining("; "));
        xml.element("name", feature.name()).element("desc", told).element("type", feature.layer());
    }
}
