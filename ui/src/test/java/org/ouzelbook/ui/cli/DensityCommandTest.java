package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code density --compare}, held against {@code density} and {@code estimate rate} on the same counts. */
class DensityCommandTest {
    @TempDir
    private static Path folder;

    private static String book = "";

    @BeforeAll
    static void makeABook() {
        CommandRun made = CommandRun.of("demo", "--into", folder.toString());
        assertThat(made.exitCode()).as(made.err()).isZero();
        book = folder.resolve("arrel-water.mv.db").toString();
    }

    private static JsonObject json(Object... arguments) {
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.exitCode()).as(run.err()).isZero();
        return JsonParser.parseString(run.out()).getAsJsonObject();
    }

    private static double number(JsonObject object, String name) {
        return object.get(name).getAsDouble();
    }

    @Test
    void twoSeasonsHoldTheCountsOfDensityAndTheRatioOfTheRateEstimator() throws Exception {
        JsonObject answer = json("density", book, "--river", "Arrel Water", "--compare", "2018,2023", "--json");
        JsonObject from = answer.getAsJsonObject("from");
        JsonObject to = answer.getAsJsonObject("to");
        JsonArray rows =
                json("density", book, "--river", "Arrel Water", "--json").getAsJsonArray("rows");
        Path counts = Files.writeString(
                folder.resolve("counts.csv"),
                "count,exposure\n" + to.get("territories") + "," + to.get("surveyedKm") + "\n" + from.get("territories")
                        + "," + from.get("surveyedKm") + "\n");
        JsonObject bare = json("estimate", "rate", counts, "--json");

        for (JsonElement one : rows) {
            JsonObject row = one.getAsJsonObject();
            for (JsonObject side : List.of(from, to)) {
                if (row.get("season").equals(side.get("season"))
                        && row.get("reach").isJsonNull()) {
                    assertThat(side.get("territories")).isEqualTo(row.get("territories"));
                    assertThat(number(side, "perKm")).isCloseTo(number(row, "perKm"), within(1e-12));
                }
            }
        }
        assertThat(number(answer, "p")).isCloseTo(number(bare, "p"), within(1e-12));
        assertThat(number(answer.getAsJsonObject("ratio"), "lower")).isCloseTo(number(bare, "lower"), within(1e-12));
        assertThat(number(answer.getAsJsonObject("difference"), "estimate"))
                .isCloseTo(number(to, "perKm") - number(from, "perKm"), within(1e-12));
        assertThat(number(answer.getAsJsonObject("couldShow"), "risePercent")).isPositive();
    }

    @Test
    void twoWatersOfOneSeasonAreNamed() {
        CommandRun run = CommandRun.of("density", book, "--compare", "sorn beck,arrel water", "--season", "2026");

        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out())
                .contains("2026  Sorn Beck")
                .contains("2026  Arrel Water")
                .contains("Ratio, second over first")
                .contains("No evidence of a difference")
                .doesNotContain("NaN");
    }

    /** Sorn Beck was walked once in 2020: what was not counted in both seasons is in neither. */
    @Test
    void comparesOnlyWhatWasCountedInBothSeasons() {
        JsonObject answer = json("density", book, "--compare", "2019,2020", "--json");
        JsonObject nothing = json("density", book, "--river", "Sorn Beck", "--compare", "2019,2020", "--json");

        assertThat(answer.getAsJsonObject("from").getAsJsonArray("waters")).hasSize(1);
        assertThat(answer.getAsJsonArray("warnings").toString()).contains("left out: Sorn Beck");
        assertThat(nothing.getAsJsonObject("ratio").get("estimate").isJsonNull())
                .isTrue();
        assertThat(nothing.getAsJsonObject("ratio").get("why").getAsString()).isNotBlank();
        assertThat(nothing.get("couldShow").isJsonNull()).isTrue();
    }

    @Test
    void saysWhatIsWrongWithAQuestion() {
        List<CommandRun> wrong = List.of(
                CommandRun.of("density", book, "--compare", "2018"),
                CommandRun.of("density", book, "--compare", "2018,2018"),
                CommandRun.of("density", book, "--compare", "2018,1990"),
                CommandRun.of("density", book, "--compare", "2018,2019", "--season", "2018"),
                CommandRun.of("density", book, "--compare", "Sorn Beck,Arrel Water", "--river", "Sorn Beck"),
                CommandRun.of("density", book, "--compare", "Sorn Beck,Nowhere"));

        assertThat(wrong).allSatisfy(run -> {
            assertThat(run.exitCode()).isEqualTo(ExitCode.WRONG_USAGE);
            assertThat(run.err()).isNotBlank().doesNotContain("Exception");
        });
    }
}
