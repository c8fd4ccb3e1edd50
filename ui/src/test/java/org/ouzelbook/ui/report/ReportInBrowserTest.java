package org.ouzelbook.ui.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.ui.cli.CommandRun;

/** The report in a real browser: with the mouse, with the keys, with a finger on a phone, and for weak eyes. */
@Tag("window")
class ReportInBrowserTest {
    private static final Path PICTURES = Path.of("target", "pictures");

    @TempDir
    private static Path folder;

    private static Path page = Path.of("report.html");
    private static Chromium browser;

    @BeforeAll
    static void makeTheReportOfTheDemo() throws IOException, InterruptedException {
        page = folder.resolve("demo").resolve("report.html");
        CommandRun demo = CommandRun.of("demo", "--into", folder.resolve("demo"));
        assertThat(demo.exitCode()).as(demo.out() + demo.err()).isZero();
        browser = Chromium.start(folder.resolve("profile"));
    }

    @AfterAll
    static void endTheBrowser() {
        browser.close();
    }

    @Test
    void tellsNumbersUnderTheMouse() throws IOException {
        browser.size(1366, 768, false);
        browser.open(page);

        browser.pointAt(".counts .places rect:last-child");

        assertThat(said(".counts"))
                .startsWith("2026: ")
                .contains("as the rules are read")
                .contains("visits that count");
        browser.pointAt(".strip .places rect[data-words*='2021, territory']");
        assertThat(said(".strip"))
                .contains("2021, territory")
                .contains("records")
                .contains("whole kilometres");
        browser.keep(PICTURES.resolve("report.png"), true);
        assertThat(browser.complaints()).isEmpty();
    }

    @Test
    void tellsNumbersToTheKeys() {
        browser.size(1366, 768, false);
        browser.open(page);

        browser.press("Tab");
        assertThat(browser.ask("document.activeElement.className")).isEqualTo("told");
        String first = said(".counts");
        browser.press("ArrowRight");
        String second = said(".counts");
        browser.press("ArrowLeft");

        assertThat(first).startsWith("2017: ");
        assertThat(second).startsWith("2018: ");
        assertThat(said(".counts")).isEqualTo(first);
        assertThat(browser.ask("getComputedStyle(document.activeElement).outlineStyle"))
                .isNotEqualTo("none");
        browser.press("Tab");
        assertThat(browser.ask("document.activeElement.closest('figure').className"))
                .isEqualTo("strip");
    }

    @Test
    void fitsAPhoneAndAnswersToAFinger() throws IOException {
        browser.size(390, 844, true);
        browser.open(page);

        assertThat(browser.ask("document.documentElement.scrollWidth")).isEqualTo("390");
        browser.tap(".counts .places rect:nth-child(5)");
        assertThat(said(".counts")).startsWith("2021: ");
        browser.ask("window.scrollTo(0, 0)");
        browser.keep(PICTURES.resolve("report-on-a-phone.png"), true);
    }

    @Test
    void printsOnFourPagesOrFewer() throws IOException {
        browser.size(1366, 768, false);
        browser.open(page);

        try (PDDocument printed = Loader.loadPDF(browser.print())) {
            assertThat(printed.getNumberOfPages()).isBetween(2, 4);
            assertThat(new PDFTextStripper().getText(printed)).doesNotContain("Point at a place");
        }
    }

    @Test
    void printsEachFieldSheetOnOnePage() throws IOException {
        Path sheets = folder.resolve("sheets.html");
        RiverOfPaper.run("sheet", folder.resolve("demo").resolve("arrel-water.mv.db"), "-o", sheets);
        browser.open(sheets);

        int pages = Integer.parseInt(browser.ask("document.querySelectorAll('.sheet').length"));
        try (PDDocument printed = Loader.loadPDF(browser.print())) {
            assertThat(printed.getNumberOfPages()).isEqualTo(pages).isGreaterThan(1);
        }
    }

    @Test
    void canBeReadByWeakEyes() {
        browser.size(1366, 768, false);
        browser.open(page);

        JsonElement told = JsonParser.parseString(browser.ask(Weak.EYES));

        assertThat(told.getAsJsonObject().get("seen").getAsInt()).isGreaterThan(200);
        assertThat(told.getAsJsonObject().get("faint").toString()).isEqualTo("[]");
    }

    @Test
    void fetchesNothing() {
        browser.open(page);

        assertThat(browser.asked())
                .isNotEmpty()
                .allSatisfy(address -> assertThat(address).matches("(file|data|about):.*"));
    }

    @Test
    void hasItsOwnFontInside() {
        browser.open(page);

        assertThat(browser.ask(
                        "document.fonts.ready.then(() => [...document.fonts].map(f => f.weight + f.status).join())"))
                .isEqualTo("400loaded,600loaded");
    }

    private static String said(String figure) {
        return browser.ask("document.querySelector('" + figure + " .words').textContent");
    }
}
