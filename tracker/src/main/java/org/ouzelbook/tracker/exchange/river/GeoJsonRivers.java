package org.ouzelbook.tracker.exchange.river;

import com.google.gson.Gson;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.Strictness;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonToken;
import com.google.gson.stream.MalformedJsonException;
import java.io.EOFException;
import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.river.DrawnRiver;

/**
 * Reads rivers from GeoJSON: a collection of features, one feature, or a bare geometry; lines and several lines, also in collections
 * of geometries.
 *
 * <p>Source: H. Butler et al. (2016), The GeoJSON Format, RFC 7946; positions are longitude, latitude on WGS84.
 */
final class GeoJsonRivers {
    private static final int LONGEST_PATH = 80;

    /** The names of WGS84 in degrees, and of ETRS89, which differs from it by less than a metre. */
    private static final Pattern WGS84 =
            Pattern.compile("CRS:?84|EPSG\\D+(\\d+\\D+)?(4326|4979|4258)\\b", Pattern.CASE_INSENSITIVE);

    private final String file;
    private final RiverFile.Pieces pieces;
    private boolean good = true;
    private int lines;

    GeoJsonRivers(String file, RiverFile.Pieces pieces) {
        this.file = file;
        this.pieces = pieces;
    }

    void read(Reader text) throws IOException {
        JsonReader reader = new JsonReader(text);
        reader.setStrictness(Strictness.STRICT);
        try {
            JsonElement root = new Gson().getAdapter(JsonElement.class).read(reader);
            if (hasMore(reader)) {
                pieces.problem("river.file.severalJson", file);
                return;
            }
            if (!root.isJsonObject()) {
                pieces.problem("river.file.notGeoJson", file);
                return;
            }
            if (isOnWgs84(root.getAsJsonObject())) {
                readObject(root.getAsJsonObject());
            }
        } catch (MalformedJsonException | EOFException | JsonParseException | NumberFormatException e) {
            String path = reader.getPath();
            pieces.problem(
                    "river.file.brokenJson",
                    file,
                    path.length() > LONGEST_PATH ? path.substring(0, LONGEST_PATH) + "…" : path);
            return;
        }
        if (lines == 0 && good) {
            pieces.problem("river.file.noLine", file);
        }
    }

    /** Whether a second text follows the first, as where each line of a file is a feature (RFC 8142 and its like). */
    private static boolean hasMore(JsonReader reader) throws IOException {
        try {
            return reader.peek() != JsonToken.END_DOCUMENT;
        } catch (MalformedJsonException e) {
            return true;
        }
    }

    /** RFC 7946 has no other datum, but files of the older form can name one. */
    private boolean isOnWgs84(JsonObject root) {
        JsonElement crs = root.get("crs");
        if (crs == null || crs.isJsonNull()) {
            return true;
        }
        String written = named(crs);
        if (WGS84.matcher(written).find()) {
            return true;
        }
        problem(
                "river.file.crs",
                file,
                written.length() > LONGEST_PATH ? written.substring(0, LONGEST_PATH) + "…" : written);
        return false;
    }

    /** The name of a coordinate system as files of the older form give it, or else all that is written. */
    private static String named(JsonElement crs) {
        JsonElement properties = crs.isJsonObject() ? crs.getAsJsonObject().get("properties") : null;
        return properties != null && properties.isJsonObject()
                ? text(properties.getAsJsonObject(), "name").orElse(crs.toString())
                : crs.toString();
    }

    private void readObject(JsonObject root) {
        switch (text(root, "type").orElse("")) {
            case "FeatureCollection" -> {
                JsonElement features = root.get("features");
                if (features == null || !features.isJsonArray()) {
                    problem("river.file.notGeoJson", file);
                    return;
                }
                int number = 0;
                for (JsonElement feature : features.getAsJsonArray()) {
                    number++;
                    if (feature.isJsonObject()) {
                        readFeature(feature.getAsJsonObject(), feature(number));
                    } else {
                        problem("river.file.notGeoJson", file);
                    }
                }
            }
            case "Feature" -> readFeature(root, feature(1));
            default -> readLine(root, new JsonObject(), Message.of("river.file.at.geometry"));
        }
    }

    private static Message feature(int number) {
        return Message.of("river.file.at.feature", number);
    }

    private void readFeature(JsonObject feature, Message where) {
        JsonElement geometry = feature.get("geometry");
        if (geometry == null || !geometry.isJsonObject()) {
            pieces.remark("river.file.noGeometry", file, where);
            return;
        }
        JsonElement written = feature.get("properties");
        JsonObject properties =
                written != null && written.isJsonObject() ? written.getAsJsonObject() : new JsonObject();
        if (text(properties, "layer").filter(KmlRivers.OTHER_LAYERS::contains).isEmpty()) {
            readLine(geometry.getAsJsonObject(), properties, where);
        }
    }

    private void readLine(JsonObject geometry, JsonObject properties, Message where) {
        String type = text(geometry, "type").orElse("");
        if (type.equals("GeometryCollection") && geometry.get("geometries") instanceof JsonArray parts) {
            for (JsonElement part : parts) {
                if (part instanceof JsonObject one && !isCollection(one)) {
                    readLine(one, properties, where);
                } else {
                    pieces.remark("river.file.notALine", file, where, type);
                }
            }
            return;
        }
        JsonElement coordinates = geometry.get("coordinates");
        boolean several = type.equals("MultiLineString");
        if (!several && !type.equals("LineString")) {
            pieces.remark("river.file.notALine", file, where, type.isEmpty() ? "?" : type);
            return;
        }
        if (coordinates == null || !coordinates.isJsonArray()) {
            pieces.remark("river.file.noGeometry", file, where);
            return;
        }
        List<List<GeoPoint>> drawn = new ArrayList<>();
        if (several) {
            for (JsonElement line : coordinates.getAsJsonArray()) {
                points(line, where).ifPresent(drawn::add);
            }
        } else {
            points(coordinates, where).ifPresent(drawn::add);
        }
        Optional<Double> origin = kmOrigin(properties, where);
        drawn.removeIf(List::isEmpty);
        if (good && drawn.isEmpty()) {
            pieces.remark("river.file.noGeometry", file, where);
            return;
        }
        if (good && origin.isPresent()) {
            lines++;
            String name = text(properties, "name").filter(n -> !n.isBlank()).orElseGet(() -> RiverNames.fromFile(file));
            pieces.add(new DrawnRiver(
                    name.strip(),
                    text(properties, "mouth_on").map(String::strip).filter(n -> !n.isEmpty()),
                    origin.get(),
                    drawn,
                    false,
                    file));
        }
    }

    /** A collection in a collection is what the standard asks to avoid; its lines are passed over, and depth costs nothing. */
    private static boolean isCollection(JsonObject geometry) {
        return text(geometry, "type").filter("GeometryCollection"::equals).isPresent();
    }

    private Optional<Double> kmOrigin(JsonObject properties, Message where) {
        String written = text(properties, "km_origin").orElse("");
        Optional<Double> origin = RiverFile.kmOrigin(written);
        if (origin.isEmpty()) {
            problem("river.file.kmOrigin", file, where, written);
        }
        return origin;
    }

    private Optional<List<GeoPoint>> points(JsonElement line, Message where) {
        List<GeoPoint> points = new ArrayList<>();
        if (!line.isJsonArray()) {
            problem("river.file.noGeometry", file, where);
            return Optional.empty();
        }
        for (JsonElement position : line.getAsJsonArray()) {
            Coordinates found = coordinates(position, Message.of("river.file.at.position", where, points.size() + 1));
            if (found.point().isEmpty()) {
                found.problem().ifPresent(problem -> {
                    good = false;
                    pieces.problem(problem.key(), problem.facts().toArray());
                });
                return Optional.empty();
            }
            points.add(found.point().get());
        }
        return Optional.of(points);
    }

    private Coordinates coordinates(JsonElement position, Message where) {
        if (position.isJsonArray() && position.getAsJsonArray().size() >= 2) {
            JsonArray numbers = position.getAsJsonArray();
            if (isNumber(numbers.get(0)) && isNumber(numbers.get(1))) {
                return Coordinates.of(
                        numbers.get(0).getAsDouble(), numbers.get(1).getAsDouble(), file, where);
            }
        }
        String written = position.toString();
        String shown = written.length() > 60 ? written.substring(0, 60) + "…" : written;
        return new Coordinates(Optional.empty(), Optional.of(Message.of("river.file.noDegrees", file, where, shown)));
    }

    private static boolean isNumber(JsonElement element) {
        return element.isJsonPrimitive()
                && element.getAsJsonPrimitive().isNumber()
                && Double.isFinite(element.getAsDouble());
    }

    private void problem(String key, Object... facts) {
        good = false;
        pieces.problem(key, facts);
    }

    private static Optional<String> text(JsonObject object, String name) {
        for (String key : object.keySet()) {
            JsonElement value = object.get(key);
            if (key.equalsIgnoreCase(name) && value.isJsonPrimitive()) {
                return Optional.of(wholeLetters(value.getAsString()));
            }
        }
        return Optional.empty();
    }

    /** Half of a pair of UTF-16, which JSON can escape, is no letter and cannot be stored. */
    private static String wholeLetters(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_16BE);
        return new String(bytes, StandardCharsets.UTF_16BE);
    }
}
