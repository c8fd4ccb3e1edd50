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
}
