package org.ouzelbook.ui.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.ui.cli.CommandRun;

/** The report of the demo river as PDF, read back with PDFBox. */
class ReportOnPaperTest {
    /** ISO 216: A4 is 210 mm × 297 mm; a point is 1/72 inch. */
    private static final float A4_WIDTH = 210 / 25.4f * 72;

    private static final float A4_HEIGHT = 297 / 25.4f * 72;

    @TempDir
    private static Path folder;

    private static Path book = Path.of("demo");

    @BeforeAll
    static void printTheDemo() {
        CommandRun demo = CommandRun.of("demo", "--into", folder.resolve("demo"));
        assertThat(demo.exitCode()).as(demo.out() + demo.err()).isZero();
        book = folder.resolve("demo").resolve("arrel-water.mv.db");
        print("report.pdf");
    }

    private static void print(String file) {
        CommandRun run = CommandRun.of("report", book, "--pdf", folder.resolve(file));
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
        assertThat(run.err()).isEmpty();
    }

    private static PDDocument report() throws IOException {
        return Loader.loadPDF(folder.resolve("report.pdf").toFile());
    }

    @Test
    void takesTwoToFourPagesOfA4() throws IOException {
        try (PDDocument report = report()) {
            assertThat(report.getNumberOfPages()).isBetween(2, 4);
            for (PDPage page : report.getPages()) {
                assertThat(page.getMediaBox().getWidth()).isCloseTo(A4_WIDTH, offset(0.5f));
                assertThat(page.getMediaBox().getHeight()).isCloseTo(A4_HEIGHT, offset(0.5f));
            }
        }
    }

    @Test
    void tellsThingsInTheOrderThatReadersAskForThem() throws IOException {
        try (PDDocument report = report()) {
            String text = new PDFTextStripper().getText(report).replaceAll("\\s+", " ");

            assertThat(text)
                    .containsSubsequence(
                            "12 dipper territories on 24.6 km in 2026",
                            "How sure, and why",
                            "The river, season by season",
                            "In numbers",
                            "What the river bed held",
                            "What might explain it",
                            "What could mislead",
                            "What would tell more next season",
                            "How it was done",
                            "About the records",
                            "If you go and look");
        }
    }

    @Test
    void carriesItsFontsAndNoDate() throws IOException {
        try (PDDocument report = report()) {
            List<PDFont> fonts = new ArrayList<>();
            for (PDPage page : report.getPages()) {
                page.getResources().getFontNames().forEach(name -> {
                    try {
                        fonts.add(page.getResources().getFont(name));
                    } catch (IOException e) {
                        throw new AssertionError(e);
                    }
                });
            }

            assertThat(fonts)
                    .isNotEmpty()
                    .allMatch(PDFont::isEmbedded)
                    .allMatch(font -> font.getName().contains("SourceSans3"));
            assertThat(report.getDocumentInformation().getCreationDate()).isNull();
            assertThat(report.getDocumentInformation().getTitle())
                    .isEqualTo("Dippers on Arrel Water and Sorn Beck, 2026");
        }
    }

    /** ISO 32000-1, 14.8: a document whose structure is marked can be read aloud in its order; 14.9.3: drawings in words. */
    @Test
    void canBeReadAloud() throws IOException {
        try (PDDocument report = report()) {
            assertThat(report.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
            assertThat(report.getDocumentCatalog().getLanguage()).isEqualTo("en");
            assertThat(drawingsInWords(report.getDocumentCatalog().getStructureTreeRoot()))
                    .hasSize(2)
                    .anyMatch(words -> words.startsWith("Counts of dipper territories by season. 2017: "));
        }
    }

    private static List<String> drawingsInWords(PDStructureNode node) {
        List<String> words = new ArrayList<>();
        for (Object kid : node.getKids()) {
            if (kid instanceof PDStructureElement element) {
                if (element.getAlternateDescription() != null) {
                    words.add(element.getAlternateDescription());
                }
                words.addAll(drawingsInWords(element));
            }
        }
        return words;
    }

    @Test
    void isTheSameByteForByteWhenPrintedAgain() {
        print("again.pdf");

        assertThat(folder.resolve("again.pdf")).hasSameBinaryContentAs(folder.resolve("report.pdf"));
    }

    @Test
    void isAskedForByTheEndingToo() throws IOException {
        Path file = folder.resolve("by-ending.PDF");

        assertThat(CommandRun.of("report", book, "--out", file).exitCode()).isZero();

        assertThat(Files.readAllBytes(file)).startsWith('%', 'P', 'D', 'F');
    }
}
