package org.ouzelbook.tracker.exchange.export;

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
     * {@return the features as a GPX document}
     *
     * @param title its title
     * @param features the features
     */
    public static String text(String title, List<Feature> features) {
        XmlText xml = new XmlText()
                .open("gpx", "version", "1.1", "creator", "Ouzelbook", "xmlns", "http://www.topografix.com/GPX/1/1")
                .open("metadata")
                .element("name", title)
                .close();
        features.stream().filter(Feature::isPoint).forEach(feature -> {
            open(xml, "wpt", feature.points().get(0));
            describe(xml, feature);
            xml.close();
        });
        features.stream().filter(feature -> !feature.isPoint()).forEach(feature -> {
            xml.open("rte");
            describe(xml, feature);
            feature.points().forEach(point -> open(xml, "rtept", point).close());
            xml.close();
        });
        return xml.end();
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
