package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.xml.sax.SAXException;

/**
 * Files held against the schema files and lists of the standards, which lie in the folder {@code schemas} with their sources. The
 * book has names that XML and JSON must guard, rivers on both sides of the date line, and a record of every kind.
 */
class StandardFilesTest {
    private static final String RIVERS = """
            {"type":"FeatureCollection","features":[
              {"type":"Feature","properties":{"name":"Ål <&> \\"Water\\" ]]>"},"geometry":{"type":"LineString",
               "coordinates":[[179.98,57.28],[179.98,57.20]]}},
              {"type":"Feature","properties":{"name":"O'Rourke\\u0007 Béck 🐦"},"geometry":{"type":"LineString",
               "coordinates":[[-179.98,57.28],[-179.98,57.20]]}}]}
            """;

    @TempDir
    Path folder;

    private Path book;

    @BeforeEach
    void makeABook() throws IOException {
        book = folder.resolve("odd.mv.db");
        run("new", book, "--river", file("river.geojson", RIVERS));
        String river = "\"Ål <&> \"\"Water\"\" ]]>\"";
        run(
                "import",
                book,
                file("l.csv", "name,km,kind,river\n\"Mill <Bridge> & \"\"Co\"\" ]]> 🐦\",3.1,bridge," + river + "\n"),
                file(
                        "v.csv",
                        "visit,date,start,end,from_km,to_km,species,river,observers,weather,note\n"
                                + "1,2026-03-02,07:00,09:00,1,6,dipper;kingfisher,"
                                + river + ",\"J. \"\"X\"\" <Marl>; B & Dell\",\"wet \"\"&\"\" <cold>\",a <note>\n"
                                + "2,2026-03-20,07:00,09:00,1,6,dipper," + river + ",,,\n"
                                + "3,2026-04-12,,,1,6,dipper," + river + ",,,\n"),
                file(
                        "s.csv",
                        "sighting,visit,date,km,species,activity,river,rings,simultaneous_with,flew_to_km,turned_back,note\n"
                                + "a,1,,3.4,dipper,singing,"
                                + river + ",R/N m/W,b,3.6,yes,\"tab\there <&>\"\n" + "b,1,,3.5,dipper,singing," + river
                                + ",,a,,,\n" + "c,2,,3.45,dipper,carrying food," + river + ",,,,,\n"
                                + "d,,2026-05-01,3.45,kingfisher,,"
                                + river + ",,,,,\n"),
                file("n.csv", "nest,km,species,river,note\nN1,3.413,dipper," + river + ",behind <the> stone\n"),
                file(
                        "c.csv",
                        "nest,date,stage,eggs,young,outcome\nN1,2026-04-12,eggs,4,,\nN1,2026-05-22,empty,,,success\n"),
                file(
                        "k.csv",
                        "sample,date,km,river,minutes,taxon,abundance\nK1,2026-04-20,4.1," + river
                                + ",3,Baetidae,B\nK1,2026-04-20,4.1," + river + ",3,Heptageniidae,12\n"));
    }

    private Path file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private static void run(Object... arguments) {
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
    }

    private Path export(String form, String audience, String... more) {
        List<Object> arguments = new ArrayList<>(List.of("export", book, "--as", form, "--replace"));
        Path out = folder.resolve("out" + audience + "." + form);
        arguments.addAll(List.of("--out", out));
        arguments.addAll(List.of(more));
        if (!audience.isEmpty()) {
            arguments.add(audience);
        }
        run(arguments.toArray());
        return out;
    }

    private String fromTheArchive(String audience, String name) throws IOException {
        Path out = export(
                "darwin-core", audience, "--licence", "CC BY", "--group", "Ål & <Co>", "--email", "a&b@arrel.example");
        try (ZipFile zip = new ZipFile(out.toFile());
                InputStream bytes = zip.getInputStream(zip.getEntry(name))) {
            return new String(bytes.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "'', meta.xml, tdwg_dwc_text.xsd",
        "--private, meta.xml, tdwg_dwc_text.xsd",
        "'', eml.xml, eml-profile.xsd",
        "--private, eml.xml, eml-profile.xsd"
    })
    void anArchiveIsDescribedAsTheSchemasWant(String audience, String name, String schema) throws Exception {
        StandardSchemas.validate(schema, fromTheArchive(audience, name));
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            tdwg_dwc_text.xsd, meta.xml, '<coreid index="0"/>'
            tdwg_dwc_text.xsd, meta.xml, 'rowType="http://rs.tdwg.org/dwc/terms/Event"'
            tdwg_dwc_text.xsd, meta.xml, '<location>event.txt</location>'
            eml-profile.xsd, eml.xml, 'scope="system"'
            """)
    void theSchemasFindWhatIsMissing(String schema, String name, String part) throws IOException {
        String whole = fromTheArchive("", name);
        String broken = whole.replace(part, "");

        assertThat(broken).isNotEqualTo(whole);
        assertThatThrownBy(() -> StandardSchemas.validate(schema, broken)).isInstanceOf(SAXException.class);
    }

    @ParameterizedTest
    @ValueSource(strings = {"pubDate", "abstract", "contact", "creator", "title"})
    void theProfileFindsAMissingElement(String element) throws IOException {
        String broken = fromTheArchive("", "eml.xml").replaceAll("(?s)<" + element + ">.*?</" + element + ">", "");

        assertThatThrownBy(() -> StandardSchemas.validate("eml-profile.xsd", broken))
                .isInstanceOf(SAXException.class);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "--private"})
    void gpxIsAsItsSchemaWants(String audience) throws Exception {
        String text = Files.readString(export("gpx", audience));

        StandardSchemas.validate("gpx.xsd", text);

        assertThat(text).contains("<wpt ", "<rte>");
        String turned = text.replaceFirst("(<name>[^<]*</name>)\\s*(<desc>[^<]*</desc>)", "$2$1");
        assertThat(turned).isNotEqualTo(text);
        assertThatThrownBy(() -> StandardSchemas.validate("gpx.xsd", turned)).isInstanceOf(SAXException.class);
        String beyond = text.replaceFirst("lat=\"[^\"]*\"", "lat=\"90.5\"");
        assertThatThrownBy(() -> StandardSchemas.validate("gpx.xsd", beyond)).isInstanceOf(SAXException.class);
    }

    /** Each column is a term that the standard has, and none is told twice. */
    @ParameterizedTest
    @ValueSource(strings = {"", "--private"})
    void theTermsAreThoseOfTheStandards(String audience) throws IOException {
        Set<String> known = new HashSet<>();
        try (InputStream list = StandardFilesTest.class.getResourceAsStream("schemas/standard-terms.csv")) {
            new String(Objects.requireNonNull(list).readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .forEach(line -> known.add(line.substring(line.indexOf(',') + 1)));
        }
        String meta = fromTheArchive(audience, "meta.xml");
        for (String part : meta.split("<(core|extension) ", -1)) {
            List<String> terms = new ArrayList<>();
            Matcher term = Pattern.compile(" term=\"([^\"]*)\"").matcher(part);
            while (term.find()) {
                terms.add(term.group(1));
            }
            assertThat(known).containsAll(terms);
            assertThat(terms).doesNotHaveDuplicates();
        }
        assertThat(known).doesNotContain("http://rs.tdwg.org/dwc/terms/riverKilometre");
        assertThat(meta)
                .contains(
                        "rowType=\"http://rs.tdwg.org/dwc/terms/Event\"",
                        "rowType=\"http://rs.tdwg.org/dwc/terms/Occurrence\"",
                        "rowType=\"http://rs.tdwg.org/eco/terms/Event\"",
                        "rowType=\"http://rs.iobis.org/obis/terms/ExtendedMeasurementOrFact\"");
    }

    /** RFC 7946: no crs (4), longitude first and within bounds (3.1.1, 4), no line across the date line (3.1.9), no member of another level. */
    @ParameterizedTest
    @ValueSource(strings = {"", "--private"})
    void geoJsonIsAsItsStandardWants(String audience) throws IOException {
        byte[] bytes = Files.readAllBytes(export("geojson", audience));
        JsonObject all = JsonParser.parseString(new String(bytes, StandardCharsets.UTF_8))
                .getAsJsonObject();

        assertThat(bytes[0]).isEqualTo((byte) '{');
        assertThat(all.keySet()).containsExactlyInAnyOrder("type", "features");
        for (JsonElement element : all.getAsJsonArray("features")) {
            JsonObject feature = element.getAsJsonObject();
            assertThat(feature.keySet()).containsExactlyInAnyOrder("type", "properties", "geometry");
            JsonObject geometry = feature.getAsJsonObject("geometry");
            assertThat(geometry.keySet()).containsExactlyInAnyOrder("type", "coordinates");
            JsonArray coordinates = geometry.getAsJsonArray("coordinates");
            boolean line = geometry.get("type").getAsString().equals("LineString");
            List<JsonArray> positions = new ArrayList<>();
            if (line) {
                assertThat(coordinates.size()).isGreaterThanOrEqualTo(2);
                coordinates.forEach(position -> positions.add(position.getAsJsonArray()));
            } else {
                assertThat(geometry.get("type").getAsString()).isEqualTo("Point");
                positions.add(coordinates);
            }
            for (JsonArray position : positions) {
                assertThat(position).hasSize(2);
                assertThat(position.get(0).getAsDouble()).isBetween(-180.0, 180.0);
                assertThat(position.get(1).getAsDouble()).isBetween(-90.0, 90.0);
                assertThat(Math.signum(position.get(0).getAsDouble()))
                        .isEqualTo(Math.signum(positions.get(0).get(0).getAsDouble()));
            }
        }
    }

    @Test
    void theSchemasAreNotEmpty() {
        assertThatThrownBy(() -> StandardSchemas.validate("gpx.xsd", "<gpx/>")).isInstanceOf(SAXException.class);
        assertThatThrownBy(() -> StandardSchemas.validate("tdwg_dwc_text.xsd", "<archive/>"))
                .isInstanceOf(SAXException.class);
        assertThatThrownBy(() -> StandardSchemas.validate("eml-profile.xsd", "<eml/>"))
                .isInstanceOf(SAXException.class);
    }
}
