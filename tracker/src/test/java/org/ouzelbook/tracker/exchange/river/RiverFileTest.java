package org.ouzelbook.tracker.exchange.river;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.river.DrawnRiver;

class RiverFileTest {
    @TempDir
    Path folder;

    private RiverFile read(String name, String text) throws IOException {
        return RiverFile.read(List.of(Files.writeString(folder.resolve(name), text)));
    }

    private static final String COLLECTION = """
            {"type": "FeatureCollection", "features": [
              {"type": "Feature", "properties": {"name": "Arrel Water", "km_origin": "1,5"},
               "geometry": {"type": "LineString", "coordinates": [[-3.4, 52.1, 210.5], [-3.41, 52.11]]}},
              {"type": "Feature", "properties": {"name": "Sorn Beck", "mouth_on": "Arrel Water"},
               "geometry": {"type": "MultiLineString", "coordinates": [[[-3.4, 52.1], [-3.3, 52.1]], [[-3.3, 52.1], [-3.2, 52.1]]]}},
              {"type": "Feature", "properties": {"NAME": "arrel water "},
               "geometry": {"type": "LineString", "coordinates": [[-3.41, 52.11], [-3.42, 52.12]]}},
              {"type": "Feature", "properties": null, "geometry": null}
            ]}
            """;

    @Test
    void readsFeaturesAndGathersPiecesByName() throws IOException {
        RiverFile file = read("rivers.geojson", "\uFEFF" + COLLECTION);

        assertThat(file.problems()).isEmpty();
        assertThat(file.remarks()).extracting(Message::key).containsExactly("river.file.noGeometry");
        assertThat(file.rivers()).extracting(DrawnRiver::name).containsExactly("Arrel Water", "Sorn Beck");
        DrawnRiver arrel = file.rivers().get(0);
        assertThat(arrel.kmOrigin()).isEqualTo(1.5);
        assertThat(arrel.pieces()).hasSize(2);
        assertThat(arrel.pieces().get(0).get(0)).isEqualTo(new GeoPoint(52.1, -3.4));
        assertThat(file.rivers().get(1).mouthOn()).contains("Arrel Water");
        assertThat(file.rivers().get(1).pieces()).hasSize(2);
    }

    @Test
    void readsABareGeometryAndNamesItByItsFile() throws IOException {
        RiverFile file =
                read("arrel_water.json", "{\"type\":\"LineString\",\"coordinates\":[[-3.4,52.1],[-3.41,52.11]]}");

        assertThat(file.rivers()).extracting(DrawnRiver::name).containsExactly("Arrel water");
    }

    @Test
    void readsTracksAndRoutes() throws IOException {
        RiverFile file = read("walk.gpx", """
                <?xml version="1.0"?>
                <gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><metadata><name>Phone</name></metadata>
                <trk><name>Arrel Water</name><trkseg><trkpt lat="52.1" lon="-3.4"><ele>12</ele></trkpt>
                <trkpt lat="52.11" lon="-3.41"/></trkseg><trkseg/><trkseg><trkpt lat="52.12" lon="-3.42"/>
                <trkpt lat="52.13" lon="-3.43"/></trkseg></trk>
                <rte><rtept lat="52.1" lon="-3.4"/><rtept lat="52.1" lon="-3.3"/></rte></gpx>
                """);

        assertThat(file.problems()).isEmpty();
        assertThat(file.rivers()).extracting(DrawnRiver::name).containsExactly("Arrel Water", "Walk");
        assertThat(file.rivers()).extracting(DrawnRiver::walked).containsExactly(true, false);
        assertThat(file.rivers().get(0).pieces()).hasSize(2);
    }

    /** As receivers and phones record a walk: OGC KML 2.3 (12-007r2), Track and MultiTrack; before 2015 in a name space of their own. */
    @Test
    void readsTracksOfKml() throws IOException {
        RiverFile file = read("walk.kml", """
                <kml xmlns="http://www.opengis.net/kml/2.2" xmlns:gx="http://www.google.com/kml/ext/2.2"><Document><Placemark>
                <name>Arrel Water</name><gx:MultiTrack><gx:interpolate>1</gx:interpolate>
                <gx:Track><when>2026-03-02T07:40:00Z</when><gx:coord>-3.4 52.1 156.0</gx:coord>
                <when>2026-03-02T07:41:00Z</when><gx:coord>-3.41  52.11 152</gx:coord></gx:Track>
                <gx:Track><when>2026-03-02T08:40:00Z</when><gx:coord>-3.42 52.12</gx:coord>
                <gx:coord>-3.43 52.13</gx:coord></gx:Track></gx:MultiTrack></Placemark></Document></kml>
                """);

        assertThat(file.problems()).isEmpty();
        assertThat(file.rivers()).extracting(DrawnRiver::name).containsExactly("Arrel Water");
        assertThat(file.rivers().get(0).pieces()).hasSize(2);
        assertThat(file.rivers().get(0).pieces().get(0).get(1)).isEqualTo(new GeoPoint(52.11, -3.41));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            a.txt     | name;km                                                                  | river.file.unknown
            a.json    | {"type":"LineString","coordinates":[[-3.4,52.1],[-3.41                   | river.file.brokenJson
            a.json    | {"type":"LineString","coordinates":[[-3.4,52.1],[NaN,52]]}               | river.file.brokenJson
            a.json    | {"type":"LineString","coordinates":[[52.1,-120.4],[52.2,-120.41]]}       | river.file.swapped
            a.json    | {"type":"LineString","coordinates":[[703081,4753280],[703337,4753550]]}  | river.file.metres
            a.json    | {"type":"LineString","coordinates":[[-3.4],[1,2]]}                       | river.file.noDegrees
            a.json    | {"type":"LineString","coordinates":[["-3.4","52"],[1,2]]}                | river.file.noDegrees
            a.json    | {"type":"LineString","coordinates":[[1e999,52],[1,2]]}                   | river.file.noDegrees
            a.json    | {"type":"Point","coordinates":[1,2]}                                     | river.file.noLine
            a.json    | {"type":"FeatureCollection"}                                             | river.file.notGeoJson
            a.geojson | {"type":"Feature"} {"type":"Feature"}                                    | river.file.severalJson
            a.json    | [1,2]                                                                    | river.file.notGeoJson
            a.json    | {"type":"Feature","properties":{"km_origin":-3},"geometry":{"type":"LineString","coordinates":[[1,2],[1,3]]}} | river.file.kmOrigin
            a.kml     | <kml><Document/></kml>                                                   | river.file.noLine
            a.xml     | <osm><way/></osm>                                                      | river.file.notGpx
            a.gpx     | <gpx><wpt lat="1" lon="2"/></gpx>                                        | river.file.noTrack
            a.gpx     | <gpx><trk><trkseg><trkpt lat="1"/></trkseg></trk></gpx>                  | river.file.noLatLon
            a.gpx     | <gpx><trk><trkseg><trkpt lat="91" lon="99"/></trkseg></trk></gpx>        | river.file.noDegrees
            a.gpx     | <gpx><trk></gpx>                                                         | river.file.brokenXml
            a.gpx     | <!DOCTYPE gpx [<!ENTITY x SYSTEM "file:///etc/passwd">]><gpx><trk><name>&x;</name></trk></gpx> | river.file.doctype
            """, quoteCharacter = '`')
    void saysWhatIsWrongWithAFile(String name, String text, String key) throws IOException {
        RiverFile file = read(name, text);

        assertThat(file.problems()).extracting(Message::key).containsExactly(key);
        assertThat(file.rivers()).isEmpty();
    }

    @Test
    void survivesDeepNestingAndForeignBytes() throws IOException {
        RiverFile nested = read("deep.json", "{\"type\":" + "[".repeat(200_000));
        Path latin =
                Files.write(folder.resolve("latin.json"), "{\"type\":\"Föhr\"}".getBytes(StandardCharsets.ISO_8859_1));

        assertThat(nested.problems()).extracting(Message::key).containsExactly("river.file.brokenJson");
        assertThat(RiverFile.read(List.of(latin)).problems())
                .extracting(Message::key)
                .containsExactly("river.file.notUtf8");
    }

    /** RFC 7946, 3.1.8: a feature of several kinds of geometry, as exports of map databases write a stream with its source. */
    @Test
    void readsTheLinesOfACollectionOfGeometries() throws IOException {
        RiverFile file = read("a.json", """
                {"type": "Feature", "properties": {"name": "Quirk Water"}, "geometry": {"type": "GeometryCollection", "geometries": [
                  {"type": "Point", "coordinates": [-20.0, 52.0]},
                  {"type": "LineString", "coordinates": [[-20.0, 52.0], [-20.0, 52.01, 12.5]]},
                  {"type": "MultiLineString", "coordinates": [[[-20.0, 52.01, -9999.0], [-20.0, 52.02, -9999.0]]]}]}}
                """);

        assertThat(file.problems()).isEmpty();
        assertThat(file.rivers()).extracting(DrawnRiver::name).containsOnly("Quirk Water");
        assertThat(file.rivers().stream()
                        .mapToInt(river -> river.pieces().size())
                        .sum())
                .isEqualTo(2);
        assertThat(file.remarks()).extracting(Message::key).containsExactly("river.file.notALine");
    }

    /** The older form of GeoJSON (2008) names its coordinate system; conversions from shape files write it so. */
    @Test
    void tellsTheNameOfAForeignCoordinateSystem() throws IOException {
        RiverFile file = read("a.json", """
                {"type": "FeatureCollection", "crs": {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::25832"}},
                 "features": []}
                """);

        assertThat(file.problems())
                .containsExactly(Message.of("river.file.crs", "a.json", "urn:ogc:def:crs:EPSG::25832"));
    }

    @Test
    void gathersOneRiverFromSeveralFiles() throws IOException {
        Path one = Files.writeString(folder.resolve("one.json"), COLLECTION);
        Path two = Files.writeString(
                folder.resolve("two.json"),
                "{\"type\":\"Feature\",\"properties\":{\"name\":\"Arrel Water\"},\"geometry\":{\"type\":\"LineString\",\"coordinates\":[[-3.42,52.12],[-3.43,52.13]]}}");

        RiverFile file = RiverFile.read(List.of(one, two));

        assertThat(file.rivers().get(0).pieces()).hasSize(3);
        assertThat(file.rivers().get(0).source()).isEqualTo("one.json, two.json");
        assertThat(file.rivers().get(0).kmOrigin()).isEqualTo(1.5);
    }
}
