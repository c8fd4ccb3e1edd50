package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.StreamSupport;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EstimateCommandTest {
    private static final Offset<Double> PRINTED = within(1e-9);

    private static final String FIVE_YEARS =
            "site,year,count\nOtter,2021,9\nOtter,2022,8\nOtter,2023,8\nOtter,2024,\nOtter,2025,7\nOtter,2026,7\n";

    @TempDir
    private Path folder;

    private Path table(String text) throws IOException {
        return table(text, StandardCharsets.UTF_8);
    }

    private Path table(String text, Charset charset) throws IOException {
        return Files.writeString(folder.resolve("table.csv"), text, charset);
    }

    private JsonObject json(String what, String text, Object... options) throws IOException {
        Object[] arguments = new Object[options.length + 4];
        arguments[0] = "estimate";
        arguments[1] = what;
        arguments[2] = table(text);
        arguments[3] = "--json";
        System.arraycopy(options, 0, arguments, 4, options.length);
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).isZero();
        return JsonParser.parseString(run.out()).getAsJsonObject();
    }

    private static JsonObject parameter(JsonObject answer, String term, String scale) {
        return StreamSupport.stream(answer.getAsJsonArray("parameters").spliterator(), false)
                .map(JsonElement::getAsJsonObject)
                .filter(row -> row.get("term").getAsString().equals(term)
                        && row.get("scale").getAsString().equals(scale))
                .findFirst()
                .orElseThrow();
    }

    private static double number(JsonObject object, String name) {
        return object.get(name).getAsDouble();
    }

    /** 15 over 400: the test suite of statsmodels, which quotes two other packages. */
    @Test
    void printsARateAtFullPrecision() throws IOException {
        JsonObject answer = json("rate", "count,exposure\n15,400\n");
        JsonObject rate = parameter(answer, "intercept", "natural");

        assertThat(number(rate, "estimate")).isEqualTo(0.0375);
        assertThat(number(rate, "lower")).isCloseTo(0.0209884653319583, within(1e-14));
        assertThat(number(rate, "upper")).isCloseTo(0.0618505471787146, within(1e-14));
        assertThat(rate.get("boundary").getAsBoolean()).isFalse();
        assertThat(answer.get("ratio").isJsonNull()).isTrue();
        assertThat(answer.get("why").getAsString()).contains("only one rate");
    }

    /** Gu et al. (2008), as cited in the test of the estimator. */
    @Test
    void comparesTwoRates() throws IOException {
        JsonObject answer = json("rate", "Exposure;COUNT\n51477,5;60\n54308,7;30\n");

        assertThat(number(answer, "ratio")).isCloseTo(2.1099975718, PRINTED);
        assertThat(number(answer, "lower")).isCloseTo(1.339735721772650, PRINTED);
        assertThat(number(answer, "upper")).isCloseTo(3.388365573616252, PRINTED);
        assertThat(number(answer, "p")).isCloseTo(0.000856105388, PRINTED);
    }

    @Test
    void saysWhyANumberIsMissing() throws IOException {
        JsonObject answer = json("rate", "count,exposure\n6,2\n0,2\n");

        assertThat(answer.get("ratio").isJsonNull()).isTrue();
        assertThat(answer.get("upper").isJsonNull()).isTrue();
        assertThat(number(answer, "lower")).isPositive();
        assertThat(answer.get("why").getAsString()).contains("second count is 0");
        JsonObject none = parameter(answer, "row=2", "natural");
        assertThat(none.get("boundary").getAsBoolean()).isTrue();
        assertThat(none.get("se").isJsonNull()).isTrue();
    }

    /** Newcombe (1998), Table I, as cited in the tests of the estimators. */
    @Test
    void printsProportionsOneARow() throws IOException {
        JsonObject answer = json("proportion", "successes\ttrials\n81\t263\n15\t148\n");

        assertThat(number(parameter(answer, "row=1", "natural"), "lower")).isCloseTo(0.255288519878274, PRINTED);
        assertThat(number(parameter(answer, "row=2", "natural"), "upper")).isCloseTo(0.160487241723308, PRINTED);
        JsonObject exact = answer.getAsJsonArray("exact").get(1).getAsJsonObject();
        assertThat(number(exact, "lower")).isCloseTo(0.0578440100834486, PRINTED);
        assertThat(number(answer, "n")).isEqualTo(411);
    }

    /** Helsel and Hirsch (2002), section 10.1, as cited in the test of the estimator; a year without a value is a gap. */
    @Test
    void printsATrendByRanks() throws IOException {
        JsonObject answer = json("rank-trend", "year,value\n1,1\n2,2\n3,3\n4,4\n5,5\n6,16\n7,7\n8,NA\n");

        assertThat(number(answer, "n")).isEqualTo(7);
        assertThat(number(answer, "s")).isEqualTo(19);
        assertThat(number(answer, "varS")).isCloseTo(44.3333333333333, PRINTED);
        assertThat(number(answer, "z")).isCloseTo(2.703381341, PRINTED);
        assertThat(number(answer, "exactP")).isCloseTo(0.002777777778, PRINTED);
        assertThat(number(answer, "slope")).isEqualTo(1);
        assertThat(number(answer, "upper")).isCloseTo(3.520868046, PRINTED);
        assertThat(number(answer, "intercept")).isZero();
        assertThat(answer.getAsJsonArray("warnings").toString()).contains("One row without a value");
    }

    /** Poisson regression by R 4.2.2: 0.952 a year (0.80–1.13), falling with probability 0.72. */
    @Test
    void printsALineThroughCounts() throws IOException {
        JsonObject answer = json("trend", FIVE_YEARS);
        JsonObject perYear = answer.getAsJsonObject("perYear");

        assertThat(number(perYear, "percent")).isCloseTo(-4.8, within(0.05));
        assertThat(number(perYear, "lower")).isCloseTo(-20, within(0.5));
        assertThat(number(perYear, "upper")).isCloseTo(13, within(0.5));
        assertThat(number(answer, "probabilityFalling")).isCloseTo(0.72, within(0.005));
        assertThat(number(answer, "degreesOfFreedom")).isEqualTo(3);
        assertThat(number(parameter(answer, "year", "log"), "estimate")).isCloseTo(-0.0492, within(0.0005));
        assertThat(number(parameter(answer, "intercept", "natural"), "estimate"))
                .isEqualTo(number(answer, "dispersion"));
        assertThat(answer.getAsJsonArray("warnings").toString()).contains("left as a gap: 2024");
    }

    @Test
    void printsTotalsOfSeasons() throws IOException {
        JsonObject answer = json(
                "trend",
                "Site,Year,Count\nA,2021,4\nA,2022,8\nB,2021,6\nB,2022,\nC,2021,0\nC,2022,0\n",
                "--shape",
                "seasons");
        JsonObject second = answer.getAsJsonArray("totals").get(1).getAsJsonObject();

        assertThat(number(second, "season")).isEqualTo(2022);
        assertThat(number(second, "total")).isCloseTo(20, within(1e-9));
        assertThat(number(second, "observed")).isEqualTo(8);
        assertThat(number(second, "se")).isPositive();
        assertThat(number(parameter(answer, "year=2022", "log"), "estimate")).isCloseTo(Math.log(2), within(1e-9));
        assertThat(answer.getAsJsonArray("emptySites").toString()).isEqualTo("[\"C\"]");
        assertThat(answer.getAsJsonArray("warnings").toString()).contains("One site never had any birds");
    }

    @Test
    void takesCountsAsPoissonIfAsked() throws IOException {
        String wild = "site,year,count\nA,1,40\nA,2,2\nA,3,55\nA,4,1\nA,5,30\n";
        double widened = number(parameter(json("trend", wild), "year", "log"), "se");
        double poisson = number(parameter(json("trend", wild, "--poisson"), "year", "log"), "se");

        assertThat(widened).isGreaterThan(3 * poisson);
    }

    @Test
    void answersThatNothingCanBeEstimated() throws IOException {
        JsonObject answer = json("trend", "site,year,count\nA,2021,0\nA,2022,0\n");

        assertThat(answer.get("why").getAsString()).startsWith("Every count is 0");
        assertThat(answer.get("logLikelihood").isJsonNull()).isTrue();
        assertThat(answer.getAsJsonArray("parameters")).isEmpty();
    }

    @Test
    void tellsAPersonTheMethodAndItsSource() throws IOException {
        CommandRun run = CommandRun.of("estimate", "trend", table(FIVE_YEARS));

        assertThat(run.exitCode()).isZero();
        assertThat(run.out())
                .contains("Log-linear Poisson model with site effects", "McCullagh")
                .contains("Change a year: −4.8% (−19.8 to +12.9)")
                .contains("Probability that numbers fell: 0.72")
                .contains("left as a gap: 2024");
    }

    @ParameterizedTest
    @ValueSource(strings = {"trend", "rank-trend", "rate", "proportion"})
    void explainsItself(String what) {
        CommandRun run = CommandRun.of("estimate", what, "--help");

        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).contains("Columns:", "TABLE", "--level", "--json");
    }

    @Test
    void namesEveryBadCell() throws IOException {
        CommandRun run = CommandRun.of(
                "estimate",
                "trend",
                table("site,year,count,km\nA,2021,3,1.5\nA,2021,4,1.5\n,2022,4.5,1\nB,20x2,-1,0\nB,2023,7,\n"));

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.out()).isEmpty();
        assertThat(run.err())
                .contains("table.csv:3:year: “2021”: A has a count for 2021 already, in row 2")
                .contains("table.csv:4:site: This cell may not be empty")
                .contains("table.csv:4:count: “4.5”: This must be a whole number")
                .contains("table.csv:5:year: “20x2”: That is not a number")
                .contains("table.csv:5:count: “-1”: This must be a whole number")
                .contains("table.csv:5:km: “0”: This must be more than 0")
                .contains("table.csv:6:km: Other counts have a length");
    }

    @Test
    void namesColumnsThatAreMissing() throws IOException {
        CommandRun run = CommandRun.of("estimate", "rate", table("count,effort\n3,4\n"));

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.err()).contains("table.csv:1: The table lacks exposure");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "count,exposure\n",
                "count,exposure\n1,2\n3,4\n5,6\n",
                "count,exposure\n1,0\n",
                "count,exposure\n-1,2\n",
                "count,exposure\n1e30,2\n",
                "count,exposure\n1,2,5\n",
                "nothing of the sort\n",
                ""
            })
    void refusesATableWithoutRates(String text) throws IOException {
        CommandRun run = CommandRun.of("estimate", "rate", table(text));

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.err()).contains("table.csv:").doesNotContain("did not foresee");
    }

    @Test
    void readsWindowsLettersAndNumbersAsRWritesThem() throws IOException {
        Path table = table(
                "Year,Value,Note\n2021,1e+05,trocken\n2022,2e+05,Überlauf\n2023,150000,\n",
                Charset.forName("windows-1252"));
        CommandRun run = CommandRun.of("estimate", "rank-trend", table, "--json");

        JsonObject answer = JsonParser.parseString(run.out()).getAsJsonObject();
        assertThat(number(answer, "slope")).isEqualTo(25000);
        assertThat(answer.get("lower").isJsonNull()).isTrue();
        assertThat(answer.getAsJsonArray("warnings").toString()).contains("not used: Note");
    }

    /** A spreadsheet's empty columns are no cells too many, and a site may be called 4,5. */
    @Test
    void overlooksWhatSaysNothing() throws IOException {
        JsonObject answer = json("trend", "site;year;count;km\n4,5;2021;3;1.5;;\n4,5;2022;4;1.5;;\n4,5;2023;2;1.5;;\n");

        assertThat(number(answer, "n")).isEqualTo(3);
    }

    @Test
    void isWrongUsageWithoutAKnownEstimatorOrOption() throws IOException {
        Path table = table(FIVE_YEARS);

        assertThat(CommandRun.of("estimate").exitCode()).isEqualTo(2);
        assertThat(CommandRun.of("estimate", "weather", table).exitCode()).isEqualTo(2);
        assertThat(CommandRun.of("estimate", "trend", table, "--wriggle").exitCode())
                .isEqualTo(2);
        assertThat(CommandRun.of("estimate", "trend", table, "--shape", "wave").exitCode())
                .isEqualTo(2);
        assertThat(CommandRun.of("estimate", "rate", table, "--poisson").exitCode())
                .isEqualTo(2);
        assertThat(CommandRun.of("estimate", "rate", table, "--level", "95").exitCode())
                .isEqualTo(2);
        assertThat(CommandRun.of("estimate", "trend").exitCode()).isEqualTo(2);
    }

    @Test
    void saysThatAFileIsMissing() {
        CommandRun run = CommandRun.of("estimate", "trend", folder.resolve("none.csv"));

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.err()).contains("There is no file");
        assertThat(CommandRun.of("estimate", "trend", folder).err()).contains("is a folder, not a table");
    }
}
