package org.ouzelbook.tracker.exchange.export;

import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.math.BigDecimal;
import java.util.List;
import org.ouzelbook.tracker.domain.GeoPoint;

/**
 * Features as GeoJSON.
 *
 * <p>Source: H. Butler et al. (2016), The GeoJSON Format, RFC 7946.
 */
public final class GeoJsonFile {
    private GeoJsonFile() {}

    /**
     * {@return the features as one collection}
     *
     * @param features the features
     */
    public static String text(List<Feature> features) {
        JsonArray all = new JsonArray();
        features.forEach(feature -> all.add(feature(feature)));
        JsonObject collection = new JsonObject();
        collection.addProperty("type", "FeatureCollection");
        collection.add("features", all);
        return new GsonBuilder().create().toJson(collection) + "\n";
    }

    private static JsonObject feature(Feature feature) {
        JsonObject properties = new JsonObject();
        properties.addProperty("layer", feature.layer());
        properties.addProperty("name", feature.name());
        feature.properties().forEach((name, value) -> {
            if (value instanceof Number number) {
                properties.addProperty(name, new BigDecimal(Numbers.text(number)));
            } else {
                properties.addProperty(name, value.toString());
            }
        });
        JsonObject geometry = new JsonObject();
        geometry.addProperty("type", feature.isPoint() ? "Point" : "LineString");
        JsonArray line = new JsonArray();
        feature.points().forEach(point -> line.add(position(point)));
        geometry.add("coordinates", feature.isPoint() ? line.get(0) : line);
        JsonObject written = new JsonObject();
        written.addProperty("type", "Feature");
        written.add("geometry", geometry);
        written.add("properties", properties);
        return written;
    }

    private static JsonArray position(GeoPoint point) {
        JsonArray position = new JsonArray();
        position.add(new BigDecimal(Numbers.text(Degrees.of(point.longitude()))));
        position.add(new BigDecimal(Numbers.text(Degrees.of(point.latitude()))));
        return position;
    }
}
