package org.ouzelbook.tracker.exchange.geopackage;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.exchange.export.Feature;

/**
 * One table of features.
 *
 * @param name its name
 * @param columns the type of each column beside the key, the geometry and the name, as SQLite has it
 * @param features its rows
 */
record Layer(String name, Map<String, String> columns, List<Feature> features) {
    private static final int WGS84 = 4326;
    private static final int BATCH = 1000;

    /** {@return the table of these features} */
    static Layer of(String name, List<Feature> features) {
        Map<String, String> columns = new LinkedHashMap<>();
        for (Feature feature : features) {
            feature.properties().forEach((column, value) -> columns.merge(column, type(value), Layer::wider));
        }
        return new Layer(name, columns, features);
    }

    private static String type(Object value) {
        if (value instanceof Integer || value instanceof Long) {
            return "INTEGER";
        }
        if (value instanceof Number) {
            return "REAL";
        }
        return value instanceof LocalDate ? "DATE" : "TEXT";
    }

    private static String wider(String one, String other) {
        if (one.equals(other)) {
            return one;
        }
        return one.equals("TEXT") || other.equals("TEXT") || one.equals("DATE") || other.equals("DATE")
                ? "TEXT"
                : "REAL";
    }

    void write(Connection file, LocalDate changed) throws SQLException {
        String more = columns.entrySet().stream()
                .map(column -> ", " + quoted(column.getKey()) + " " + column.getValue())
                .collect(Collectors.joining());
        boolean points = features.stream().allMatch(feature -> feature.points().size() == 1);
        String geometry = points ? "POINT" : "LINESTRING";
        GeoPackageFile.run(
                file,
                "CREATE TABLE " + quoted(name) + " (fid INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL, geom " + geometry
                        + ", " + quoted("name") + " TEXT" + more + ")");
        List<GeoPoint> all =
                features.stream().flatMap(feature -> feature.points().stream()).toList();
        GeoPackageFile.run(
                file,
                "INSERT INTO gpkg_contents VALUES (?, 'features', ?, '', ?, ?, ?, ?, ?, ?)",
                name,
                name,
                changed + "T00:00:00.000Z",
                all.stream().mapToDouble(GeoPoint::longitude).min().orElse(0),
                all.stream().mapToDouble(GeoPoint::latitude).min().orElse(0),
                all.stream().mapToDouble(GeoPoint::longitude).max().orElse(0),
                all.stream().mapToDouble(GeoPoint::latitude).max().orElse(0),
                WGS84);
        GeoPackageFile.run(
                file, "INSERT INTO gpkg_geometry_columns VALUES (?, 'geom', ?, ?, 0, 0)", name, geometry, WGS84);
        insert(file, points);
    }

    private void insert(Connection file, boolean points) throws SQLException {
        String names = Stream.concat(Stream.of("geom", "name"), columns.keySet().stream())
                .map(Layer::quoted)
                .collect(Collectors.joining(", "));
        String places = "?" + ", ?".repeat(columns.size() + 1);
        try (PreparedStatement row =
                file.prepareStatement("INSERT INTO " + quoted(name) + " (" + names + ") VALUES (" + places + ")")) {
            int waiting = 0;
            for (Feature feature : features) {
                row.setBytes(1, GeometryBytes.of(feature.points(), points));
                row.setString(2, feature.name());
                int place = 3;
                for (String column : columns.keySet()) {
                    row.setObject(place++, cell(feature.properties().get(column)));
                }
                row.addBatch();
                if (++waiting % BATCH == 0) {
                    row.executeBatch();
                }
            }
            row.executeBatch();
        }
    }

    private static @Nullable Object cell(@Nullable Object value) {
        return value == null || value instanceof Number ? value : value.toString();
    }

    private static String quoted(String name) {
        return "\"" + name.replace("\"", "\"\"") + "\"";
    }
}
