package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Objects;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code trend}, through a book whose territories are known, against the estimators on the same counts in bare tables. */
class TrendCommandTest {
    private static final int[] LOWER = {4, 4, 3, 3, 2, 2};
    private static final int[] UPPER = {2, 2, 3, 3, 4, 4};
    private static final int[] SWINGING = {4, 0, 4, 0, 4, 0};
    private static final int FIRST = 2019;

    @TempDir
    private static Path folder;

    private static Path book = Path.of("");
    private static Path swinging = Path.of("");

    @BeforeAll
    static void makeBooks() throws IOException {
        book = book("reaches", LOWER, UPPER);
        swinging = book("swings", SWINGING, SWINGING);
    }

    /** Territories 500 m apart from km 12 and from km 15, each met on two visits, neighbours at once. */
    private static Path book(String name, int[] lower, int[] upper) throws IOException {
        Path made = folder.resolve(name);
        Path river = folder.resolve("keld-water.geojson");
        if (!Files.exists(river)) {
            try (InputStream in = Objects.requireNonNull(
                    TrendCommandTest.class.getResourceAsStream("keld-water/keld-water.geojson"))) {
                Files.copy(in, river);
            }
        }
        run("new", made, "--river", river);
        StringBuilder visits = new StringBuilder("visit,date,from_km,to_km,species,effective\n");
        StringBuilder sightings = new StringBuilder("sighting,visit,km,species,count,simultaneous_with\n");
        for (int i = 0; i < lower.length; i++) {
            for (int visit = 1; visit <= 2; visit++) {
                String label = (FIRST + i) + "-" + visit;
                visits.append(
                        String.format("%s,%d-%s,12,18,dipper,yes%n", label, FIRST + i, visit == 1 ? "03-10" : "04-05"));
                territories(sightings, label + "l", label, 12.2, lower[i], visit == 1);
                territories(sightings, label + "u", label, 15.2, upper[i], visit == 1);
            }
        }
        Path reaches = table("reaches.csv", "reach,from_km,to_km\nLower,12,15\nUpper,15,18\n");
        run(
                "import",
                made,
                table("visits.csv", visits.toString()),
                table("sightings.csv", sightings.toString()),
                reaches);
        return made;
    }

    private static void territories(
            StringBuilder sightings, String name, String visit, double km, int count, boolean atOnce) {
        for (int i = 0; i < count; i++) {
            sightings.append(String.format(
                    "%s%d,%s,%.1f,dipper,1,%s%n", name, i, visit, km + 0.6 * i, atOnce && i > 0 ? name + (i - 1) : ""));
        }
    }

    private static Path table(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private static CommandRun run(Object... arguments) {
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
        return run;
    }

    private static JsonObject json(Object... arguments) {
        Object[] all = Arrays.copyOf(arguments, arguments.length + 1);
        all[arguments.length] = "--json";
        return JsonParser.parseString(run(all).out()).getAsJsonObject();
    }

    private static double number(JsonObject object, String name) {
        return object.get(name).getAsDouble();
    }

    private static JsonObject line(int[] counts, String... options) throws IOException {
        StringBuilder rows = new StringBuilder("site,year,count,km\n");
        for (int i = 0; i < counts.length; i++) {
            rows.append(String.format("Keld,%d,%d,3%n", FIRST + i, counts[i]));
        }
        Object[] all = new Object[3 + options.length];
        all[0] = "estimate";
        all[1] = "trend";
        all[2] = table("counts.csv", rows.toString());
        System.arraycopy(options, 0, all, 3, options.length);
        return json(all);
    }

    @Test
    void holdsTwoSeasonsAgainstEachOtherExactlyAndAlongTheLine() throws IOException {
        JsonObject answer = json("trend", book, "--by-rule", "--reach", "Lower", "--compare", "2019,2024");
        JsonObject exact = json("estimate", "rate", table("rates.csv", "count,exposure\n2,3\n4,3\n"));
        JsonObject line = line(LOWER);

        assertThat(number(answer.getAsJsonObject("counts"), "p")).isCloseTo(number(exact, "p"), within(1e-9));
        assertThat(number(answer.getAsJsonObject("alongTheLine"), "percent"))
                .isCloseTo(number(line.getAsJsonObject("wholePeriod"), "percent"), within(1e-6));
        assertThat(number(answer.getAsJsonObject("alongTheLine"), "lower"))
                .isCloseTo(number(line.getAsJsonObject("wholePeriod"), "lower"), within(1e-6));
        assertThat(answer.getAsJsonArray("waters")).isEmpty();
    }

    @Test
    void holdsTheTrendsOfTwoReachesAgainstEachOther() {
        JsonObject answer = json("trend", book, "--by-rule", "--compare", "Lower,Upper");
        double lower = yearlyFactor("Lower");
        double upper = yearlyFactor("Upper");
        CommandRun told = run("trend", book, "--by-rule", "--compare", "Lower,Upper");

        assertThat(number(answer.getAsJsonObject("difference"), "percentPerYear"))
                .isCloseTo(100 * (upper / lower - 1), within(1e-6));
        assertThat(number(answer.getAsJsonObject("difference"), "p")).isBetween(0.0, 1.0);
        assertThat(told.out())
                .contains(
                        "Two trends", "Lower", "Upper", "Second against first, a year", "no evidence that they differ")
                .doesNotContain("NaN");
    }

    private static double yearlyFactor(String reach) {
        JsonObject alone = json("trend", book, "--by-rule", "--reach", reach);
        return 1 + number(alone.getAsJsonObject("perYear"), "percent") / 100;
    }

    @Test
    void callsUpTheNegativeBinomialWhereCountsVaryMoreThanPoisson() throws IOException {
        JsonObject calm = json("trend", book, "--by-rule");
        JsonObject wild = json("trend", swinging, "--by-rule", "--reach", "Lower");
        JsonObject bare = line(SWINGING, "--negative-binomial");

        assertThat(calm.get("byNegativeBinomial").isJsonNull()).isTrue();
        assertThat(number(wild.getAsJsonObject("byNegativeBinomial").getAsJsonObject("perYear"), "percent"))
                .isCloseTo(number(bare.getAsJsonObject("perYear"), "percent"), within(1e-5));
        assertThat(run("trend", swinging, "--by-rule", "--reach", "Lower").out())
                .contains("Called up since counts vary more than Poisson");
    }

    @Test
    void saysWhatCannotBeCompared() {
        CommandRun one = CommandRun.of("trend", book, "--compare", "2019");
        CommandRun same = CommandRun.of("trend", book, "--compare", "2019,2019");
        CommandRun none = CommandRun.of("trend", book, "--compare", "2019,1990");
        CommandRun unknown = CommandRun.of("trend", book, "--compare", "Lower,Nowhere");
        CommandRun season = CommandRun.of("trend", book, "--season", "2020", "--compare", "Lower,Upper");

        for (CommandRun run : new CommandRun[] {one, same, none, unknown, season}) {
            assertThat(run.exitCode()).isEqualTo(ExitCode.WRONG_USAGE);
        }
        assertThat(one.err()).contains("Give two seasons or two waters");
        assertThat(same.err()).contains("Both are 2019");
        assertThat(none.err()).contains("1990");
        assertThat(unknown.err()).contains("Nowhere");
        assertThat(season.err()).contains("several seasons");
    }
}
