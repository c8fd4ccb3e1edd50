package org.ouzelbook.ui.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ouzelbook.ui.cli.CommandRun;
import org.xml.sax.InputSource;

/** The page for the local group, made through the command line from an invented river with a nest to hide. */
class SeasonReportTest {
    private static final String RIVER = """
            {"type": "Feature", "properties": {"name": "Test <b>Water</b>"}, "geometry":
             {"type": "LineString", "coordinates": [[-20.0, 52.0], [-20.0, 52.1]]}}
            """;
    private static final String VISITS = """
            visit,date,from_km,to_km,species,observers
            v1,2026-03-01,0,11,dipper,Zebedee Quill
            v2,2026-03-20,0,11,dipper,Zebedee Quill
            v3,2026-04-20,0,11,dipper,Zebedee Quill
            """;
    private static final String SIGHTINGS = """
            sighting,visit,km,species,activity,note
            odd-label,v1,3.137,dipper,song,a very private remark
            other,v2,3.311,dipper,carrying food,
            third,v3,3.271,dipper,carrying food,
            """;
    private static final String NESTS = """
            nest,km,species,site,found
            hidden-nest,7.283,dipper,bridge,2026-04-01
            """;
    private static final String CHECKS = """
            nest,date,stage,eggs
            hidden-nest,2026-04-01,eggs,4
            """;

    @TempDir
    private Path folder;

    private Path page = Path.of("report.html");

    @BeforeEach
    void reportTheRiver() throws IOException {
        page = folder.resolve("report.html");
        Path book = folder.resolve("book");
        Files.writeString(folder.resolve("river.geojson"), RIVER);
        Path tables = Files.createDirectory(folder.resolve("tables"));
        Files.writeString(tables.resolve("visits.csv"), VISITS);
        Files.writeString(tables.resolve("sightings.csv"), SIGHTINGS);
        Files.writeString(tables.resolve("nests.csv"), NESTS);
        Files.writeString(tables.resolve("nest_checks.csv"), CHECKS);
        run("new", book.toString(), "--river", folder.resolve("river.geojson").toString(), "--mouth-at", "first");
        run("import", book.toString(), tables.toString());
        run("report", book.toString(), "--season", "2026", "--out", page.toString());
        run(
                "report",
                book.toString(),
                "--season",
                "2026",
                "--out",
                folder.resolve("again.html").toString());
    }

    private static void run(String... command) {
        CommandRun run = CommandRun.of((Object[]) command);
        assertThat(run.exitCode()).describedAs(run.out() + run.err()).isZero();
    }

    @Test
    void saysTheFindingFirst() throws IOException {
        String html = Files.readString(page);

        assertThat(html).contains("<p class=\"finding\">2 dipper territories on 11.0 km in 2026");
        assertThat(html.indexOf("class=\"finding\"")).isLessThan(html.indexOf("<h2>"));
        assertThat(html).contains("Cannot tell yet");
    }

    @Test
    void tellsNoNestNoRecordAndNoPerson() throws IOException {
        String html = Files.readString(page);

        assertThat(html)
                .doesNotContain("hidden-nest")
                .doesNotContain("odd-label")
                .doesNotContain("private remark")
                .doesNotContain("Quill")
                .doesNotContain("7.28")
                .doesNotContain("3.13");
    }

    /**
     * The nest at km 7.283 and a nest at km 7.01 must leave the same page, or the page would tell the nest. Counted by rule: the limits
     * of the model’s count hang on every distance, and may differ by one.
     */
    @Test
    void tellsTheSameWhereverInTheKilometreTheNestIs() throws IOException {
        Path other = folder.resolve("other");
        Files.createDirectory(other);
        Files.writeString(other.resolve("nests.csv"), NESTS.replace("7.283", "7.01"));
        for (String table : new String[] {"visits.csv", "sightings.csv", "nest_checks.csv"}) {
            Files.copy(folder.resolve("tables").resolve(table), other.resolve(table));
        }
        String book = folder.resolve("other-book").toString();
        run("new", book, "--river", folder.resolve("river.geojson").toString(), "--mouth-at", "first");
        run("import", book, other.toString());
        String here = folder.resolve("here.html").toString();
        String there = folder.resolve("there.html").toString();
        run("report", folder.resolve("book").toString(), "--season", "2026", "--by-rule", "--out", here);
        run("report", book, "--season", "2026", "--by-rule", "--out", there);

        assertThat(Path.of(there)).hasSameTextualContentAs(Path.of(here));
    }

    /** A walk of 80 m to a nest, in a season without others, must not tell the nest by its ends; nor by what only it covered. */
    @Test
    void tellsTheSameWhereverInTheKilometreAShortWalkWas() throws IOException {
        String here = ofAShortWalk("here", 7.25);
        String there = ofAShortWalk("there", 7.02);

        assertThat(there).isEqualTo(here);
        assertThat(here).contains("1 territory on 6.0 km walked", "km 7.00–8.00, told by whole kilometres");
    }

    /** Many walks of many lengths: the report names no limit of one that is shorter than the smallest public cell. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void namesNoEndOfAShortWalk(int seed) throws IOException {
        Random random = new Random(seed);
        StringBuilder visits = new StringBuilder("visit,date,from_km,to_km,species\n");
        List<String> ends = new ArrayList<>();
        for (int day = 1; day <= 9; day++) {
            // in one kilometre each, at ends that no round number hides
            double from = day + 0.11 + random.nextInt(30) / 100.0;
            double to = from + 0.06 + random.nextInt(20) / 100.0;
            ends.add(String.format(Locale.ROOT, "%.2f", from));
            ends.add(String.format(Locale.ROOT, "%.2f", to));
            visits.append(String.format(Locale.ROOT, "s%d,2019-03-%02d,%.2f,%.2f,dipper%n", day, day, from, to));
            visits.append(String.format(Locale.ROOT, "t%d,2019-04-%02d,%.2f,%.2f,dipper%n", day, day, from, to));
        }
        Path tables = Files.createDirectory(folder.resolve("short"));
        Files.writeString(tables.resolve("visits.csv"), visits);
        run("import", folder.resolve("book").toString(), tables.toString());
        String told = folder.resolve("short.html").toString();

        run("report", folder.resolve("book").toString(), "--season", "2019", "--by-rule", "--out", told);

        assertThat(Files.readString(Path.of(told))).contains("Not walked: km 0.00–1.00", "no territory on 9.0 km");
        for (String end : ends) {
            assertThat(Files.readString(Path.of(told))).doesNotContain("km " + end, "–" + end);
        }
    }

    /** Where the nearest whole kilometre lies below a bird, the bird would be known to be in the half that was walked. */
    @Test
    void drawsTheKilometreOfABirdAsWalked() throws IOException {
        Path tables = Files.createDirectory(folder.resolve("ends"));
        StringBuilder visits = new StringBuilder("visit,date,from_km,to_km,species\n");
        StringBuilder sightings = new StringBuilder("visit,km,species,activity\n");
        for (String day : new String[] {"2019-03-10", "2019-03-24", "2019-04-10"}) {
            visits.append(day + "," + day + ",0,5.4,dipper\n");
            sightings.append(day + ",5.35,dipper,carrying food\n");
        }
        Files.writeString(tables.resolve("visits.csv"), visits);
        Files.writeString(tables.resolve("sightings.csv"), sightings);
        String book = folder.resolve("book").toString();
        run("import", book, tables.toString());
        Path told = folder.resolve("ends.html");

        run("report", book, "--season", "2019", "--by-rule", "--out", told.toString());

        assertThat(Files.readString(told)).contains("1 territory on 6.0 km walked", "km 5.00–6.00");
    }

    /** The map of the river tells the nest at km 7.283 by km 7 to 8; a count below km 7.4 must not tell that it is below. */
    @Test
    void isNotMadeOfAReachThatCutsAKilometreBesideANest() throws IOException {
        String book = folder.resolve("book").toString();
        Path reaches = folder.resolve("reaches.csv");
        Files.writeString(reaches, "reach,from_km,to_km\nBelow,0,7.4\nWhole,0,8\nLess,0,3.4\n");
        run("import", book, reaches.toString());
        Path told = folder.resolve("below.html");

        CommandRun cut = CommandRun.of("report", book, "--by-rule", "--reach", "Below", "--out", told);

        assertThat(cut.exitCode()).isEqualTo(1);
        assertThat(cut.out()).contains("the reach Below ends at km 7.40", "by 400 m of river");
        assertThat(cut.err()).contains("--private-annex");
        assertThat(told).doesNotExist();
        run("report", book, "--by-rule", "--reach", "Whole", "--out", told.toString());
        run("report", book, "--by-rule", "--reach", "Less", "--out", told.toString(), "--replace");
    }

    private String ofAShortWalk(String name, double fromKm) throws IOException {
        Path tables = Files.createDirectory(folder.resolve(name));
        String walk = String.format(Locale.ROOT, "%.2f,%.2f", fromKm, fromKm + 0.08);
        Files.writeString(tables.resolve("visits.csv"), """
                visit,date,from_km,to_km,species
                a,2019-03-10,WALK,dipper
                b,2019-03-24,WALK,dipper
                c,2019-04-10,WALK,dipper
                long,2019-04-20,0,5,dipper
                """.replace("WALK", walk));
        Files.writeString(
                tables.resolve("sightings.csv"), """
                visit,km,species,activity
                a,AT,dipper,nest material
                b,AT,dipper,song
                c,AT,dipper,carrying food
                """.replace("AT", String.format(Locale.ROOT, "%.2f", fromKm + 0.05)));
        String book = folder.resolve(name + "-book").toString();
        run("new", book, "--river", folder.resolve("river.geojson").toString(), "--mouth-at", "first");
        run("import", book, tables.toString());
        Path told = folder.resolve(name + ".html");
        run("report", book, "--season", "2019", "--by-rule", "--out", told.toString());
        return Files.readString(told);
    }

    @Test
    void isTheSameByteForByteWhenMadeAgain() throws IOException {
        assertThat(folder.resolve("again.html")).hasSameBinaryContentAs(page);
    }

    @Test
    void turnsNoNameIntoMarkup() throws IOException {
        String html = Files.readString(page);

        assertThat(html).contains("Test &lt;b&gt;Water&lt;/b&gt;").doesNotContain("<b>Water");
    }

    @Test
    void needsNothingFromElsewhere() throws IOException {
        String html = Files.readString(page);

        assertThat(html)
                .doesNotContain("<script src")
                .doesNotContain("src=")
                .doesNotContain("@import")
                .doesNotContain("url(http");
    }

    @Test
    void holdsDrawingsThatAreWellFormed() throws Exception {
        Matcher drawings = Pattern.compile("(?s)<svg.*?</svg>").matcher(Files.readString(page));
        int found = 0;
        while (drawings.find()) {
            DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new InputSource(new StringReader(drawings.group())));
            found++;
        }
        assertThat(found)
                .as("the strip; a single season has no figure of counts")
                .isEqualTo(1);
    }

    /** A page of A4 is 297 mm high, of which margins and a heading leave about 235; the strip is 163 mm wide. */
    @Test
    void drawsNoMoreRiversTogetherThanAPageHolds() throws IOException {
        StringBuilder lines = new StringBuilder();
        StringBuilder visits = new StringBuilder("visit,date,river,from_km,to_km,species_looked_for\n");
        for (int i = 0; i < 16; i++) {
            lines.append(i == 0 ? "" : ",")
                    .append("{\"type\":\"Feature\",\"properties\":{\"name\":\"Beck " + (char) ('A' + i)
                            + "\"},\"geometry\":"
                            + "{\"type\":\"LineString\",\"coordinates\":[[" + (-3 - i * 0.1) + ",57],[" + (-3 - i * 0.1)
                            + ",57.04]]}}");
            visits.append("v" + i + ",2026-03-15,Beck " + (char) ('A' + i) + ",0,4,dipper\n");
        }
        Path river = Files.writeString(
                folder.resolve("many.geojson"), "{\"type\":\"FeatureCollection\",\"features\":[" + lines + "]}");
        Path walks = Files.writeString(folder.resolve("many.csv"), visits);
        Path out = folder.resolve("many.html");
        String book = folder.resolve("many").toString();
        run("new", book, "--river", river.toString(), "--mouth-at", "first");
        run("import", book, walks.toString());
        run("report", book, "--by-rule", "--out", out.toString());

        String html = Files.readString(out);

        List<MatchResult> drawings = Pattern.compile("viewBox=\"0 0 944 ([0-9.]+)\"")
                .matcher(html)
                .results()
                .toList();
        assertThat(drawings)
                .hasSizeGreaterThan(1)
                .allSatisfy(drawing ->
                        assertThat(Double.parseDouble(drawing.group(1))).isLessThan(944 * 235.0 / 163));
        for (char name = 'A'; name < 'A' + 16; name++) {
            assertThat(Pattern.compile(">Beck " + name + "</text>")
                            .matcher(html)
                            .results())
                    .hasSize(1);
            assertThat(Pattern.compile("<desc[^>]*>[^<]*Beck " + name + ", 2026: ")
                            .matcher(html)
                            .results())
                    .describedAs("told in the words of one drawing")
                    .hasSize(1);
        }
    }

    @Test
    void doesNotWriteOverAFileUnasked() {
        CommandRun run = CommandRun.of("report", folder.resolve("book").toString(), "--out", page.toString());

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.err()).contains(page.toString());
    }
}
