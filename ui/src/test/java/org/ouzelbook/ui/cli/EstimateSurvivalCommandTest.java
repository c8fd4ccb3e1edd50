package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** {@code estimate nests} and {@code estimate survival}: what goes in, what comes out, what is refused. */
class EstimateSurvivalCommandTest {
    private static final String BIRDS = """
            history,count,sex
            1110,5,f
            1100,9,f
            1011,3,m
            0111,6,m
            0101,2,f
            0110,4,m
            1000,9,m
            0010,5,f
            """;

    private static final String NESTS = """
            nest,days,survived,site
            A,7,1,rock
            A,7,1,rock
            B,6,0,bridge
            C,8,1,bridge
            C,7,0,bridge
            D,5,1,rock
            D,9,0,rock
            """;

    @TempDir
    private Path folder;

    private CommandRun run(String what, String text, String... options) throws IOException {
        Path table = Files.writeString(folder.resolve("table.csv"), text);
        List<Object> arguments = new ArrayList<>(List.of("estimate", what, table));
        arguments.addAll(List.of(options));
        return CommandRun.of(arguments.toArray());
    }

    private JsonObject json(String what, String text, String... options) throws IOException {
        List<String> all = new ArrayList<>(List.of(options));
        all.add("--json");
        CommandRun run = run(what, text, all.toArray(String[]::new));
        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).isZero();
        return JsonParser.parseString(run.out()).getAsJsonObject();
    }

    private static JsonObject parameter(JsonObject answer, String part, String term, String scale) {
        return StreamSupport.stream(answer.getAsJsonArray("parameters").spliterator(), false)
                .map(JsonElement::getAsJsonObject)
                .filter(row -> row.get("part").getAsString().equals(part)
                        && row.get("term").getAsString().equals(term)
                        && row.get("scale").getAsString().equals(scale))
                .findFirst()
                .orElseThrow();
    }

    private static double number(JsonObject object, String name) {
        return object.get(name).getAsDouble();
    }

    @Test
    void printsConstantSurvivalOnBothScales() throws IOException {
        JsonObject answer = json("survival", BIRDS);
        JsonObject logit = parameter(answer, "survival", "intercept", "logit");
        JsonObject natural = parameter(answer, "survival", "intercept", "natural");

        assertThat(number(answer, "birds")).isEqualTo(43);
        assertThat(number(answer, "occasions")).isEqualTo(4);
        assertThat(number(natural, "estimate"))
                .isCloseTo(1 / (1 + Math.exp(-number(logit, "estimate"))), within(1e-12));
        assertThat(logit.get("boundary").getAsBoolean()).isFalse();
        assertThat(number(answer, "aic")).isCloseTo(4 - 2 * number(answer, "logLikelihood"), within(1e-9));
    }

    /** A value for each interval says the same as one for each occasion, of which survival takes the first, resighting the last. */
    @Test
    void readsOccasionsAndIntervalsAlike() throws IOException {
        Path occasions = Files.writeString(
                folder.resolve("occasions.csv"), "occasion,flood,effort\n2,1,4\n1,0,9\n3,0,2\n4,7,5\n");
        Path intervals =
                Files.writeString(folder.resolve("intervals.csv"), "interval,flood,effort\n1,0,4\n2,1,2\n3,0,5\n");
        String[] by = {"--survival-by", "sex,flood", "--resighting-by", "effort", "--occasions", ""};
        by[5] = occasions.toString();
        JsonObject one = json("survival", BIRDS, by);
        by[5] = intervals.toString();
        JsonObject other = json("survival", BIRDS, by);

        assertThat(one.get("parameters")).isEqualTo(other.get("parameters"));
        assertThat(parameter(one, "survival", "sex=m", "logit").get("se").isJsonNull())
                .isFalse();
        assertThat(parameter(one, "survival", "flood", "logit").get("se").isJsonNull())
                .isFalse();
        assertThat(parameter(one, "resighting", "effort", "logit").get("se").isJsonNull())
                .isFalse();
    }

    @Test
    void flagsThePairThatIsNotToldApart() throws IOException {
        JsonObject answer = json("survival", BIRDS, "--survival-by", "occasion", "--resighting-by", "occasion");
        JsonObject last = parameter(answer, "resighting", "occasion=4", "natural");

        assertThat(last.get("estimate").isJsonNull()).isTrue();
        assertThat(last.get("boundary").getAsBoolean()).isFalse();
        assertThat(last.get("why").getAsString()).contains("combination");
        assertThat(answer.getAsJsonArray("warnings").toString()).contains("occasion=3 × occasion=4");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    history,count;1102,1           | history
                    history,count;110,1;11,2       | first one 3
                    history,count;110,-1           | whole number
                    history,count;110,1.5          | whole number
                    times,count;110,1              | lacks history
                    history,count                  | no rows
                    """)
    void saysWhatIsWrongWithHistories(String table, String words) throws IOException {
        CommandRun run = run("survival", table.replace(';', '\n') + "\n");

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.err()).contains(words).contains("table.csv");
    }

    @Test
    void saysThatTheTableOfOccasionsHasTheWrongLength() throws IOException {
        Path occasions = Files.writeString(folder.resolve("o.csv"), "occasion,flood\n1,0\n2,1\n");
        CommandRun run = run("survival", BIRDS, "--survival-by", "flood", "--occasions", occasions.toString());

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.err()).contains("2 rows");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    history,count;100,3;010,2   | ever met again
                    history,count;001,3         | before the last occasion
                    history,count;1,3           | one occasion
                    history,count;000,3         | before the last occasion
                    """)
    void refusesBirdsThatTellNothing(String table, String words) throws IOException {
        JsonObject answer = json("survival", table.replace(';', '\n') + "\n");

        assertThat(answer.get("why").getAsString()).contains(words);
    }

    @Test
    void printsExposureDaysBesideTheModel() throws IOException {
        JsonObject answer = json("nests", NESTS, "--period", "38");

        assertThat(number(answer, "exposureDays")).isEqualTo(7 + 7 + 3 + 8 + 3.5 + 5 + 4.5);
        assertThat(number(answer, "losses")).isEqualTo(3);
        assertThat(number(answer.getAsJsonObject("mayfield"), "estimate")).isCloseTo(1 - 3 / 38.0, within(1e-12));
        assertThat(number(answer.getAsJsonObject("success"), "estimate"))
                .isCloseTo(
                        Math.pow(number(parameter(answer, "survival", "intercept", "natural"), "estimate"), 38),
                        within(1e-12));
    }

    @Test
    void multipliesLevelsOverThePeriod() throws IOException {
        JsonObject answer = json("nests", NESTS, "--survival-by", "site", "--period", "rock=10,bridge=20");
        double rock = number(parameter(answer, "survival", "site=rock", "natural"), "estimate");
        double bridge = number(parameter(answer, "survival", "site=bridge", "natural"), "estimate");

        assertThat(number(answer.getAsJsonObject("success"), "estimate"))
                .isCloseTo(Math.pow(rock, 10) * Math.pow(bridge, 20), within(1e-12));
        assertThat(run("nests", NESTS, "--survival-by", "site", "--period", "wall=3")
                        .exitCode())
                .isEqualTo(2);
        assertThat(run("nests", NESTS, "--period", "long").exitCode()).isEqualTo(2);
    }

    @Test
    void leavesOutANestFoundOnTheDayItFailed() throws IOException {
        JsonObject answer = json("nests", NESTS + "E,0,0,rock\n");

        assertThat(number(answer, "n")).isEqualTo(7);
        assertThat(answer.getAsJsonArray("warnings").toString()).contains("0 days");
        assertThat(json("nests", "nest,days,survived\nE,0,0\n").get("why").getAsString())
                .contains("No nest");
    }

    @Test
    void isOneSidedWithoutALoss() throws IOException {
        JsonObject daily =
                parameter(json("nests", "days,survived\n10,1\n12,yes\n"), "survival", "intercept", "natural");

        assertThat(number(daily, "estimate")).isEqualTo(1);
        assertThat(daily.get("boundary").getAsBoolean()).isTrue();
        assertThat(daily.get("se").isJsonNull()).isTrue();
        assertThat(number(daily, "lower")).isCloseTo(Math.exp(-3.841458821 / 2 / 22), within(1e-6));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    days,survived;-3,1           | fewer than 0
                    days,survived;3,maybe        | 1 (alive
                    days,survived;,1             | may not be empty
                    days,survived,age;3,1,       | may not be empty
                    days,alive;3,1               | lacks
                    """)
    void saysWhatIsWrongWithIntervals(String table, String words) throws IOException {
        CommandRun run = table.contains("age")
                ? run("nests", table.replace(';', '\n') + "\n", "--survival-by", "age")
                : run("nests", table.replace(';', '\n') + "\n");

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.err()).contains(words);
    }
}
