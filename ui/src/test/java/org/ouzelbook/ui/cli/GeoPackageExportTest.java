package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBReader;

/** A GeoPackage by the clauses of its standard, OGC 12-128r18, with the same places as the GeoJSON of the same book. */
class GeoPackageExportTest {
    private static final String RIVER = """
            {"type":"Feature","properties":{"name":"Arrel Water"},"geometry":{"type":"LineString","coordinates":
              [[-6.40,57.28],[-6.41,57.24],[-6.40,57.20]]}}
            """;
    private static final String SIGHTINGS = """
            date,km,species,count,observer
            2026-03-02,3.42,dipper,2,Ina Brekke
            2026-03-16,5.4,kingfisher,1,Ina Brekke
            """;

    @TempDir
    Path folder;

    private Path book;

    @BeforeEach
    void makeABook() throws IOException {
        book = folder.resolve("arrel.mv.db");
        run("new", book, "--river", Files.writeString(folder.resolve("river.geojson"), RIVER));
        run("import", book, Files.writeString(folder.resolve("sightings.csv"), SIGHTINGS));
        run(
                "import",
                book,
                Files.writeString(folder.resolve("marks.csv"), "name,km,kind\n\"O'Hara \"\"Br\"\"\",3.1,bridge\n"));
        run("import", book, Files.writeString(folder.resolve("nests.csv"), "nest,km,species\nKX7,3.413,dipper\n"));
    }

    private static void run(Object... arguments) {
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).as(run.out()).isZero();
    }

    private Path export(String form, String audience) {
        Path out = folder.resolve("out" + audience + "." + form);
        if (audience.isEmpty()) {
            run("export", book, "--as", form, "--out", out, "--replace");
        } else {
            run("export", book, "--as", form, "--out", out, "--replace", audience);
        }
        return out;
    }

    private static List<List<String>> query(Path file, String sql) throws SQLException {
        List<List<String>> rows = new ArrayList<>();
        try (Connection opened = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = opened.createStatement();
                ResultSet found = statement.executeQuery(sql)) {
            while (found.next()) {
                List<String> row = new ArrayList<>();
                for (int i = 1; i <= found.getMetaData().getColumnCount(); i++) {
                    row.add(String.valueOf(found.getString(i)));
                }
                rows.add(row);
            }
        }
        return rows;
    }

    private static List<Geometry> geometries(Path file, String table) throws SQLException, ParseException {
        List<Geometry> geometries = new ArrayList<>();
        try (Connection opened = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = opened.createStatement();
                ResultSet found = statement.executeQuery("SELECT geom FROM " + table + " ORDER BY fid")) {
            while (found.next()) {
                byte[] blob = found.getBytes(1);
                // 2.1.3.1: magic, version, flags with the sort of envelope in bits 1 to 3, reference system, envelope
                assertThat(new String(blob, 0, 2, StandardCharsets.US_ASCII)).isEqualTo("GP");
                assertThat(blob[2]).isZero();
                int envelope = (blob[3] >> 1 & 7) == 1 ? 32 : 0;
                geometries.add(new WKBReader().read(Arrays.copyOfRange(blob, 8 + envelope, blob.length)));
            }
        }
        return geometries;
    }

    /** SQLite's file format: the string at 0, user_version at 60, application_id at 68; GeoPackage 1.1.1.1.1. */
    @Test
    void isAGeoPackageByItsFirstBytes() throws IOException {
        ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(export("geopackage", "")));

        assertThat(new String(bytes.array(), 0, 15, StandardCharsets.US_ASCII)).isEqualTo("SQLite format 3");
        assertThat(bytes.getInt(68)).isEqualTo(0x47504B47);
        assertThat(bytes.getInt(60)).isEqualTo(10301);
    }

    @Test
    void describesItsTables() throws SQLException {
        Path file = export("geopackage", "");

        assertThat(query(file, "PRAGMA integrity_check")).containsExactly(List.of("ok"));
        assertThat(query(file, "PRAGMA foreign_key_check")).isEmpty();
        assertThat(query(file, "SELECT srs_id, organization FROM gpkg_spatial_ref_sys ORDER BY srs_id"))
                .containsExactly(List.of("-1", "NONE"), List.of("0", "NONE"), List.of("4326", "EPSG"));
        assertThat(query(file, "SELECT table_name, data_type, srs_id FROM gpkg_contents ORDER BY table_name"))
                .containsExactly(
                        List.of("landmarks", "features", "4326"),
                        List.of("rivers", "features", "4326"),
                        List.of("sightings", "features", "4326"));
        assertThat(
                        query(
                                file,
                                "SELECT table_name, column_name, geometry_type_name, z, m FROM gpkg_geometry_columns ORDER BY 1"))
                .containsExactly(
                        List.of("landmarks", "geom", "POINT", "0", "0"),
                        List.of("rivers", "geom", "LINESTRING", "0", "0"),
                        List.of("sightings", "geom", "POINT", "0", "0"));
        assertThat(query(file, "SELECT name FROM landmarks")).containsExactly(List.of("O'Hara \"Br\""));
        assertThat(query(file, "SELECT min_y, max_y FROM gpkg_contents WHERE table_name = 'rivers'"))
                .containsExactly(List.of("57.2", "57.28"));
    }

    /**
     * OGC GeoPackage Encoding Standard, annex C (normative), repository opengeospatial/geopackage at 71f76186ef1b,
     * spec/core/annexes/ddl.adoc; licence of the Open Geospatial Consortium: free to use with its notice. Spaces do not count.
     */
    @ParameterizedTest
    @ValueSource(strings = {"""
                CREATE TABLE gpkg_spatial_ref_sys (
                  srs_name TEXT NOT NULL,
                  srs_id INTEGER PRIMARY KEY,
                  organization TEXT NOT NULL,
                  organization_coordsys_id INTEGER NOT NULL,
                  definition  TEXT NOT NULL,
                  description TEXT
                )
                """, """
                CREATE TABLE gpkg_contents (
                  table_name TEXT NOT NULL PRIMARY KEY,
                  data_type TEXT NOT NULL,
                  identifier TEXT UNIQUE,
                  description TEXT DEFAULT '',
                  last_change DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')),
                  min_x DOUBLE,
                  min_y DOUBLE,
                  max_x DOUBLE,
                  max_y DOUBLE,
                  srs_id INTEGER,
                  CONSTRAINT fk_gc_r_srs_id FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys(srs_id)
                )
                """, """
                CREATE TABLE gpkg_geometry_columns (
                  table_name TEXT NOT NULL,
                  column_name TEXT NOT NULL,
                  geometry_type_name TEXT NOT NULL,
                  srs_id INTEGER NOT NULL,
                  z TINYINT NOT NULL,
                  m TINYINT NOT NULL,
                  CONSTRAINT pk_geom_cols PRIMARY KEY (table_name, column_name),
                  CONSTRAINT uk_gc_table_name UNIQUE (table_name),
                  CONSTRAINT fk_gc_tn FOREIGN KEY (table_name) REFERENCES gpkg_contents(table_name),
                  CONSTRAINT fk_gc_srs FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys (srs_id)
                )
                """})
    void makesItsTablesWithTheWordsOfTheStandard(String definition) throws SQLException {
        String name = definition.replaceFirst("(?s)CREATE TABLE (\\w+).*", "$1");

        List<List<String>> made =
                query(export("geopackage", "--private"), "SELECT sql FROM sqlite_master WHERE name = '" + name + "'");

        assertThat(made.get(0).get(0).replaceAll("\\s", "")).isEqualTo(definition.replaceAll("\\s", ""));
    }

    @Test
    void hasThePlacesOfTheGeoJson() throws Exception {
        Path file = export("geopackage", "");
        JsonArray features = JsonParser.parseString(Files.readString(export("geojson", "")))
                .getAsJsonObject()
                .getAsJsonArray("features");
        for (String layer : List.of("rivers", "landmarks", "sightings")) {
            List<Geometry> geometries = geometries(file, layer);
            List<JsonObject> same = new ArrayList<>();
            features.forEach(feature -> {
                if (feature.getAsJsonObject()
                        .getAsJsonObject("properties")
                        .get("layer")
                        .getAsString()
                        .equals(layer)) {
                    same.add(feature.getAsJsonObject());
                }
            });
            assertThat(geometries).hasSameSizeAs(same);
            for (int i = 0; i < same.size(); i++) {
                JsonArray told = same.get(i).getAsJsonObject("geometry").getAsJsonArray("coordinates");
                JsonArray first = told.get(0).isJsonArray() ? told.get(0).getAsJsonArray() : told;
                Coordinate here = geometries.get(i).getCoordinates()[0];
                // GeoJSON tells millionths of a degree
                assertThat(Math.abs(here.x - first.get(0).getAsDouble())).isLessThan(1e-6);
                assertThat(Math.abs(here.y - first.get(1).getAsDouble())).isLessThan(1e-6);
            }
        }
    }

    @Test
    void tellsThePublicNoNestAndNoName() throws Exception {
        String publicly = new String(Files.readAllBytes(export("geopackage", "")), StandardCharsets.ISO_8859_1);
        String privately =
                new String(Files.readAllBytes(export("geopackage", "--private")), StandardCharsets.ISO_8859_1);

        assertThat(publicly).doesNotContain("KX7", "Brekke", "nest");
        assertThat(privately).contains("KX7");
        // the sighting at km 3.42 lies north of 57.23, in public it is told in the middle of km 3 to 4
        assertThat(query(
                        folder.resolve("out.geopackage"), "SELECT from_km, to_km FROM sightings WHERE name = 'dipper'"))
                .containsExactly(List.of("3.0", "4.0"));
    }

    @Test
    void makesTheSameBytesOfTheSameBook() throws IOException {
        byte[] first = Files.readAllBytes(export("geopackage", ""));

        assertThat(Files.readAllBytes(export("geopackage", ""))).isEqualTo(first);
    }
}
