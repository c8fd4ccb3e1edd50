package org.ouzelbook.tracker.exchange.geopackage;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.exchange.export.Feature;
import org.sqlite.SQLiteConnection;

/**
 * Features as a GeoPackage: a table of features for each layer, in WGS84.
 *
 * <p>Source: OGC GeoPackage Encoding Standard 1.3.1 (12-128r18): tables of clause 1.1, 2.1.
 */
public final class GeoPackageFile {
    private static final List<String> STANDARD = List.of(
            // the letters GPKG, and version 1.3.1
            "PRAGMA application_id = 0x47504B47",
            "PRAGMA user_version = 10301",
            """
            CREATE TABLE gpkg_spatial_ref_sys (
              srs_name TEXT NOT NULL, srs_id INTEGER PRIMARY KEY, organization TEXT NOT NULL,
              organization_coordsys_id INTEGER NOT NULL, definition TEXT NOT NULL, description TEXT)""",
            """
            CREATE TABLE gpkg_contents (
              table_name TEXT NOT NULL PRIMARY KEY, data_type TEXT NOT NULL, identifier TEXT UNIQUE, description TEXT DEFAULT '',
              last_change DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')),
              min_x DOUBLE, min_y DOUBLE, max_x DOUBLE, max_y DOUBLE, srs_id INTEGER,
              CONSTRAINT fk_gc_r_srs_id FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys(srs_id))""",
            """
            CREATE TABLE gpkg_geometry_columns (
              table_name TEXT NOT NULL, column_name TEXT NOT NULL, geometry_type_name TEXT NOT NULL, srs_id INTEGER NOT NULL,
              z TINYINT NOT NULL, m TINYINT NOT NULL,
              CONSTRAINT pk_geom_cols PRIMARY KEY (table_name, column_name),
              CONSTRAINT uk_gc_table_name UNIQUE (table_name),
              CONSTRAINT fk_gc_tn FOREIGN KEY (table_name) REFERENCES gpkg_contents(table_name),
              CONSTRAINT fk_gc_srs FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys (srs_id))""",
            "INSERT INTO gpkg_spatial_ref_sys VALUES ('Undefined cartesian SRS', -1, 'NONE', -1, 'undefined', NULL)",
            "INSERT INTO gpkg_spatial_ref_sys VALUES ('Undefined geographic SRS', 0, 'NONE', 0, 'undefined', NULL)",
            """
            INSERT INTO gpkg_spatial_ref_sys VALUES ('WGS 84', 4326, 'EPSG', 4326,
              'GEOGCS["WGS 84",DATUM["WGS_1984",SPHEROID["WGS 84",6378137,298.257223563,AUTHORITY["EPSG","7030"]],\
            AUTHORITY["EPSG","6326"]],PRIMEM["Greenwich",0,AUTHORITY["EPSG","8901"]],\
            UNIT["degree",0.0174532925199433,AUTHORITY["EPSG","9122"]],AUTHORITY["EPSG","4326"]]', NULL)""");

    private GeoPackageFile() {}

    /**
     * {@return the bytes of a GeoPackage}
     *
     * @param features the features; those of one layer are all points or all lines
     * @param changed the day that is told as that of the last change
     */
    public static byte[] bytes(List<Feature> features, LocalDate changed) {
        Map<String, List<Feature>> layers = features.stream()
                .collect(Collectors.groupingBy(Feature::layer, LinkedHashMap::new, Collectors.toList()));
        try (Connection file = DriverManager.getConnection("jdbc:sqlite::memory:")) {
            try (Statement statement = file.createStatement()) {
                for (String part : STANDARD) {
                    statement.execute(part);
                }
            }
            file.setAutoCommit(false);
            for (Map.Entry<String, List<Feature>> layer : layers.entrySet()) {
                Layer.of(layer.getKey(), layer.getValue()).write(file, changed);
            }
            file.commit();
            return file.unwrap(SQLiteConnection.class).serialize("main");
        } catch (SQLException e) {
            throw new IllegalStateException("A GeoPackage in memory can always be written", e);
        }
    }

    /** Runs a statement with these values. */
    static void run(Connection file, String sql, Object... values) throws SQLException {
        try (PreparedStatement statement = file.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            statement.executeUpdate();
        }
    }
}
