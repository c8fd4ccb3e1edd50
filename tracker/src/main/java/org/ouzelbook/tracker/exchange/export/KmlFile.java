package org.ouzelbook.tracker.exchange.export;

import java.io.IOException;
import java.io.Writer;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Features as KML, a folder a layer.
 *
 * <p>Source: OGC KML 2.3 (12-007r2), 2015; positions are longitude, latitude.
 */
public final class KmlFile {
    private KmlFile() {}

    /**
     * Writes the features as a document.
     *
     * @param title its title
     * @param features the features
     * @param out where to; it stays open
     * @throws IOException if it cannot be written
     */
    public static void write(String title, List<Feature> features, Writer out) throws IOException {
        Map<String, List<Feature>> layers = features.stream()
                .collect(Collectors.groupingBy(Feature::layer, LinkedHashMap::new, Collectors.toList()));
        XmlText xml = new XmlText()
                .open("kml", "xmlns", "http://www.opengis.net/kml/2.2")
                .open("Document")
                .element("name", title);
        for (Map.Entry<String, List<Feature>> layer : layers.entrySet()) {
            xml.open("Folder").element("name", layer.getKey());
            for (Feature feature : layer.getValue()) {
                write(feature, xml);
                xml.drainTo(out);
            }
            xml.close();
        }
        xml.end(out);
    }

    private static void write(Feature feature, XmlText xml) {
        xml.open("Placemark").element("name", feature.name());
        if (!feature.properties().isEmpty()) {
            xml.open("ExtendedData");
            feature.properties()
                    .forEach((name, value) -> xml.open("Data", "name", name)
                            .element("value", Numbers.text(value))
                            .close());
            xml.close();
        }
        String positions = feature.points().stream()
                .map(point ->
                        Numbers.text(Degrees.of(point.longitude())) + "," + Numbers.text(Degrees.of(point.latitude())))
                .collect(Collectors.joining(" "));
        xml.open(feature.isPoint() ? "Point" : "LineString")
                .element("coordinates", positions)
                .close()
                .close();
    }
}
