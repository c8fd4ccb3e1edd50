package org.ouzelbook.tracker.exchange.export;

import com.google.gson.Gson;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
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
        StringWriter text = new StringWriter();
        try {
            write(features, text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    /**
     * Writes the features as one collection, one after another.
     *
     * @param features the features
     * @param out where to; it stays open
     * @throws IOException if it cannot be written
     */
    public static void write(List<Feature> features, Writer out) throws IOException {
        Gson gson = new Gson();
        JsonWriter json = gson.newJsonWriter(out);
        json.beginObject()
                .name("type")
                .value("FeatureCollection")
                .name("features")
                .beginArray();
        for (Feature feature : features) {
            gson.toJson(feature(feature), json);
        }
        json.endArray().endObject().flush();
        out.write("\n");
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
