package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A season sealed when it was reported, and the answer a year later. */
class SealCommandTest {
    private static final String RIVER = """
            {"type":"Feature","properties":{"name":"Arrel Water"},"geometry":{"type":"LineString","coordinates":
              [[-3.40,52.10],[-3.40,52.20]]}}
            """;
    private static final String NOTEBOOK = """
            visit 2026-02-24 2.0-9.0, 0700-1100, HB, looking for dipper
            2.4 0712 song
            6.1 0830 pair
            visit 2026-03-16 2.0-9.0, 0700-1100, HB, looking for dipper
            2.5 0712 mat
            6.0 0830 song
            visit 2026-04-13 2.0-9.0, 0700-1100, HB, looking for dipper
            2.5 0712 food
            6.2 0830 pair
            """;

    @TempDir
    Path folder;

    private Path book;

    @BeforeEach
    void walkASeason() throws IOException {
        book = folder.resolve("arrel");
        Path river = Files.writeString(folder.resolve("river.geojson"), RIVER);
        Path notebook = Files.writeString(folder.resolve("notebook.txt"), NOTEBOOK);
        assertThat(CommandRun.of("new", book, "--river", river).exitCode()).isZero();
        CommandRun run = CommandRun.of("log", book, "--file", notebook);
        assertThat(run.exitCode()).as(run.err()).isZero();
    }

    private CommandRun seal(Object... options) {
        Object[] all = new Object[options.length + 2];
        all[0] = "seal";
        all[1] = book;
        System.arraycopy(options, 0, all, 2, options.length);
        return CommandRun.of(all);
    }

    @Test
    void sealsASeasonAndShowsItAgain() {
        CommandRun run = seal("--season", "2026", "--by", "HB");

        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out())
                .contains("Sealed 2026, dipper")
                .contains("Arrel Water, territories by rule: 2")
                .contains("Arrel Water, territories by model:")
                .contains("Arrel Water, territory 1, km: 2.40–2.50, confirmed")
                .contains("Counted: ")
                .contains("Today’s count by rule is the same.");
        assertThat(seal("--show").out()).contains("sealed on").contains("by HB").contains("Counted: ");
        assertThat(seal("--list").out()).contains("2026, dipper: sealed on");
        assertThat(seal("--season", "2026").err()).contains("2026 is sealed already");
        assertThat(CommandRun.of("check", book).out()).doesNotContain("is another answer today");
    }

    @Test
    void noticesAnotherAnswerAndSaysWhy() {
        seal("--season", "2026");
        CommandRun.of("log", book, "--visit", "2026-02-24", "8.5 0900 song");
        CommandRun.of("log", book, "--visit", "2026-04-13", "8.6 0900 song");

        assertThat(CommandRun.of("map", book, "--season", "2026").out())
                .contains("is another answer today")
                .contains("2 when sealed, 3 now")
                .contains("2 added, 0 corrected, 0 removed");
        assertThat(CommandRun.of("check", book).out()).contains("is sound").contains("is another answer today");
        assertThat(CommandRun.of("report", book, "--season", "2026", "--out", folder.resolve("r.html"))
                        .err())
                .contains("is another answer today");
        JsonObject shown =
                JsonParser.parseString(seal("--show", "--json").out()).getAsJsonObject();
        assertThat(shown.get("same").getAsBoolean()).isFalse();
        assertThat(shown.getAsJsonObject("figures")
                        .get("Arrel Water, territories by rule")
                        .getAsString())
                .as("the sealed answer stays as it was given")
                .isEqualTo("2");
        assertThat(shown.getAsJsonArray("differences")).isNotEmpty();
        assertThat(shown.getAsJsonArray("because")).isNotEmpty();

        CommandRun.of("undo", book);
        CommandRun.of("undo", book);

        assertThat(seal("--show").out()).contains("Today’s count by rule is the same.");
    }

    @Test
    void comparesTheModelsCountToo() throws IOException {
        seal("--season", "2026");
        assertThat(CommandRun.of("map", book, "--season", "2026").out()).doesNotContain("is another answer today");

        Path before = Files.writeString(
                folder.resolve("before.txt"),
                NOTEBOOK.replace("2026-", "2025-").replaceAll("(?m)^(2.4|2.5 0712 mat|6.0|6.2).*\n", ""));
        CommandRun run = CommandRun.of("log", book, "--file", before);
        assertThat(run.exitCode()).as(run.err()).isZero();

        assertThat(seal("--show").out()).contains("Today’s count by rule is the same.");
        assertThat(CommandRun.of("map", book, "--season", "2026").out().replaceAll("\\s+", " "))
                .contains("is another answer today")
                .contains("Arrel Water, territories by model:")
                .contains("The model learns from all seasons")
                .doesNotContain("territories by rule: 2 when sealed");
        assertThat(CommandRun.of("map", book, "--season", "2026", "--level", "0.8")
                        .out())
                .as("other limits are no other answer")
                .doesNotContain("is another answer today");
    }

    @Test
    void aDecisionIsAReason() {
        seal("--season", "2026");
        CommandRun.of("decide", book, "no", "territory", "from", "5.5", "to", "7", "--season", "2026");

        assertThat(seal("--list").out())
                .contains("2 when sealed, 1 now")
                .contains("1 added, 0 corrected, 0 removed (no territory");
    }

    @Test
    void takesASealAwayAndUndoesThat() {
        seal("--season", "2026");

        assertThat(seal("--remove").out()).contains("Removed the seal of 2026");
        assertThat(seal("--list").out()).contains("No season is sealed.");
        CommandRun.of("undo", book);
        assertThat(seal("--list").out()).contains("2026, dipper: sealed on");
    }

    @Test
    void refusesWhatCannotBeSealed() {
        assertThat(seal("--show").err()).contains("No season is sealed");
        assertThat(seal("--season", "2019", "--remove").err()).contains("2019 is not sealed");
        assertThat(seal("--season", "2026", "--species", "kingfisher").exitCode())
                .isNotZero();
    }

    @Test
    void goesBackToAStep() {
        CommandRun run = CommandRun.of("undo", book, "--back-to", "4");

        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out()).contains("as it was after step 4");
        assertThat(CommandRun.of("show", "visits", book).out()
                        + CommandRun.of("show", book, "visits").out())
                .contains("2026-02-24")
                .doesNotContain("2026-04-13");
        assertThat(CommandRun.of("undo", book, "--back-to", "4").out()).contains("there already");
    }

    /** What the report says of the seal: the day, and the counts that are others; no person, and no end of a territory. */
    @Test
    void isToldInTheReport() throws IOException {
        assertThat(report()).doesNotContain("was sealed on");

        seal("--season", "2026", "--by", "Hanna Beck");
        assertThat(report()).contains("This season was sealed on", "gives the same counts.</p>");

        CommandRun.of("log", book, "--visit", "2026-04-13", "2.6 0900 song");
        assertThat(report()).contains("gives the same counts, but not every territory lies where it lay then");

        CommandRun.of("log", book, "--visit", "2026-02-24", "8.5 0900 song");
        CommandRun.of("log", book, "--visit", "2026-04-13", "8.6 0900 song");
        assertThat(report())
                .contains("with other counts: ", "Arrel Water, territories by rule: 2 when sealed, 3 now")
                .doesNotContain("Hanna")
                .doesNotContain("2.40");
        assertThat(report("--max-length-km", "2")).doesNotContain("was sealed on");
    }

    private String report(String... options) throws IOException {
        Path page = folder.resolve("report.html");
        CommandRun run = CommandRun.of(Stream.concat(
                        Stream.of("report", book, "--season", "2026", "--by-rule", "--out", page, "--replace"),
                        Stream.of(options))
                .toArray());
        assertThat(run.exitCode()).as(run.err()).isZero();
        return Files.readString(page);
    }
}
