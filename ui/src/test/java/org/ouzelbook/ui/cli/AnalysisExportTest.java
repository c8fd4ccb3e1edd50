package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Enumeration;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The tables for an analysis, made of the book of the demo. The commands on the book and those on the plain tables share the
 * estimators, which are held against published numbers elsewhere, but neither the way to them nor each other’s reading: where they
 * agree, the tables say what the book says.
 */
@Tag("slow")
class AnalysisExportTest {
    private static final double SAME = 1e-6;

    @TempDir
    static Path folder;

    private static Path book;

    @BeforeAll
    static void makeTheTables() throws IOException {
        Path demo = Path.of("..", "demo-territories");
        book = folder.resolve("arrel.mv.db");
        run("new", book, "--river", demo.resolve("rivers.geojson"));
        run("import", book, demo.resolve("field-files"));
        Path zipped = folder.resolve("tables.zip");
        run("export", book, "--as", "analysis", "--private", "--out", zipped);
        try (ZipFile zip = new ZipFile(zipped.toFile())) {
            for (Enumeration<? extends ZipEntry> entries = zip.entries(); entries.hasMoreElements(); ) {
                ZipEntry entry = entries.nextElement();
                Path file = folder.resolve("tables").resolve(entry.getName());
                Files.createDirectories(file.getParent());
                try (InputStream in = zip.getInputStream(entry)) {
                    Files.copy(in, file);
                }
            }
        }
    }

    private static String run(Object... arguments) {
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).as(run.out()).isZero();
        return run.out();
    }

    private static JsonObject json(Object... arguments) {
        return JsonParser.parseString(run(arguments)).getAsJsonObject();
    }

    private static Path table(String name) {
        return folder.resolve("tables").resolve("dipper").resolve(name + ".csv");
    }

    private static void assertSame(JsonObject one, JsonObject other, String... names) {
        for (String name : names) {
            assertThat(one.get(name).getAsDouble())
                    .as(name)
                    .isCloseTo(other.get(name).getAsDouble(), within(SAME));
        }
    }

    @Test
    void historiesOfSitesGiveTheOccupancyOfTheBook() {
        JsonObject ofBook = json("occupancy", book, "--json");
        JsonObject ofTable = json("estimate", "occupancy", table("occupancy"), "--json");

        assertSame(ofTable, ofBook, "logLikelihood", "aic", "sites", "seasons", "visits");
    }

    @Test
    void countsGiveTheTrendOfTheBook() {
        JsonObject ofBook = json("trend", book, "--by-rule", "--json");
        JsonObject ofTable = json("estimate", "trend", table("counts"), "--json");

        assertSame(ofTable.getAsJsonObject("perYear"), ofBook.getAsJsonObject("perYear"), "percent", "lower", "upper");
    }

    @Test
    void intervalsOfNestsGiveTheExposureOfTheBook() {
        JsonObject ofBook = json("nests", book, "--json");
        JsonObject ofTable = json("estimate", "nests", table("nests"), "--json");

        assertSame(ofTable, ofBook, "exposureDays", "losses");
        assertSame(
                ofTable.getAsJsonObject("mayfield"),
                ofBook.getAsJsonObject("dailySurvival"),
                "estimate",
                "se",
                "lower",
                "upper");
    }

    @Test
    void historiesOfBirdsGiveTheSurvivalOfTheBook() {
        JsonObject ofBook = json("survival", book, "--json");
        JsonObject ofTable = json("estimate", "survival", table("survival"), "--json");

        assertSame(ofTable, ofBook, "logLikelihood", "birds");
    }

    @Test
    void everyColumnIsExplained() throws IOException {
        String dictionary = Files.readString(folder.resolve("tables").resolve("dictionary.csv"));

        assertThat(dictionary)
                .contains("dipper/occupancy,SEASON.VISIT,", "dipper/nests,egg_days,", "dipper/counts,km,");
    }

    @Test
    void isForPeopleWhoMayKnow() {
        CommandRun run = CommandRun.of("export", book, "--as", "analysis");

        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains("--private");
    }
}
