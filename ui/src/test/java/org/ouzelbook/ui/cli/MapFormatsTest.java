package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.jenetics.jpx.GPX;
import io.jenetics.jpx.WayPoint;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.bootstrap.DOMImplementationRegistry;
import org.w3c.dom.ls.DOMImplementationLS;
import org.w3c.dom.ls.LSInput;
import org.xml.sax.SAXException;

/**
 * Maps as the standards want them: KML held against the schema files of the Open Geospatial Consortium (07-147r2, ogckml22.xsd, as they
 * come in the library ogc-schemas 2.6.1), GPX read by another program’s reader at its strictest (JPX 3.2.0), and what both hold read back by our
 * own import. The river lies at the meridian of Greenwich, where degrees are small numbers.
 */
class MapFormatsTest {
    private static final String RIVER = """
            {"type":"Feature","properties":{"name":"Lea <&> Water"},"geometry":{"type":"LineString","coordinates":
              [[0.00004,51.58],[-0.00004,51.50]]}}
            """;

    @TempDir
    Path folder;

    private Path book;

    @BeforeEach
    void makeABook() throws IOException {
        book = folder.resolve("lea.mv.db");
        run("new", book, "--river", Files.writeString(folder.resolve("river.geojson"), RIVER));
        run(
                "import",
                book,
                file("l.csv", "name,km,kind\n\"Mill <Bridge> & \"\"Co\"\"\",3.1,bridge\nWeir 2,5.2,weir\n"),
                file(
                        "v.csv",
                        "visit,date,from_km,to_km,species\n1,2026-03-02,1,6,dipper\n2,2026-03-20,1,6,dipper\n3,2026-04-12,1,6,dipper\n"),
                file(
                        "s.csv",
                        "visit,km,species,activity\n1,3.4,dipper,singing\n2,3.5,dipper,singing\n3,3.45,dipper,carrying food\n"),
                file("n.csv", "nest,km,species\nN1,3.413,dipper\n"));
    }

    private Path file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private static String run(Object... arguments) {
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
        return run.out();
    }

    private Path export(String form, String audience) {
        Path out = folder.resolve(form + audience + "." + form);
        if (audience.isEmpty()) {
            run("export", book, "--as", form, "--out", out);
        } else {
            run("export", book, "--as", form, "--out", out, audience);
        }
        return out;
    }

    private static Schema kml() throws SAXException, ReflectiveOperationException {
        DOMImplementationLS letters =
                (DOMImplementationLS) DOMImplementationRegistry.newInstance().getDOMImplementation("LS");
        SchemaFactory factory = SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI);
        factory.setResourceResolver((type, namespace, publicId, systemId, base) -> {
            String beside =
                    systemId.endsWith("xAL.xsd") ? "/oasis/election/external/xAL.xsd" : "/ogc/kml/2.2.0/" + systemId;
            LSInput input = letters.createLSInput();
            InputStream found = MapFormatsTest.class.getResourceAsStream(beside);
            input.setByteStream(Objects.requireNonNull(found, systemId));
            input.setSystemId(systemId);
            return input;
        });
        URL schema = Objects.requireNonNull(MapFormatsTest.class.getResource("/ogc/kml/2.2.0/ogckml22.xsd"));
        return factory.newSchema(schema);
    }

    @ParameterizedTest
    @CsvSource({"''", "--private"})
    void kmlIsAsItsSchemaWants(String audience) throws Exception {
        String text = Files.readString(export("kml", audience));

        kml().newValidator().validate(new StreamSource(new StringReader(text)));

        String broken = text.replaceFirst("(<name>[^<]*</name>)\\s*((?s)<ExtendedData>.*?</ExtendedData>)", "$2$1");
        assertThat(broken).isNotEqualTo(text);
        assertThatThrownBy(() -> kml().newValidator().validate(new StreamSource(new StringReader(broken))))
                .isInstanceOf(SAXException.class);
    }

    @ParameterizedTest
    @CsvSource({"'', 3", "--private, 4"})
    void gpxIsReadByAStrictReader(String audience, int waypoints) throws IOException {
        Path file = export("gpx", audience);

        GPX read = GPX.Reader.of(GPX.Version.V11, GPX.Reader.Mode.STRICT).read(file);

        assertThat(read.getWayPoints()).hasSize(waypoints);
        assertThat(read.getRoutes()).hasSize(1);
        WayPoint bridge = read.getWayPoints().get(0);
        assertThat(bridge.getName()).contains("Mill <Bridge> & \"Co\"");
        assertThat(Math.abs(bridge.getLongitude().doubleValue())).isLessThan(0.00005);
        // xsd:decimal of the GPX 1.1 schema (latitudeType, longitudeType) knows no powers of ten
        assertThat(Files.readString(file)).doesNotContainPattern("(lat|lon)=\"[^\"]*[eE]");
    }

    @ParameterizedTest
    @CsvSource({"kml, 8.9", "gpx, 8.9", "geojson, 8.9"})
    void theRiverComesBackAsLongAsItWas(String form, String km) {
        String told = CommandRun.of(
                        "new", folder.resolve(form + "-again.mv.db"), "--river", export(form, ""), "--mouth-at", "last")
                .out();

        assertThat(told).contains("Lea <&> Water: " + km);
    }

    @Test
    void landmarksComeBackFromKml() throws IOException {
        Path other = folder.resolve("other.mv.db");
        run("new", other, "--river", folder.resolve("river.geojson"));

        run("import", other, export("kml", ""));

        assertThat(run("show", other, "landmarks")).isEqualTo(run("show", book, "landmarks"));
    }
}
