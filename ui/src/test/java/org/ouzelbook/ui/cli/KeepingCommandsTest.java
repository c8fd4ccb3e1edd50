package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Showing, undoing, checking and copying a book, as its keeper would. */
class KeepingCommandsTest {
    private static final String RIVER = """
            {"type":"Feature","properties":{"name":"Arrel Water"},"geometry":{"type":"LineString","coordinates":
              [[-6.40,57.28],[-6.40,57.20]]}}
            """;
    private static final String VISITS = """
            visit,date,start,end,from_km,to_km,species,observers
            A1,2026-03-16,07:00,09:35,1.0,5.4,dipper;kingfisher,Ina Brekke
            A2,2025-03-12,07:10,09:00,1.0,5.4,dipper,Ina Brekke
            """;
    private static final String SIGHTINGS = """
            visit,km,time,species,count,activity
            A1,3.40,07:12,dipper,2,singing
            A1,4.90,08:40,dipper,1,
            A2,3.38,07:30,dipper,1,
            """;

    @TempDir
    Path folder;

    private Path book;

    @BeforeEach
    void makeABookOfTwoVisits() throws IOException {
        book = folder.resolve("arrel.mv.db");
        Path notebooks = Files.createDirectory(folder.resolve("notebooks"));
        Files.writeString(notebooks.resolve("visits.csv"), VISITS);
        Files.writeString(notebooks.resolve("sightings.csv"), SIGHTINGS);
        run("new", book, "--river", Files.writeString(folder.resolve("river.geojson"), RIVER));
        run("import", book, notebooks);
    }

    private static String run(Object... arguments) {
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).isZero();
        return run.out();
    }

    private JsonObject json(Object... arguments) {
        return JsonParser.parseString(run(arguments)).getAsJsonObject();
    }

    @Test
    void showsVisitsWithWhatTheyDidNotSee() {
        assertThat(run("show", book, "visits", "--season", 2026))
                .contains("A1", "16 Mar 2026", "07:00", "1.00", "5.40", "Ina Brekke", "kingfisher")
                .doesNotContain("A2");
    }

    @Test
    void showsSightingsNarrowedByEveryCondition() {
        assertThat(json("show", book, "sightings", "--json").getAsJsonArray("sightings"))
                .hasSize(3);
        assertThat(json("show", book, "sightings", "--visit", "A2", "--json").getAsJsonArray("sightings"))
                .hasSize(1);
        assertThat(json("show", book, "sightings", "--from", "2026-01-01", "--json")
                        .getAsJsonArray("sightings"))
                .hasSize(2);
        assertThat(run("show", book, "sightings", "--species", "kingfisher")).isEqualToIgnoringNewLines("None.");
        assertThat(run("show", book, "sightings", "--visit", "A1")).contains("3.40", "07:12", "singing");
    }

    @Test
    void showsTheRiverAndTheImportedFiles() {
        assertThat(run("show", book, "rivers")).contains("Arrel Water", "0.00", "8.91");
        assertThat(run("show", book, "files")).contains("visits.csv", "sightings.csv");
        for (String what : new String[] {"landmarks", "reaches", "nests", "birds", "samples"}) {
            assertThat(run("show", book, what)).isEqualToIgnoringNewLines("None.");
        }
    }

    @Test
    void saysWhatCanBeShown() {
        CommandRun what = CommandRun.of("show", book, "otters");
        CommandRun river = CommandRun.of("show", book, "sightings", "--river", "Thames");

        assertThat(what.exitCode()).isEqualTo(2);
        assertThat(what.err()).contains("otters", "sightings, nests");
        assertThat(river.exitCode()).isEqualTo(2);
        assertThat(river.err()).contains("Thames", "Arrel Water");
    }

    @Test
    void undoesTheImportAndDoesItAgain() {
        assertThat(run("undo", book)).contains("Undid step 2", "removed: 7");
        assertThat(run("show", book, "sightings")).isEqualToIgnoringNewLines("None.");
        assertThat(run("undo", book, "--list")).contains("undone").contains("yes");
        assertThat(run("undo", book, "--redo")).contains("Did again", "added: 7");
        assertThat(json("show", book, "history", "--json").getAsJsonArray("history"))
                .hasSize(4);
    }

    @Test
    void namesTheLaterStepThatNeedsTheOneToBeUndone() {
        CommandRun run = CommandRun.of("undo", book, "--step", "1");

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.err()).contains("Step 1", "step 2");
    }

    @Test
    void findsTheBookSound() {
        assertThat(run("check", book)).contains("is sound");
        assertThat(json("check", book, "--json").get("sound").getAsBoolean()).isTrue();
    }

    @Test
    void copiesTheBook() {
        Path copy = folder.resolve("stick.zip");

        assertThat(run("backup", book, copy)).contains(copy.toString(), "MB");
        assertThat(copy).exists();
        assertThat(CommandRun.of("backup", book, copy).exitCode()).isEqualTo(1);
    }
}
