package org.ouzelbook.ui.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.ui.cli.CommandRun;

/** Sheets to write on along the water, as a person finds them in the printer. */
class FieldSheetTest {
    @TempDir
    private Path folder;

    private Path book = Path.of("book");

    @BeforeEach
    void makeTheBook() throws IOException {
        book = RiverOfPaper.book(folder);
    }

    @Test
    void makesOnePageForEveryFourKilometresOrLess() throws IOException {
        Path sheets = folder.resolve("sheets.pdf");

        RiverOfPaper.run("sheet", book, "-o", sheets);

        assertThat(RiverOfPaper.pages(sheets)).isEqualTo(2);
        assertThat(RiverOfPaper.page(sheets, 1)).contains("Paper Water, km 0.00–3.50", "1 of 2");
        assertThat(RiverOfPaper.page(sheets, 2)).contains("Paper Water, km 3.50–7.00", "2 of 2");
    }

    @Test
    void setsTheWaterUprightWithItsLandmarksUpstreamAtTheTop() throws IOException {
        Path sheets = folder.resolve("sheets.html");

        RiverOfPaper.run("sheet", book, "-o", sheets);

        String page = Files.readString(sheets);
        assertThat(page).contains("two at once", "turned back at");
        assertThat(page).containsSubsequence("km 0.00–3.50", "Otter Stone", "Low Bridge", "km 3.50–7.00", "High Weir");
        assertThat(heightOf(page, "Otter Stone")).isLessThan(heightOf(page, "Low Bridge"));
    }

    /** How far down on its drawing a name stands. */
    private static double heightOf(String page, String name) {
        Matcher label =
                Pattern.compile("y=\"([0-9.]+)\"[^>]*>" + name + "</text>").matcher(page);
        assertThat(label.find()).isTrue();
        return Double.parseDouble(label.group(1));
    }

    @Test
    void hasBoxesForTheVisitTheCodesOfTheBirdsAndTheCautions() throws IOException {
        Path sheets = folder.resolve("sheets.pdf");

        RiverOfPaper.run("sheet", book, "-o", sheets);

        assertThat(RiverOfPaper.page(sheets, 1))
                .contains("date", "who (initials)", "start", "end", "weather", "low / normal / high / spate")
                .contains("DI", "GL", "KF", "CS")
                .contains("looked for, and not seen")
                .contains("spate", "alone", "nests", "licence", "Check, clean and dry");
    }

    @Test
    void tellsNothingOfBirdsNestsRingsOrPeople() throws IOException {
        Path page = folder.resolve("sheets.html");
        Path sheets = folder.resolve("sheets.pdf");

        RiverOfPaper.run("sheet", book, "-o", page);
        RiverOfPaper.run("sheet", book, "-o", sheets);

        for (String told : new String[] {Files.readString(page), RiverOfPaper.page(sheets, 1)}) {
            assertThat(told).doesNotContain("hidden-nest", "5.28", "AB12345", "bird-one", "Quill", "odd-label", "3.13");
        }
    }

    @Test
    void isTheSameByteForByteWhenPrintedAgain() {
        RiverOfPaper.run("sheet", book, "-o", folder.resolve("one.pdf"));
        RiverOfPaper.run("sheet", book, "-o", folder.resolve("two.pdf"));

        assertThat(folder.resolve("one.pdf")).hasSameBinaryContentAs(folder.resolve("two.pdf"));
    }

    @Test
    void saysWhichWaterThereIsWhereThereIsNoSuchOne() {
        CommandRun run = CommandRun.of("sheet", book, "--river", "Nowhere Burn", "-o", folder.resolve("no.pdf"));

        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains("Paper Water");
        assertThat(folder.resolve("no.pdf")).doesNotExist();
    }

    /** A book of one straight river that runs from 52° N to the north, 1 km being about 0.009°. */
    private Path straight(String name, double degrees, String landmarks) throws IOException {
        Path river = Files.writeString(folder.resolve("straight.geojson"), """
                {"type": "Feature", "properties": {"name": "%s"}, "geometry":
                 {"type": "LineString", "coordinates": [[-20.0, 52.0], [-20.0, %s]]}}
                """.formatted(name, 52.0 + degrees));
        Path made = folder.resolve("straight.mv.db");
        RiverOfPaper.run("new", made, "--river", river, "--mouth-at", "first");
        if (!landmarks.isEmpty()) {
            RiverOfPaper.run(
                    "import", made, Files.writeString(folder.resolve("landmarks.csv"), "name,km,kind\n" + landmarks));
        }
        return made;
    }

    private String page(Path made) throws IOException {
        Path page = folder.resolve("straight.html");
        RiverOfPaper.run("sheet", made, "-o", page);
        return Files.readString(page);
    }

    @Test
    void leavesOutNoConfluenceBecauseOtherLandmarksStandThere() throws IOException {
        String page = page(straight("Straight Water", 0.03, "Flat Rock,0.5,rock\nBeck Foot,1.5,confluence\n"));

        assertThat(page).contains(">Flat Rock</text>", ">Beck Foot</text>");
    }

    @Test
    void hasRoomToWriteOnAShortReach() throws IOException {
        String page = page(straight("Short Water", 0.0027, ""));

        assertThat(page).contains(">0.00</text>", ">0.02</text>", ">0.28</text>");
    }

    @Test
    void meetsAtWholeHundredMetres() throws IOException {
        String page = page(straight("Straight Water", 0.0655, ""));

        assertThat(page).contains("km 0.00–3.60", "km 3.60–7.29");
    }

    @Test
    void keepsAWaterWithALongNameOnOnePageAndNamesOnSeveralLines() throws IOException {
        Path made = straight(
                "Water of the " + "very long name ".repeat(9), 0.03, "Upper stone bridge at the old mill,1.5,bridge\n");
        Path open = folder.resolve("open.pdf");
        Path closed = folder.resolve("closed.pdf");

        RiverOfPaper.run("sheet", made, "-o", open);
        RiverOfPaper.run("sheet", made, "--private", "-o", closed);

        assertThat(RiverOfPaper.pages(open)).isEqualTo(1);
        assertThat(RiverOfPaper.pages(closed)).isEqualTo(1);
        assertThat(RiverOfPaper.page(open, 1)).contains("…, km 0.00–3.34", "licensed people decide");
        assertThat(page(made)).contains(">Upper stone bridge at</text>", ">the old mill</text>");
    }

    @Test
    void aPageForThePhoneIsNoPaperWhateverItIsCalled() throws IOException {
        Path page = folder.resolve("phone.pdf");

        RiverOfPaper.run("pocket", book, "-o", page);

        assertThat(Files.readString(page)).startsWith("<!DOCTYPE html>");
    }
}
