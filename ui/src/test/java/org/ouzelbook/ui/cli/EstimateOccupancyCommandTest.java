package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code estimate occupancy}: what goes in, what comes out, what is refused. */
class EstimateOccupancyCommandTest {
    private static final String ONE_SEASON = """
            site,1,2,3,bank,w.1,w.2,w.3
            a,1,0,1,left,0.5,1.5,2
            b,0,,0,right,1,,0
            c,1,1,0,right,2,1,0
            d,0,0,1,left,0,1,1.5
            e,0,0,0,left,0.4,0.2,0.9
            f,1,0,0,right,1.2,0.1,0.3
            """;

    private static final String SEASONS = """
            site,2019.1,2019.2,2021.1,2021.2
            a,1,0,1,1
            b,0,0,0,1
            c,1,1,0,0
            d,0,1,1,0
            e,0,0,0,0
            f,1,1,,
            """;

    @TempDir
    private Path folder;

    private CommandRun run(String text, String... options) throws IOException {
        Path table = Files.writeString(folder.resolve("table.csv"), text);
        List<Object> arguments = new ArrayList<>(List.of("estimate", "occupancy", table));
        arguments.addAll(List.of(options));
        return CommandRun.of(arguments.toArray());
    }

    private JsonObject json(String text, String... options) throws IOException {
        List<String> all = new ArrayList<>(List.of(options));
        all.add("--json");
        CommandRun run = run(text, all.toArray(String[]::new));
        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).isZero();
        return JsonParser.parseString(run.out()).getAsJsonObject();
    }

    @Test
    void namesItsPartsTermsAndScales() throws IOException {
        JsonObject answer = json(ONE_SEASON, "--occupancy-by", "bank", "--detection-by", "w", "--draws", "0");

        assertThat(answer.getAsJsonArray("parameters"))
                .extracting(row -> row.getAsJsonObject().get("part").getAsString() + " "
                        + row.getAsJsonObject().get("term").getAsString() + " "
                        + row.getAsJsonObject().get("scale").getAsString())
                .containsExactly(
                        "occupancy intercept logit",
                        "occupancy bank=right logit",
                        "detection intercept logit",
                        "detection w logit",
                        "occupancy bank=left natural",
                        "occupancy bank=right natural");
        assertThat(answer.get("visits").getAsInt()).isEqualTo(17);
        assertThat(answer.getAsJsonArray("occupied")).hasSize(6);
    }

    @Test
    void aSeasonWithoutColumnsIsASeasonWithoutVisits() throws IOException {
        JsonObject answer = json(SEASONS, "--draws", "5", "--profile");

        assertThat(answer.getAsJsonArray("bySeason"))
                .extracting(row -> row.getAsJsonObject().get("season").getAsInt())
                .containsExactly(2019, 2020, 2021);
        assertThat(answer.getAsJsonArray("warnings").toString()).contains("2020");
        assertThat(answer.getAsJsonObject("goodnessOfFit").get("draws").getAsInt())
                .isEqualTo(5);
        assertThat(answer.getAsJsonArray("profile")).hasSize(4);
        assertThat(answer.getAsJsonArray("bySeason")
                        .get(0)
                        .getAsJsonObject()
                        .get("naive")
                        .getAsDouble())
                .isCloseTo(4 / 6.0, within(1e-12));
    }

    @Test
    void comparesWithSimplerModels() throws IOException {
        JsonObject answer = json(ONE_SEASON, "--occupancy-by", "bank", "--detection-by", "visit", "--compare");

        double weights = 0;
        for (var row : answer.getAsJsonArray("models")) {
            weights += row.getAsJsonObject().get("weight").getAsDouble();
        }
        assertThat(answer.getAsJsonArray("models")).hasSize(4);
        assertThat(weights).isCloseTo(1, within(1e-9));
    }

    @Test
    void tellsWhatIsWrongWithACell() throws IOException {
        CommandRun run = run("site;1;2\na;2;0\nb;x;1\n");

        assertThat(run.exitCode()).isEqualTo(ExitCode.PROBLEMS);
        assertThat(run.err())
                .contains("table.csv:2:1: “2”")
                .contains("table.csv:3:1: “x”")
                .doesNotContain("Exception");
    }

    @Test
    void refusesWhatATableCannotTell() throws IOException {
        CommandRun none = run("site,1,2\na,0,0\nb,0,\n");
        CommandRun oneSeason = run(ONE_SEASON, "--extinction-by", "bank");
        CommandRun missing = run("site,1,2,x\na,0,1,3\nb,1,0,\n", "--occupancy-by", "x");

        assertThat(none.exitCode()).isZero();
        assertThat(none.out()).contains("Nothing was detected");
        assertThat(oneSeason.exitCode()).isEqualTo(ExitCode.WRONG_USAGE);
        assertThat(missing.exitCode()).isEqualTo(ExitCode.PROBLEMS);
        assertThat(missing.err()).contains("table.csv:3:x");
    }

    @Test
    void aPersonReadsATable() throws IOException {
        CommandRun run = run(SEASONS, "--compare", "--detection-by", "season", "--profile");

        assertThat(run.out())
                .contains("sites visited")
                .contains("detection by season")
                .contains("profile likelihood")
                .doesNotContain("NaN");
    }
}
