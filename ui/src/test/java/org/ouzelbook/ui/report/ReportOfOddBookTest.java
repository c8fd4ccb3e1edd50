package org.ouzelbook.ui.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.ui.cli.CommandRun;
import org.xml.sax.InputSource;

/** The report of books that hold little, much, or strange names. */
class ReportOfOddBookTest {
    private static final String NAME = "Alder Water";

    @TempDir
    private Path folder;

    private Path book(String river, List<String> visits, List<String> sightings) throws IOException {
        Path book = folder.resolve("odd.mv.db");
        Path line = folder.resolve("river.geojson");
        Path tables = Files.createDirectories(folder.resolve("tables"));
        Files.writeString(line, """
                {"type": "Feature", "properties": {"name": "%s"}, "geometry":
                 {"type": "LineString", "coordinates": [[-20.0, 52.0], [-20.0, 52.1]]}}
                """.formatted(river));
        Files.writeString(tables.resolve("visits.csv"), table("visit,date,from_km,to_km,species", visits));
        RiverOfPaper.run("new", book, "--river", line, "--mouth-at", "first");
        if (!sightings.isEmpty()) {
            Files.writeString(tables.resolve("sightings.csv"), table("sighting,visit,km,species,activity", sightings));
        }
        if (!visits.isEmpty()) {
            RiverOfPaper.run("import", book, tables);
        }
        return book;
    }

    private static String table(String head, List<String> rows) {
        return Stream.concat(Stream.of(head), rows.stream()).collect(Collectors.joining("\n")) + "\n";
    }

    /** Three visits in each of some seasons. */
    private static List<String> visits(int from, int to) {
        return IntStream.rangeClosed(from, to)
                .boxed()
                .flatMap(year -> Stream.of("03-01", "03-20", "04-20")
                        .map(day -> "v%1$d-%2$s,%1$d-%2$s,0,7,dipper".formatted(year, day)))
                .toList();
    }

    /** One territory in each of some seasons. */
    private static List<String> sightings(int from, int to) {
        return IntStream.rangeClosed(from, to)
                .boxed()
                .flatMap(year -> Stream.of("03-01", "03-20", "04-20")
                        .map(day -> "s%1$d-%2$s,v%1$d-%2$s,3.1,dipper,song".formatted(year, day)))
                .toList();
    }

    private String page(Path book) throws IOException {
        Path file = folder.resolve("report.html");
        RiverOfPaper.run("report", book, "--by-rule", "--out", file);
        String page = Files.readString(file).replace('\u00a0', ' ');
        return page.substring(page.indexOf("<body>"), page.indexOf("<script>"));
    }

    private Path paper(Path book) {
        Path file = folder.resolve("report.pdf");
        RiverOfPaper.run("report", book, "--by-rule", "--pdf", file);
        return file;
    }

    @Test
    void aBookWithoutARecordHasNoReportAndSaysSo() throws IOException {
        Path book = book(NAME, List.of(), List.of());
        Path file = folder.resolve("report.html");

        CommandRun run = CommandRun.of("report", book, "--out", file);

        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains("The book has no visit and no sighting for the dipper yet.");
        assertThat(file).doesNotExist();
    }

    @Test
    void aSingleVisitShowsNoWayAndAsksForNothingAgain() throws IOException {
        String page = page(book(NAME, List.of("v1,2025-03-01,0,7,dipper"), List.of("s1,v1,3.1,dipper,song")));

        assertThat(page)
                .contains("No count of dipper territories in 2025", "Cannot tell yet: no season was counted.")
                .contains("Take kick samples at some places of the river")
                .contains("1 visit and 1 sighting, 2025. The places", "River strip: dipper, 2025<")
                .doesNotContain("Which way?", "kick samples again", "2025 to 2025");
    }

    @Test
    void twoLikeSeasonsAreToldWithoutEmptyRangesAndSigns() throws IOException {
        Path book = book(NAME, visits(2024, 2025), sightings(2024, 2025));
        String page = page(book);

        assertThat(page)
                .contains("Since 2024 every count was 1.", "best guess: no change from year to year (")
                .contains("Over the whole period: no change (")
                .doesNotContain("by model", ">edge<")
                .contains("2024: 1 territory. 2025: 1 territory.", "2024: one territory on 7.0 km")
                .doesNotContain("+0", "−0 ", "1 to 1", "between 1 and 1");
        assertThat(RiverOfPaper.run("trend", book, "--by-rule").out())
                .contains("Each year:         no change (", "Whole period:      no change (")
                .doesNotContain("+0.0", "−0.0");
    }

    @Test
    void twoSeasonsHaveTwoDrawingsThatAreWellFormed() throws Exception {
        Matcher drawings = Pattern.compile("(?s)<svg.*?</svg>")
                .matcher(page(book(NAME, visits(2024, 2025), sightings(2024, 2025))));
        int found = 0;
        while (drawings.find()) {
            DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new InputSource(new StringReader(drawings.group())));
            found++;
        }
        assertThat(found).isEqualTo(2);
    }

    @Test
    void theYearsOfManySeasonsDoNotRunIntoEachOther() throws IOException {
        String page = page(book(NAME, visits(1996, 2025), List.of()));
        String figure = page.substring(page.indexOf("Which way?"), page.indexOf("The river, season by season"));
        Matcher year = Pattern.compile("<text x=\"([0-9.]+)\"[^>]*>((?:19|20)[0-9]{2})</text>")
                .matcher(figure);

        double before = Double.NEGATIVE_INFINITY;
        int years = 0;
        String last = "";
        while (year.find()) {
            double x = Double.parseDouble(year.group(1));
            assertThat(x - before).isGreaterThan(30);
            before = x;
            last = year.group(2);
            years++;
        }
        assertThat(years).isBetween(8, 20);
        assertThat(last).isEqualTo("2025");
    }

    @Test
    void lettersThatTheFontLacksAreShownAsSuchAndExplained() throws IOException {
        Path paper = paper(book("Ärl נהר \uD83D\uDC26", visits(2025, 2025), List.of()));

        assertThat(RiverOfPaper.page(paper, 1))
                .contains("Dippers on Ärl □□□ □, 2025")
                .contains("□ stands for a letter that this font lacks; the .html page shows it")
                .doesNotContain("#");
    }

    /** Unicode Bidirectional Algorithm, UAX #9, 2.4: without isolates the count after a name from the right would stand before it. */
    @Test
    void namesFromTheRightLeaveTheWordsBesideThemInPlace() throws IOException {
        String page = page(book("נהר הצפון", visits(2025, 2025), List.of()));

        assertThat(page).contains("\u2068נהר הצפון\u2069, 2025</h1>");
    }

    @Test
    void aLongTitleLeavesTheNumberOfThePageInOneLine() throws IOException {
        Path paper = paper(book("Very " + "long ".repeat(36) + "Water", visits(2025, 2025), List.of()));

        assertThat(RiverOfPaper.page(paper, 1)).contains("… 1 / " + RiverOfPaper.pages(paper));
        assertThat(RiverOfPaper.page(paper, 1)).doesNotContain("font lacks");
    }
}
