package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Lines and walks as strange programs write them: each is read for what it says, or refused with a word that helps. */
class HostileMapsTest {
    private static final String LINE = "[[-6.43,57.28],[-6.42,57.25],[-6.40,57.20]]";
    private static final String GPX = "<gpx version=\"1.1\" creator=\"x\" xmlns=\"http://www.topografix.com/GPX/1/1\""
            + " xmlns:d=\"http://device.example/1\">";
    private static final String TIME = "<time>2026-03-16T07:20:00Z</time>";

    @TempDir
    Path folder;

    private HostileFiles files;

    @BeforeEach
    void makeABook() {
        files = HostileFiles.in(folder);
    }

    private CommandRun river(String geoJson) {
        return CommandRun.of("new", folder.resolve("new.mv.db"), "--river", files.file("water.geojson", geoJson));
    }

    /** RFC 7946, 4: WGS84 only; the older form of 2008 could name another system. */
    @ParameterizedTest
    @CsvSource({
        "urn:ogc:def:crs:OGC:1.3:CRS84, 0", "EPSG:4326, 0", "urn:ogc:def:crs:EPSG::4258, 0",
        "urn:ogc:def:crs:EPSG::27700, 1", "EPSG:4277, 1", "EPSG:43260, 1"
    })
    void aLineOfAnotherSystemIsNotTakenForWgs84(String crs, int exitCode) {
        CommandRun run =
                river("{\"type\":\"FeatureCollection\",\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"" + crs
                        + "\"}},\"features\":[{\"type\":\"Feature\",\"properties\":{\"name\":\"A\"},\"geometry\":"
                        + "{\"type\":\"LineString\",\"coordinates\":" + LINE + "}}]}");

        assertThat(run.exitCode()).as(run.err()).isEqualTo(exitCode);
        assertThat(run.err().contains("EPSG:4326")).isEqualTo(exitCode == 1);
    }

    /** Heights are passed over; the line is 9.09 km long with and without them, as one piece or two. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "{'type':'LineString','coordinates':[[-6.43,57.28,12.5],[-6.42,57.25,-3],[-6.40,57.20,0]]}",
                "{'type':'MultiLineString','coordinates':[[[-6.43,57.28],[-6.42,57.25]],[[-6.42,57.25],[-6.40,57.20]]]}",
                "{'type':'FeatureCollection','features':[{'type':'Feature','properties':null,'geometry':null},"
                        + "{'type':'Feature','properties':null,'geometry':{'type':'LineString','coordinates':"
                        + "[[-6.43,57.28],[-6.42,57.25],[-6.40,57.20]]}}]}"
            })
    void aLineIsTheSameHoweverItIsWritten(String geoJson) {
        CommandRun run = river(geoJson.replace('\'', '"'));

        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out()).contains("Water: 9.09 km");
    }

    /** Across the 180th meridian, 0.02 degrees of longitude and of latitude at 17 degrees south: 3.07 km on WGS84. */
    @Test
    void aRiverAcrossTheDateLineIsAsLongAsItIs() {
        CommandRun run = river("{\"type\":\"LineString\",\"coordinates\":[[179.99,-17.0],[-179.99,-17.02]]}");

        assertThat(run.out()).contains("3.07 km");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{'type':'FeatureCollection','features':[]}",
                "{'type':'Polygon','coordinates':[[[1,2],[3,4],[1,2]]]}",
                "{'type':'LineString','coordinates':[[1e400,57.28],[-6.42,57.25]]}",
                "{'type':'LineString','coordinates':[[-6.43,57.28]]}",
                "{'type':'LineString','coordinates':[['-6.43','57.28'],[1,2]]}"
            })
    void whatIsNoLineIsRefused(String geoJson) {
        CommandRun run = river(geoJson.replace('\'', '"'));

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.err()).contains("No book was made").doesNotContain("NaN", "Exception");
    }

    /** Signs that turn the direction of writing or steer a screen stay out; what is written stays as it is. */
    @Test
    void namesThatSteerTheScreenAreShownAsTheyAreWritten() {
        files.takes(files.file("a.csv", "name,km\nMill\u202Egdirb\u001b[2J,3.1\n"));

        assertThat(CommandRun.of("show", files.book(), "landmarks").out())
                .contains("Millgdirb[2J")
                .doesNotContain("\u202E", "\u001b[2J");
        assertThat(river("{\"type\":\"Feature\",\"properties\":{\"name\":\"Ar\\u202Erel\"},\"geometry\":"
                                + "{\"type\":\"LineString\",\"coordinates\":" + LINE + "}}")
                        .out())
                .startsWith("Arrel:");
    }

    /** A name of a million letters would fill every screen, page and file that it comes into. */
    @Test
    void namesWithoutEndAreRefused() {
        String endless = "x".repeat(900_000);
        String before = CommandRun.of("show", files.book(), "landmarks").out();

        CommandRun river = river("{\"type\":\"Feature\",\"properties\":{\"name\":\"" + endless + "\"},\"geometry\":"
                + "{\"type\":\"LineString\",\"coordinates\":" + LINE + "}}");
        CommandRun landmark =
                CommandRun.of("import", files.book(), files.file("a.csv", "name,km\n" + endless + ",3.1\n"));

        assertThat(river.exitCode()).isEqualTo(1);
        assertThat(river.out() + river.err())
                .contains("longer than 200 letters")
                .hasSizeLessThan(2000);
        assertThat(landmark.exitCode()).isEqualTo(1);
        assertThat(landmark.out())
                .contains("a.csv:2:name", "longer than 200 letters")
                .hasSizeLessThan(2000);
        assertThat(CommandRun.of("show", files.book(), "landmarks").out()).isEqualTo(before);
    }

    @Test
    void whatIsQuotedOfALongCellIsShort() {
        Path table = files.file("a.csv", "date,grid_ref,species\n2026-03-02,NY" + "9".repeat(100_000) + ",dipper\n");

        assertThat(CommandRun.of("import", files.book(), table).out())
                .contains("a.csv:2:grid_ref")
                .hasSizeLessThan(3000);
        files.refuses(table, "grid_ref");
    }

    @Test
    void namesOfFilesInAZipSteerNoScreen() {
        Path zip = files.zip("a.zip", Map.of("\u202Evsc.\u001b[2Ja.csv", HostileFiles.HEADER + HostileFiles.ROW));

        assertThat(CommandRun.of("import", files.book(), zip).out())
                .contains("a.zip!vsc.[2Ja.csv")
                .doesNotContain("\u202E", "\u001b");
    }

    /** As hand-held receivers write: extensions, symbols, several segments, a plan, points below the sea, prefixes, GPX 1.0. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                GPX + "<metadata>" + TIME + "</metadata><wpt lat=\"57.265\" lon=\"-6.4\"><ele>-2.5</ele>" + TIME
                        + "<name>WP012</name><cmt>DI singing</cmt><desc>DI singing</desc><sym>Flag, Blue</sym>"
                        + "<extensions><d:x><d:y>1</d:y></d:x></extensions></wpt>"
                        + "<rte><name>plan</name><rtept lat=\"57.2\" lon=\"-6.4\"/></rte></gpx>",
                "<g:gpx version=\"1.1\" creator=\"x\" xmlns:g=\"http://www.topografix.com/GPX/1/1\"><g:wpt lat=\"57.265\""
                        + " lon=\"-6.4\"><g:time>2026-03-16T07:20:00Z</g:time><g:name>DI singing</g:name></g:wpt></g:gpx>",
                "<gpx version=\"1.0\" creator=\"x\" xmlns=\"http://www.topografix.com/GPX/1/0\"><wpt lat=\"57.265\""
                        + " lon=\"-6.4\">" + TIME + "<name>DI singing</name><course>3</course></wpt></gpx>"
            })
    void waypointsOfAnyReceiverAreRead(String gpx) {
        CommandRun run = CommandRun.of("import", files.book(), files.file("walk.gpx", gpx), "--zone", "UTC");

        assertThat(run.exitCode()).as(run.out()).isZero();
        assertThat(CommandRun.of("show", files.book(), "sightings").out()).contains("16 Mar 2026", "07:20", "singing");
    }

    /** Points every two kilometres tell of no water in between; that is not the same as being far from the river. */
    @Test
    void aTrackOfFewPointsIsToldFromOneElsewhere() {
        String track = GPX + "<trk><trkseg><trkpt lat=\"57.28\" lon=\"-6.4\">" + TIME
                + "</trkpt><trkpt lat=\"57.26\" lon=\"-6.4\">" + TIME + "</trkpt></trkseg></trk></gpx>";

        assertThat(CommandRun.of("import", files.book(), files.file("a.gpx", track))
                        .out())
                .contains("more than 500 m apart");
        assertThat(CommandRun.of("import", files.book(), files.file("b.gpx", track.replace("-6.4", "-7.4")))
                        .out())
                .contains("no river of the book");
    }

    @Test
    void aGlobeThatLeadsOutOfItsZipIsRefused() {
        Path slip = files.zip("slip.kmz", Map.of("../../evil.kml", "<kml/>"));

        files.refuses(slip, "leads out");
    }

    @Test
    void aTableThatMixesEndsOfLinesIsReadRowByRow() {
        files.takes(files.file(
                "a.csv",
                "date,km,species,count\r\n2026-03-02,3.1,dipper,1\r2026-03-03,3.2,dipper,1\n2026-03-04,3.3,dipper,1"));
    }

    @Test
    void aTableWithNulIsNoText() {
        files.refuses(
                files.file("a.csv", HostileFiles.HEADER + "2026-03-02,3.1,dipper,1,a\u0000b\n"), "not a text table");
    }
}
