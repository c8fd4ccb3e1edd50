package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code occupancy}: the sites of a book, beside the same histories as a bare table. */
class OccupancyCommandTest {
    private static final int FIRST_SEASON = 2017;

    @TempDir
    private static Path folder;

    private static String book = "";

    @BeforeAll
    static void makeABook() {
        CommandRun made = CommandRun.of("demo", "--into", folder.toString());
        assertThat(made.exitCode()).as(made.err()).isZero();
        book = folder.resolve("arrel-water.mv.db").toString();
    }

    private static JsonObject json(String... options) {
        List<String> all = new ArrayList<>(List.of("occupancy", book, "--json", "--draws", "0"));
        all.addAll(List.of(options));
        CommandRun run = CommandRun.of(all.toArray());
        assertThat(run.exitCode()).as(run.err()).isZero();
        return JsonParser.parseString(run.out()).getAsJsonObject();
    }

    /** The histories of an answer as the table that {@code estimate occupancy} reads. */
    private static Path table(JsonObject answer) throws IOException {
        int most = 0;
        for (JsonElement site : answer.getAsJsonArray("occupied")) {
            for (JsonElement history : site.getAsJsonObject().getAsJsonArray("history")) {
                most = Math.max(most, history.getAsString().length());
            }
        }
        int seasons = answer.get("seasons").getAsInt();
        StringBuilder table = new StringBuilder("site,river");
        for (int season = 0; season < seasons; season++) {
            for (int visit = 1; visit <= most; visit++) {
                table.append(',').append(FIRST_SEASON + season).append('.').append(visit);
            }
        }
        int number = 0;
        for (JsonElement one : answer.getAsJsonArray("occupied")) {
            JsonObject site = one.getAsJsonObject();
            table.append("\n")
                    .append(number++)
                    .append(',')
                    .append(site.get("river").getAsString());
            for (JsonElement each : site.getAsJsonArray("history")) {
                String history = each.getAsString();
                for (int visit = 0; visit < most; visit++) {
                    boolean made = visit < history.length() && history.charAt(visit) != '-';
                    table.append(',').append(made ? history.substring(visit, visit + 1) : "");
                }
            }
        }
        return Files.writeString(folder.resolve("histories.csv"), table.append("\n"));
    }

    private static void assertSame(JsonObject ofBook, JsonObject ofTable) {
        assertThat(ofBook.get("logLikelihood").getAsDouble())
                .isCloseTo(ofTable.get("logLikelihood").getAsDouble(), within(1e-9));
        assertThat(ofBook.get("visits")).isEqualTo(ofTable.get("visits"));
        for (String rows : List.of("parameters", "bySeason", "growth", "turnover")) {
            assertThat(numbers(ofBook.getAsJsonArray(rows)))
                    .as(rows)
                    .usingElementComparator((a, b) -> Math.abs(a - b) < 1e-8 ? 0 : Double.compare(a, b))
                    .isEqualTo(numbers(ofTable.getAsJsonArray(rows)));
        }
    }

    private static List<Double> numbers(JsonElement any) {
        List<Double> numbers = new ArrayList<>();
        if (any.isJsonArray()) {
            any.getAsJsonArray().forEach(one -> numbers.addAll(numbers(one)));
        } else if (any.isJsonObject()) {
            any.getAsJsonObject().entrySet().forEach(one -> numbers.addAll(numbers(one.getValue())));
        } else if (any.isJsonPrimitive() && any.getAsJsonPrimitive().isNumber()) {
            numbers.add(any.getAsDouble());
        }
        return numbers;
    }

    @Test
    void saysTheSameAsTheEstimatorOnTheBareHistories() throws IOException {
        JsonObject ofBook = json("--occupancy-by", "river", "--extinction-by", "season");
        CommandRun run = CommandRun.of(
                "estimate",
                "occupancy",
                table(ofBook),
                "--occupancy-by",
                "river",
                "--extinction-by",
                "season",
                "--draws",
                "0",
                "--json");

        assertThat(run.exitCode()).as(run.err()).isZero();
        assertSame(ofBook, JsonParser.parseString(run.out()).getAsJsonObject());
    }

    @Test
    void answersByTheNamesThatScriptsRelyOn() {
        JsonObject answer = json("--compare");

        assertThat(answer.keySet())
                .contains(
                        "species",
                        "sites",
                        "seasons",
                        "model",
                        "logLikelihood",
                        "aic",
                        "parameters",
                        "bySeason",
                        "goodnessOfFit",
                        "warnings");
        JsonObject season = answer.getAsJsonArray("bySeason").get(0).getAsJsonObject();
        assertThat(season.keySet()).contains("season", "naive", "occupancy", "lower", "upper");
        assertThat(season.get("naive").getAsDouble())
                .isLessThan(season.get("occupancy").getAsDouble());
        assertThat(answer.getAsJsonArray("bySeason")).hasSize(10);
        assertThat(answer.getAsJsonArray("models").size()).isGreaterThan(5);
        assertThat(answer.getAsJsonObject("goodnessOfFit").get("why").getAsString())
                .contains("--draws");
    }

    @Test
    void aPersonReadsNaiveBesideTheEstimateAndEachSite() {
        CommandRun run = CommandRun.of("occupancy", book, "--season", "2026", "--river", "sorn beck", "--list");

        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out())
                .contains("Occupied sites, dipper")
                .contains("stretches of 500 m")
                .contains("naive")
                .contains("Sorn Beck  km 0.0–0.5")
                .contains("limits are somewhat too narrow")
                .doesNotContain("Arrel Water")
                .doesNotContain("NaN");
    }

    @Test
    void longerStretchesAreFewer() {
        assertThat(json("--stretch", "1000", "--found", "probable").get("sites").getAsInt())
                .isLessThan(json("--found", "probable").get("sites").getAsInt());
    }

    @Test
    void saysWhatIsWrongWithAQuestion() {
        CommandRun term = CommandRun.of("occupancy", book, "--detection-by", "weather");
        CommandRun oneSeason = CommandRun.of("occupancy", book, "--season", "2026", "--extinction-by", "river");
        CommandRun short10 = CommandRun.of("occupancy", book, "--stretch", "2");
        CommandRun never = CommandRun.of("occupancy", book, "--season", "1990");
        CommandRun kind = CommandRun.of("occupancy", book, "--sites", "squares");

        for (CommandRun run : List.of(term, oneSeason, short10, never, kind)) {
            assertThat(run.exitCode()).as(run.err()).isEqualTo(ExitCode.WRONG_USAGE);
            assertThat(run.err()).isNotBlank().doesNotContain("Exception");
        }
        assertThat(term.err()).contains("weather").contains("season, day, visit, km, river");
    }

    /** Nothing found on any visit: that no stretch is occupied and that all were missed look the same. */
    @Test
    void refusesWhereNothingWasFoundAndKeepsItsNames() throws IOException {
        Path river = folder.resolve("keld-water.geojson");
        try (InputStream in = SeasonAtKeldWaterTest.class.getResourceAsStream("keld-water/keld-water.geojson")) {
            Files.copy(in, river);
        }
        Path keld = folder.resolve("keld");
        Path visits = Files.writeString(folder.resolve("visits.csv"), """
                visit,date,from_km,to_km,species,effective
                V1,2026-03-01,0,3,dipper,yes
                V2,2026-03-20,0,3,dipper,yes
                """);
        CommandRun.of("new", keld, "--river", river);
        assertThat(CommandRun.of("import", keld, visits).exitCode()).isZero();

        CommandRun run = CommandRun.of("occupancy", keld, "--json");
        JsonObject answer = JsonParser.parseString(run.out()).getAsJsonObject();
        CommandRun told = CommandRun.of("occupancy", keld);

        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(answer.get("logLikelihood").isJsonNull()).isTrue();
        assertThat(answer.get("why").getAsString()).contains("Nothing was detected");
        assertThat(answer.getAsJsonArray("bySeason")
                        .get(0)
                        .getAsJsonObject()
                        .get("naive")
                        .getAsDouble())
                .isZero();
        assertThat(told.exitCode()).isZero();
        assertThat(told.out()).contains("Not estimable: Nothing was detected").doesNotContain("NaN");
    }
}
