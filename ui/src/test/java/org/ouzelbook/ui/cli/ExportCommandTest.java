package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Enumeration;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What leaves a book, and what must not. */
class ExportCommandTest {
    private static final String RIVER = """
            {"type":"Feature","properties":{"name":"Arrel Water"},"geometry":{"type":"LineString","coordinates":
              [[-6.40,57.28],[-6.40,57.20]]}}
            """;
    private static final String LANDMARKS = """
            name,km,kind,nest_site
            "Mill <Bridge> & ""Co\""",3.1,bridge,yes
            """;
    private static final String VISITS = """
            visit,date,start,end,from_km,to_km,species,observers,weather,note
            IB-1,2026-03-02,07:00,09:35,1.2,5.4,dipper;kingfisher,Ina Brekke,dry,with Ole
            IB-2,2026-03-16,07:00,09:35,1.2,5.4,dipper;kingfisher,Ina Brekke,dry,
            """;
    private static final String SIGHTINGS = """
            sighting,visit,km,time,species,count,activity,breeding_code,rings,simultaneous_with,flew_to_km,turned_back,observer,note
            b1,IB-1,3.42,07:12,dipper,2,singing,,,c1,,,Ina Brekke,"=HYPERLINK(""http://x.example"",""look"")"
            c1,IB-1,4.90,07:12,dipper,1,,,,b1,,,Ina Brekke,
            b2,IB-2,3.40,07:30,dipper,1,carrying food,14,R/N m/W,,3.90,yes,Ina Brekke,@home under the arch
            """;
    private static final String NESTS = "nest,km,species,site,height_m\nKX7,3.413,dipper,bridge,1.5\n";
    private static final String CHECKS = "nest,date,stage,eggs\nKX7,2026-03-30,4 eggs,4\n";
    private static final String BIRDS =
            "bird,left_upper,left_lower,right_upper,right_lower,ring\nBD1,R/N,m,W,,ZZ98765\n";

    @TempDir
    Path folder;

    private Path book;

    @BeforeEach
    void makeABook() throws IOException {
        book = newBook("arrel.mv.db");
        Path notebooks = Files.createDirectory(folder.resolve("notebooks"));
        Files.writeString(notebooks.resolve("landmarks.csv"), LANDMARKS);
        Files.writeString(notebooks.resolve("visits.csv"), VISITS);
        Files.writeString(notebooks.resolve("sightings.csv"), SIGHTINGS);
        Files.writeString(notebooks.resolve("nests.csv"), NESTS);
        Files.writeString(notebooks.resolve("checks.csv"), CHECKS);
        Files.writeString(notebooks.resolve("birds.csv"), BIRDS);
        run("import", book, notebooks);
    }

    private Path newBook(String name) throws IOException {
        Path made = folder.resolve(name);
        run("new", made, "--river", Files.writeString(folder.resolve("river.geojson"), RIVER));
        return made;
    }

    private static String run(Object... arguments) {
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).as(run.out()).isZero();
        return run.out();
    }

    private Path export(String form, String... more) {
        Path out = folder.resolve("out-" + String.join("", more) + "." + (form.equals("csv") ? "zip" : form));
        Object[] arguments = {"export", book, "--as", form, "--out", out, "--replace"};
        Object[] all =
                Stream.concat(Arrays.stream(arguments), Arrays.stream(more)).toArray();
        run(all);
        return out;
    }

    /** Every byte that a reader can see: the parts of a zip one after another. */
    private static String everything(Path file) throws IOException {
        if (!file.toString().matches(".*\\.(zip|xlsx)")) {
            return Files.readString(file);
        }
        StringBuilder text = new StringBuilder();
        try (ZipFile zip = new ZipFile(file.toFile())) {
            for (Enumeration<? extends ZipEntry> entries = zip.entries(); entries.hasMoreElements(); ) {
                ZipEntry entry = entries.nextElement();
                text.append(entry.getName()).append('\n');
                try (InputStream in = zip.getInputStream(entry)) {
                    text.append(new String(in.readAllBytes(), StandardCharsets.UTF_8));
                }
            }
        }
        return text.toString();
    }

    @ParameterizedTest
    @ValueSource(strings = {"csv", "xlsx", "geojson", "kml", "gpx"})
    void tellsThePublicNoNestNoRingNoNameAndNoExactPlace(String form) throws IOException {
        String text = everything(export(form));

        assertThat(text).contains("Mill");
        assertThat(text)
                .doesNotContain("KX7", "Ina", "Brekke", "Ole", "IB-1", "ZZ98765", "BD1", "R/N", "arch", "example", "b2")
                .doesNotContain("3.42", "3.413", "3.4,", "3.90", "4.9", "07:12", "07:30", "carrying", "1.2,")
                .doesNotContain("nest_site", "<v>3.4</v>");
        // the nest at km 3.413 and the pair at km 3.42 of a line of 8.907 km from 57.20 to 57.28 N
        assertThat(text).doesNotContain("57.2306", "57.2307");
    }

    @ParameterizedTest
    @ValueSource(strings = {"csv", "xlsx"})
    void decisionsGoOutPrivatelyAndComeInAgain(String form) throws IOException {
        run("decide", book, "--season", "2026", "boundary", "at", "4.1", "because", "two pairs");
        run("decide", book, "--season", "2026", "no", "territory", "from", "4.8", "to", "5.0", "because", "passing");
        Path other = newBook("other.mv.db");
        String shown = run("show", book, "decisions", "--json");

        run("import", other, export(form, "--private"));

        assertThat(run("show", other, "decisions", "--json")).isEqualTo(shown).contains("two pairs", "boundary");
        assertThat(run("import", other, export(form, "--private"))).contains("the book has all of this already");
        assertThat(everything(export(form)))
                .doesNotContain("two pairs", "passing")
                .contains("maximum_length_metres");
    }

    @ParameterizedTest
    @ValueSource(strings = {"csv", "xlsx"})
    void whatGoesOutPrivatelyComesInAgainAsItWas(String form) throws IOException {
        Path tables = export(form, "--private");
        Path other = newBook("other.mv.db");

        run("import", other, tables);

        for (String what : new String[] {"landmarks", "visits", "sightings", "nests", "birds"}) {
            assertThat(records(other, what)).as(what).isEqualTo(records(book, what));
        }
        JsonObject map = JsonParser.parseString(run("map", other, "--json")).getAsJsonObject();
        assertThat(map.getAsJsonArray("rivers").get(0).getAsJsonObject().get("byRule"))
                .isEqualTo(JsonParser.parseString(run("map", book, "--json"))
                        .getAsJsonObject()
                        .getAsJsonArray("rivers")
                        .get(0)
                        .getAsJsonObject()
                        .get("byRule"));
        assertThat(run("show", other, "sightings")).contains("=HYPERLINK", "@home");
    }

    private static String records(Path book, String what) {
        return run("show", book, what).replaceAll("[0-9a-f-]{36}", "");
    }

    @Test
    void writesNoFormulaIntoATable() throws IOException {
        assertThat(everything(export("csv", "--private")))
                .contains("'=HYPERLINK", "'@home")
                .doesNotContain(",=", ",@");
        assertThat(everything(export("xlsx", "--private"))).doesNotContain("<f>");
    }

    @ParameterizedTest
    @CsvSource({"kml,--private", "gpx,--private", "kml,", "gpx,"})
    void writesWellFormedXmlWhateverNamesHold(String form, String more) throws Exception {
        Path file = more == null ? export(form) : export(form, more);

        String names = DocumentBuilderFactory.newDefaultNSInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(Files.readAllBytes(file)))
                .getDocumentElement()
                .getTextContent();

        assertThat(names).contains("Mill <Bridge> & \"Co\"");
        assertThat(names.contains("KX7")).isEqualTo(more != null);
    }

    @Test
    void writesLongitudeFirstInGeoJson() throws IOException {
        JsonObject collection =
                JsonParser.parseString(Files.readString(export("geojson"))).getAsJsonObject();
        JsonObject landmark = collection.getAsJsonArray("features").get(1).getAsJsonObject();

        assertThat(landmark.getAsJsonObject("geometry").toString())
                .startsWith("{\"type\":\"Point\",\"coordinates\":[-6.4,57.22");
        assertThat(landmark.getAsJsonObject("properties").get("layer").getAsString())
                .isEqualTo("landmarks");
    }

    @ParameterizedTest
    @ValueSource(strings = {"csv", "xlsx", "geojson", "kml", "gpx"})
    void isTheSameByteForByte(String form) throws IOException {
        byte[] first = Files.readAllBytes(export(form));

        assertThat(Files.readAllBytes(export(form))).isEqualTo(first);
    }

    @ParameterizedTest
    @ValueSource(strings = {"Old nest tree", "KX7 stone", "Ina Brekke’s seat"})
    void stopsWhereAPrivateWordStandsInSomethingPublic(String landmark) throws IOException {
        run("import", book, Files.writeString(folder.resolve("more.csv"), "name,km\n" + landmark + ",3.2\n"));
        Path out = folder.resolve("leak.gpx");

        CommandRun run = CommandRun.of("export", book, "--as", "gpx", "--out", out);

        assertThat(run.exitCode()).isEqualTo(ExitCode.PROBLEMS);
        assertThat(run.out()).contains("Nothing was written", "leak.gpx:").doesNotContain("KX7", "Brekke");
        assertThat(out).doesNotExist();
        run("export", book, "--as", "gpx", "--out", out, "--private");
        assertThat(out).exists();
    }

    @ParameterizedTest
    @CsvSource({
        "csv, tables.csv, .zip",
        "geojson, map.kml, .geojson",
        "xlsx, Tables.XLS, .xlsx",
        "analysis, a.csv, .zip"
    })
    void refusesANameThatPromisesAnotherKindOfFile(String form, String name, String ending) {
        Path out = folder.resolve(name);

        CommandRun run = CommandRun.of("export", book, "--as", form, "--private", "--out", out);

        assertThat(run.exitCode()).isEqualTo(ExitCode.WRONG_USAGE);
        assertThat(run.err()).contains(name, "End it in " + ending);
        assertThat(out).doesNotExist();
    }

    @Test
    void writesOverNothingUnlessTold() throws IOException {
        Path out = Files.writeString(folder.resolve("mine.gpx"), "mine");

        CommandRun run = CommandRun.of("export", book, "--as", "gpx", "--out", out);

        assertThat(run.exitCode()).isEqualTo(ExitCode.PROBLEMS);
        assertThat(Files.readString(out)).isEqualTo("mine");
        assertThat(CommandRun.of("export", book, "--as", "fax").exitCode()).isEqualTo(ExitCode.WRONG_USAGE);
    }
}
