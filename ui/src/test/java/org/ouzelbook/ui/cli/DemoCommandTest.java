package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The demo, and the questions that it invites to ask, as a stranger would go through them. */
@Tag("slow")
class DemoCommandTest {
    @TempDir
    private static Path folder;

    private static CommandRun first;

    @BeforeAll
    static void runTheDemo() {
        first = CommandRun.of("demo", "--into", folder.resolve("demo"));
    }

    @Test
    void printsTenSeasonsAndAVerdict() {
        assertThat(first.err()).isEmpty();
        assertThat(first.exitCode()).isZero();
        assertThat(first.out().lines().filter(line -> line.matches("\\s*20\\d\\d\\s.*")))
                .hasSize(10);
        assertThat(first.out()).contains("Arrel Water", "Sorn Beck", "% a year");
    }

    @Test
    void writesTheReport() throws IOException {
        assertThat(Files.readString(folder.resolve("demo/report.html"))).contains("<svg", "Arrel Water", "2026");
    }

    @Test
    void drawsTheStripWithoutAnyNest() throws IOException {
        String svg = Files.readString(folder.resolve("demo/arrel-water.svg"));

        assertThat(svg).startsWith("<svg").contains("2017", "2026", "Private:").doesNotContain("nests are shown");
    }

    @Test
    void keepsTheBookOfAnEarlierDemo() {
        CommandRun again = CommandRun.of("demo", "--into", folder.resolve("demo"));

        assertThat(again.exitCode()).isZero();
        assertThat(again.out()).contains("is kept");
    }

    @Test
    void refusesAFileWhereTheFolderShouldBe() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "");
        CommandRun run = CommandRun.of("demo", "--into", file);

        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains("is a file, not a folder");
    }

    @Test
    void answersDensityBySeasonAndRiver() {
        JsonArray rows = json("density").getAsJsonArray("rows");

        assertThat(rows).hasSize(20).allSatisfy(element -> {
            JsonObject row = element.getAsJsonObject();
            assertThat(row.keySet())
                    .contains("season", "river", "reach", "surveyedKm", "territories", "perKm")
                    .contains("lower", "upper", "level", "method");
            double perKm = row.get("perKm").getAsDouble();
            assertThat(perKm * row.get("surveyedKm").getAsDouble())
                    .isCloseTo(row.get("territories").getAsDouble(), within(1e-9));
            assertThat(row.get("lower").getAsDouble()).isLessThan(perKm);
            assertThat(row.get("upper").getAsDouble()).isGreaterThan(perKm);
        });
    }

    @Test
    void answersTheTrendWithEveryFieldThatScriptsRelyOn() {
        JsonObject trend = json("trend");

        assertThat(trend.keySet())
                .contains("species", "seasons", "model", "perYear", "wholePeriod", "probabilityFalling", "mannKendall")
                .contains("theilSen", "smallestDetectable", "verdict", "warnings");
        assertThat(trend.getAsJsonArray("seasons")).hasSize(10);
        assertThat(trend.getAsJsonObject("perYear").get("lower").getAsDouble())
                .isLessThan(trend.getAsJsonObject("perYear").get("percent").getAsDouble());
        assertThat(trend.get("probabilityFalling").getAsDouble()).isBetween(0.0, 1.0);
    }

    @Test
    void explainsEveryTerritoryThatTheMapNames() {
        for (JsonElement river : json("map").getAsJsonArray("rivers")) {
            String name = river.getAsJsonObject().get("river").getAsString();
            for (JsonElement territory : river.getAsJsonObject().getAsJsonArray("territories")) {
                String id = territory.getAsJsonObject().get("id").getAsString();
                CommandRun why = CommandRun.of("map", book(), "--river", name, "--why", id);

                assertThat(why.exitCode()).isZero();
                assertThat(why.out())
                        .startsWith("Territory " + id + ", " + name)
                        .contains("  – ");
            }
        }
    }

    @Test
    void refusesATrendOfOneSeason() {
        CommandRun run = CommandRun.of("trend", book(), "--season", "2026");

        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains("A trend needs several seasons");
    }

    private static Path book() {
        return folder.resolve("demo/arrel-water.mv.db");
    }

    private static JsonObject json(String command) {
        CommandRun run = CommandRun.of(command, book(), "--json");
        assertThat(run.err()).isEmpty();
        return JsonParser.parseString(run.out()).getAsJsonObject();
    }
}
