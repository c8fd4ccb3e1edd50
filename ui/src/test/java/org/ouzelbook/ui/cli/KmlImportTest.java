package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Rivers and landmarks drawn on a globe: KML, and KMZ, which is a zip of it. */
class KmlImportTest {
    private static final String KML = """
            <?xml version="1.0" encoding="UTF-8"?>
            <kml xmlns="http://www.opengis.net/kml/2.2"><Document><name>My places</name>
            <Style id="s"><LineStyle><width>2</width></LineStyle></Style>
            <Folder><name>Dippers</name>
            <Placemark><name>Arrel Water</name><MultiGeometry>
              <LineString><coordinates>-6.40,57.28,0
                 -6.40,57.24,0</coordinates></LineString>
              <LineString><coordinates>-6.40,57.24,12.5 -6.40,57.20,0</coordinates></LineString>
            </MultiGeometry></Placemark>
            <Placemark><name>Mill Bridge</name><description><![CDATA[<b>old</b> & worn]]></description>
              <Point><coordinates>-6.4001,57.2300,0</coordinates></Point></Placemark>
            <Placemark><name>Field</name><Polygon><outerBoundaryIs><LinearRing><coordinates>0,0 1,1 0,1 0,0</coordinates>
              </LinearRing></outerBoundaryIs></Polygon></Placemark>
            </Folder></Document></kml>
            """;

    @TempDir
    Path folder;

    private static String run(Object... arguments) {
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).as(run.out()).isZero();
        return run.out();
    }

    private Path write(String name, String kml) throws IOException {
        Path file = folder.resolve(name);
        if (name.endsWith(".kml")) {
            return Files.writeString(file, kml);
        }
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
            zip.putNextEntry(new ZipEntry("doc.kml"));
            zip.write(kml.getBytes(StandardCharsets.UTF_8));
            zip.putNextEntry(new ZipEntry("files/icon.png"));
            zip.write(1);
        }
        return file;
    }

    @ParameterizedTest
    @ValueSource(strings = {"places.kml", "places.kmz"})
    void linesAreRiversAndPointsLandmarks(String name) throws IOException {
        Path book = folder.resolve("arrel.mv.db");
        Path places = write(name, KML);

        String made = run("new", book, "--river", places);
        run("import", book, places);
        String landmarks = run("show", book, "landmarks");

        // a degree of latitude at 57.24 N is 111 412 m (GRS80), so the line is 8.91 km long
        assertThat(made).contains("Arrel Water: 8.91 km", "2 pieces");
        assertThat(landmarks).contains("Mill Bridge", "bridge", "3.34");
        assertThat(run("import", book, places)).contains("the book has all of this already");
    }

    @Test
    void ourOwnFormMakesTheSameRiversAndLandmarksAndNothingElse() throws IOException {
        Path book = folder.resolve("arrel.mv.db");
        run("new", book, "--river", write("places.kml", KML));
        run("import", book, folder.resolve("places.kml"));
        Path sightings = folder.resolve("sightings.csv");
        run("import", book, Files.writeString(sightings, "date,km,species\n2026-03-02,3.42,dipper\n"));
        Path out = folder.resolve("out.kml");
        run("export", book, "--as", "kml", "--private", "--out", out);
        Path other = folder.resolve("other.mv.db");

        run("new", other, "--river", out);
        run("import", other, out);

        assertThat(JsonParser.parseString(run("show", other, "landmarks", "--json"))
                        .toString())
                .contains("Mill Bridge")
                .doesNotContain("dipper");
        assertThat(run("show", other, "sightings")).doesNotContain("3.42");
        assertThat(run("import", book, out)).contains("the book has all of this already");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '~', textBlock = """
            -6.40,57.28,0 ~ 57.28,-96.40,0 ~ latitude before longitude
            -6.40,57.28,0 ~ 1e308,57.28,0 ~ metres of a national grid
            -6.40,57.28,0 ~ NaN,57.28,0 ~ no degrees
            -6.40,57.28,0 ~ -6.40,0 57.28 ~ no degrees
            </kml> ~ '' ~ broken XML
            <Document> ~ <Document><name>&x;</name> ~ broken XML
            <kml xmlns ~ <!DOCTYPE kml><kml xmlns ~ document type
            """)
    void tellsWhatIsWrong(String there, String instead, String told) throws IOException {
        CommandRun run = CommandRun.of(
                "new", folder.resolve("a.mv.db"), "--river", write("places.kml", KML.replace(there, instead)));

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.out() + run.err()).contains("places.kml", told).doesNotContain("Exception");
        assertThat(folder.resolve("a.mv.db")).doesNotExist();
    }
}
