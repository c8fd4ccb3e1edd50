package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PlanCommandTest {
    @TempDir
    private static Path folder;

    private static String book = "";

    @BeforeAll
    static void makeABook() {
        CommandRun made = CommandRun.of("demo", "--into", folder.toString());
        assertThat(made.exitCode()).as(made.err()).isZero();
        book = folder.resolve("arrel-water.mv.db").toString();
    }

    @Test
    void tellsWhatTheEffortCanShowAndWhichVisitsAreLeft() {
        CommandRun run = CommandRun.of("plan", book, "--on", "2026-03-20", "--json");

        assertThat(run.exitCode()).as(run.err()).isZero();
        JsonObject plan = JsonParser.parseString(run.out()).getAsJsonObject();
        assertThat(plan.getAsJsonArray("choices")).hasSize(4);
        double present = fall(plan, 0);
        assertThat(present).isBetween(-50.0, 0.0);
        assertThat(fall(plan, 2)).isGreaterThan(present);
        assertThat(fall(plan, 3)).isGreaterThan(present);
        for (JsonElement one : plan.getAsJsonArray("worthMaking")) {
            JsonObject worth = one.getAsJsonObject();
            assertThat(worth.get("deviationAfter").getAsDouble())
                    .isBetween(0.0, worth.get("deviation").getAsDouble());
            assertThat(worth.get("bits").getAsDouble()).isNotNegative();
        }
        assertThat(plan.getAsJsonArray("worthMaking")).isNotEmpty();
        assertThat(run.out()).doesNotContain("NaN");
    }

    @Test
    void tellsInWordsHowMuchSurerAVisitMakes() {
        CommandRun byModel = CommandRun.of("plan", book, "--on", "2027-02-20");
        CommandRun byRule = CommandRun.of("plan", book, "--on", "2027-02-20", "--by-rule", "--json");

        assertThat(byModel.out()).containsPattern("is known to ±[0-9.]+ by the\\s+model");
        JsonObject worth = JsonParser.parseString(byRule.out())
                .getAsJsonObject()
                .getAsJsonArray("worthMaking")
                .get(0)
                .getAsJsonObject();
        assertThat(worth.get("deviation").isJsonNull()).isTrue();
        assertThat(worth.get("why").getAsString()).contains("not asked");
        assertThat(worth.get("territories").getAsDouble()).isPositive();
    }

    private static double fall(JsonObject plan, int choice) {
        return plan.getAsJsonArray("choices")
                .get(choice)
                .getAsJsonObject()
                .get("smallestFall")
                .getAsDouble();
    }

    /** After the season there is no visit to plan. */
    @Test
    void plansNoVisitAfterTheSeason() {
        CommandRun run = CommandRun.of("plan", book, "--on", "2026-11-20");

        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out()).contains("No visit is left to plan").contains("keep clear of nests");
    }
}
