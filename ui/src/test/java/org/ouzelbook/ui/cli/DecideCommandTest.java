package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Decisions about the season of {@link SeasonAtKeldWaterTest}: territories A (km 12.5–12.7), B, C and an edge. */
class DecideCommandTest {
    @TempDir
    private Path folder;

    private Path book;

    @BeforeEach
    void makeTheBook() throws IOException {
        book = folder.resolve("keld");
        CommandRun.of("new", book, "--river", copied("keld-water.geojson"));
        assertThat(CommandRun.of("import", book, copied("visits.csv"), copied("sightings.csv"))
                        .exitCode())
                .isZero();
    }

    private Path copied(String name) throws IOException {
        Path copy = folder.resolve(name);
        try (InputStream in = SeasonAtKeldWaterTest.class.getResourceAsStream("keld-water/" + name)) {
            Files.copy(in, copy);
        }
        return copy;
    }

    private JsonObject json(Object... arguments) {
        return JsonParser.parseString(CommandRun.of(arguments).out()).getAsJsonObject();
    }

    private static int count(JsonObject map) {
        return map.getAsJsonArray("rivers")
                .get(0)
                .getAsJsonObject()
                .getAsJsonObject("byRule")
                .get("count")
                .getAsInt();
    }

    @Test
    void keepsTheAnswerWithAndWithoutADecision() {
        CommandRun run = CommandRun.of(
                "decide", book, "one", "territory", "from", "14", "to", "15.2", "because", "one", "ringed", "pair");

        assertThat(run.exitCode()).isZero();
        assertThat(run.out())
                .contains("Decided, number 1: one territory at km 14.00–15.20")
                .contains("3 territories before, 2 now");
        JsonObject map = json("map", book, "--json");
        assertThat(count(map)).isEqualTo(2);
        assertThat(count(map.getAsJsonObject("withoutDecisions"))).isEqualTo(3);
        JsonObject decision = map.getAsJsonArray("decisions").get(0).getAsJsonObject();
        assertThat(decision.get("kind").getAsString()).isEqualTo("together");
        assertThat(decision.get("note").getAsString()).isEqualTo("one ringed pair");
        assertThat(CommandRun.of("map", book).out())
                .contains("Decided by the surveyor")
                .contains("Without these decisions: Keld Water 3 territories (range 3–4)");
        assertThat(CommandRun.of("map", book, "--why", "B").out()).contains("“one ringed pair”");
    }

    /** Typed in the window or at the command line: the same line, one step, one reason. */
    @Test
    void takesSeveralDecisionsOfOneLineInOneStep() {
        String before = CommandRun.of("map", book, "--json").out();

        CommandRun run = CommandRun.of(
                "decide",
                book,
                "boundary at 14.6 and no territory from 12 to 13 because nobody sang there",
                "--by",
                "HB");

        assertThat(run.exitCode()).isZero();
        assertThat(run.out())
                .contains(
                        "Decided, number 2: boundary at km 14.60", "Decided, number 1: no territory at km 12.00–13.00")
                .contains("3 territories before");
        assertThat(CommandRun.of("decide", book).out()).containsSubsequence("nobody sang there", "nobody sang there");

        CommandRun.of("undo", book);
        assertThat(CommandRun.of("map", book, "--json").out()).isEqualTo(before);
    }

    @Test
    void isAsItWasWhenTheDecisionIsRemovedOrUndone() {
        String before = CommandRun.of("map", book, "--json").out();
        CommandRun.of("decide", book, "no territory from 12 to 13");
        assertThat(count(json("map", book, "--json"))).isEqualTo(2);

        assertThat(CommandRun.of("decide", book, "remove", "1").out()).contains("2 territories before, 3 now");
        assertThat(CommandRun.of("map", book, "--json").out()).isEqualTo(before);

        CommandRun.of("undo", book);
        assertThat(count(json("map", book, "--json"))).isEqualTo(2);
        CommandRun.of("undo", book, "--step", "3");
        assertThat(CommandRun.of("map", book, "--json").out()).isEqualTo(before);
    }

    @Test
    void listsDecisionsWithTheirNumbers() {
        assertThat(CommandRun.of("decide", book).out()).isEqualTo("None." + System.lineSeparator());
        CommandRun.of("decide", book, "note at 12.6: ringed as young in 2024", "--by", "Ina Brekke");
        CommandRun.of("decide", book, "boundary at 13.5");

        assertThat(CommandRun.of("show", book, "decisions").out())
                .isEqualTo(CommandRun.of("decide", book).out())
                .contains("1    2026  dipper   Keld Water  note", "Ina Brekke", "ringed as young in 2024")
                .contains("2    2026  dipper   Keld Water  boundary");
        assertThat(CommandRun.of("show", book, "decisions", "--season", "2025").out())
                .contains("None.");
    }

    @Test
    void namesBothOfTwoThatContradictEachOtherAndKeepsTheFirst() {
        CommandRun.of("decide", book, "one territory from 14.0 to 15.2");

        CommandRun second = CommandRun.of("decide", book, "boundary at 14.6");

        assertThat(second.exitCode()).isEqualTo(1);
        assertThat(second.err())
                .contains("one territory at km 14.00–15.20 (dipper, 2026)")
                .contains("boundary at km 14.60 (dipper, 2026)");
        assertThat(CommandRun.of("decide", book).out()).doesNotContain("boundary");
    }

    @Test
    void refusesWhatItCannotUnderstandAndSaysHowToWriteIt() {
        refuses("no boundary at 14.6", "Write ‘boundary at PLACE’");
        refuses("boundary at the oak", "No landmark is called “the oak”");
        refuses("boundary at 99.5", "lies beyond the ends of Keld Water");
        refuses("one territory from 14.2 to 14.20", "both places are km 14.20");
        refuses("note at 14.2", "What is to be remembered?");
        refuses("remove 1", "No decision was made in this book");
        refuses("remove one", "is no number of a decision");
        CommandRun.of("decide", book, "boundary at 14.6");
        refuses("boundary at 14.60", "That stands already");
    }

    private void refuses(String line, String telling) {
        CommandRun run = CommandRun.of("decide", book, line);

        assertThat(run.exitCode()).as(line).isEqualTo(2);
        assertThat(run.err()).as(line).contains(telling);
        assertThat(run.out()).as(line).isEmpty();
    }

    @Test
    void asksAPersonForTheReason() {
        StringWriter err = new StringWriter();
        Terminal screen = new Terminal(
                new BufferedReader(new StringReader("a ditch\n")),
                new PrintWriter(new StringWriter()),
                new PrintWriter(err),
                true,
                true,
                false);

        int exitCode = Ouzelbook.run(screen, "decide", book.toString(), "boundary at 13.5");

        assertThat(exitCode).isZero();
        assertThat(err.toString()).startsWith("Why?");
        assertThat(CommandRun.of("decide", book).out()).contains("a ditch");
    }
}
