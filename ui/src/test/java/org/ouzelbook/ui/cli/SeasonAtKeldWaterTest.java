package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * One season from files to answer, through the command line, and what changes when the records do.
 *
 * <p>Thirteen invented records. What they must give follows from the mapping rules: International Bird Census Committee
 * (1969), Bird Study 16:249–255, as cited from memory (registrations, ten days apart, simultaneous records never joined), and
 * the second European Breeding Bird Atlas's codes (4: territorial on two days a week or more apart; 14: food carried). The
 * longest territory, the turn-back as a limit and the range are common practice, no source.
 */
class SeasonAtKeldWaterTest {
    @TempDir
    private Path folder;

    @Test
    void findsThreeTerritoriesAndKeepsApartWhatWasSeenAtOnce() {
        JsonObject river = map(UnaryOperator.identity(), UnaryOperator.identity());

        assertThat(river.get("surveyedKm").getAsDouble()).isCloseTo(5.0, within(0.001));
        assertThat(river.get("visits").getAsInt()).isEqualTo(6);
        assertThat(river.get("effectiveVisits").getAsInt()).isEqualTo(6);
        assertThat(byRule(river)).isEqualTo("3 (3–4), 1 edge, 1 unassigned");
        assertThat(clusters(river))
                .containsExactly(
                        "A accepted confirmed 14 [a1, a2, a3, a4]",
                        "B accepted probable 4 [b1, b2, b3]",
                        "C accepted probable 4 [c1, c2, c3]",
                        "D edge possible 2 [e1, e2]");
        assertThat(territory(river, "B").get("toKm").getAsDouble()).isCloseTo(14.55, within(1e-9));
        assertThat(territory(river, "C").get("fromKm").getAsDouble()).isCloseTo(14.60, within(1e-9));
        assertThat(territory(river, "B").get("because").toString()).contains("b2", "c1", "16 Mar", "14.55");
        assertThat(setAside(river)).containsExactly("d1");
    }

    @Test
    void findsThemWhenThreeRegistrationsAreAskedFor() {
        JsonObject river = map(UnaryOperator.identity(), UnaryOperator.identity(), "--minimum-registrations", "3");

        assertThat(byRule(river)).startsWith("3 (");
    }

    @Test
    void countsAFourthThatHangsOnTheAgeOfOneBird() {
        JsonObject river = map(UnaryOperator.identity(), sightings -> sightings.replace("independent juvenile", ""));

        assertThat(byRule(river)).startsWith("4 (3–");
        assertThat(clusters(river)).contains("D accepted possible 2 [e1, e2, d1]");
        assertThat(territory(river, "D").get("hangsOn").toString()).contains("d1");
    }

    @Test
    void saysThatTheCountRestsOnTheGapWhenTheMarksAreGone() {
        JsonObject river = map(
                UnaryOperator.identity(),
                sightings -> sightings
                        .replace(",c1,,,pair; another bird in sight upstream", ",,,,pair")
                        .replace(",b2,,,", ",,,,")
                        .replace(",14.55,yes,", ",,,")
                        .replace(",14.60,yes,", ",,,"));
        JsonObject rule = river.getAsJsonObject("byRule");

        assertThat(rule.get("count").getAsInt()).isBetween(2, 3);
        assertThat(rule.get("min").getAsInt()).isEqualTo(2);
        assertThat(rule.get("max").getAsInt()).isGreaterThanOrEqualTo(3);
        assertThat(river.getAsJsonArray("territories").toString()).contains("rests on the gap alone");
    }

    @Test
    void neverCallsATerritoryLostForVisitsThatWereMissed() {
        JsonObject river = map(
                visits -> withoutLines(visits, "V2;", "V4;"),
                sightings -> withoutLines(sightings, "a2,", "b2,", "b3,", "c1,"));

        assertThat(clusters(river)).contains("B – possible 2 [b1]");
        assertThat(territory(river, "B").get("because").toString())
                .contains("1 registration", "4 visits", "absence not shown")
                .doesNotContain("lost");
    }

    @Test
    void addsNothingWhenAFileIsImportedTwice() throws IOException {
        Path book = book(UnaryOperator.identity(), UnaryOperator.identity());
        String before = CommandRun.of("map", book, "--json").out();

        assertThat(CommandRun.of("import", book, folder.resolve("sightings.csv"))
                        .exitCode())
                .isZero();
        assertThat(CommandRun.of("map", book, "--json").out()).isEqualTo(before);
    }

    private JsonObject map(UnaryOperator<String> visits, UnaryOperator<String> sightings, String... options) {
        Path book = book(visits, sightings);
        Object[] arguments = new Object[options.length + 5];
        System.arraycopy(options, 0, arguments, 5, options.length);
        arguments[0] = "map";
        arguments[1] = book;
        arguments[2] = "--season";
        arguments[3] = 2026;
        arguments[4] = "--json";
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).isZero();
        JsonObject answer = JsonParser.parseString(run.out()).getAsJsonObject();
        JsonArray rivers = answer.getAsJsonArray("rivers");
        assertThat(rivers).hasSize(1);
        return rivers.get(0).getAsJsonObject();
    }

    private Path book(UnaryOperator<String> visits, UnaryOperator<String> sightings) {
        Path book = folder.resolve("keld.mv.db");
        Path river = file("keld-water.geojson", UnaryOperator.identity());
        run("new", book, "--river", river);
        run("import", book, file("visits.csv", visits));
        run("import", book, file("sightings.csv", sightings));
        return book;
    }

    private static void run(Object... arguments) {
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).as(run.out()).isZero();
    }

    private Path file(String name, UnaryOperator<String> change) {
        try (InputStream in = getClass().getResourceAsStream("keld-water/" + name)) {
            String text = new String(Optional.ofNullable(in).orElseThrow().readAllBytes(), StandardCharsets.UTF_8);
            return Files.writeString(folder.resolve(name), change.apply(text));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String withoutLines(String text, String... starts) {
        return text.lines()
                .filter(line -> List.of(starts).stream().noneMatch(line::startsWith))
                .reduce("", (all, line) -> all + line + "\n");
    }

    private static String byRule(JsonObject river) {
        JsonObject rule = river.getAsJsonObject("byRule");
        return "%s (%s–%s), %s edge, %s unassigned"
                .formatted(
                        rule.get("count"), rule.get("min"), rule.get("max"), rule.get("edge"), rule.get("unassigned"));
    }

    private static List<String> clusters(JsonObject river) {
        return elements(river, "territories")
                .map(territory -> "%s %s %s %s %s"
                        .formatted(
                                territory.get("id").getAsString(),
                                territory.get("accepted").getAsBoolean()
                                        ? "accepted"
                                        : territory.get("edge").getAsBoolean() ? "edge" : "–",
                                territory.get("evidence").getAsString(),
                                territory.get("breedingCode"),
                                strings(territory.getAsJsonArray("sightings"))))
                .toList();
    }

    private static JsonObject territory(JsonObject river, String id) {
        return elements(river, "territories")
                .filter(territory -> territory.get("id").getAsString().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static List<String> setAside(JsonObject river) {
        return elements(river, "setAside")
                .map(one -> one.get("sighting").getAsString())
                .toList();
    }

    private static Stream<JsonObject> elements(JsonObject parent, String name) {
        return StreamSupport.stream(parent.getAsJsonArray(name).spliterator(), false)
                .map(JsonElement::getAsJsonObject);
    }

    private static List<String> strings(JsonArray array) {
        return StreamSupport.stream(array.spliterator(), false)
                .map(JsonElement::getAsString)
                .toList();
    }
}
