package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.SightingQuery;

class ImportCommandTest {
    @TempDir
    Path folder;

    private Path book;

    @BeforeEach
    void makeBook() {
        book = folder.resolve("arrel");
        River river = new River(UUID.randomUUID(), "Arrel Water", Optional.empty());
        List<GeoPoint> points = new ArrayList<>();
        for (int i = 0; i <= 180; i++) {
            points.add(new GeoPoint(57 + i * 0.1 / 111.4, -3.4));
        }
        try (Book made = Book.create(book)) {
            made.change(Message.of("history.import", "rivers"), "A. Brook", edit -> {
                edit.add(river);
                edit.add(new RiverLine(river.id(), 1, Chainage.ofKm(0), points, "drawn by hand"));
                return river;
            });
        }
    }

    private static Path notebooks() throws URISyntaxException {
        return Path.of(ImportCommandTest.class.getResource("notebooks").toURI());
    }

    private long sightings() {
        try (Book opened = Book.open(book)) {
            return opened.read(view -> (long) view.sightings(SightingQuery.ALL).size());
        }
    }

    @Test
    void tellsThatAFileOfARiverAloneIsNews() throws Exception {
        Path file = Files.writeString(folder.resolve("beck.gpx"), """
                <gpx version="1.1"><rte><name>Sorn Beck</name><rtept lat="57.2" lon="-3.2"/><rtept lat="57.1" lon="-3.2"/></rte></gpx>
                """);

        assertThat(CommandRun.of("import", book, file, "--dry-run").out())
                .contains("Sorn Beck: a river of 11.1")
                .endsWith("this was a rehearsal. Import it without --dry-run.\n");
        assertThat(CommandRun.of("import", book, file).out())
                .endsWith("What is new of it is in the book. ‘ouzelbook undo’ takes it back.\n");
        assertThat(CommandRun.of("import", book, file, "--dry-run").out())
                .endsWith("Nothing to do: the book has all of this already.\n");
    }

    @Test
    void tellsNoHeaderOfAWalkThatHasNone() throws Exception {
        Path file = Files.writeString(folder.resolve("walk.gpx"), """
                <gpx version="1.1"><wpt lat="57.002" lon="-3.4"><name>dipper singing</name><time>2026-04-12T08:00:00Z</time></wpt></gpx>
                """);

        assertThat(CommandRun.of("import", book, file, "--dry-run", "--zone", "UTC")
                        .out())
                .contains("1 row to add")
                .doesNotContain("Header in row");
    }

    @Test
    void tellsWhatItUnderstoodAndWhatIsWrongAndWritesNothing() throws Exception {
        CommandRun run = CommandRun.of("import", book, notebooks(), "--dry-run");

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.out())
                .contains("cells separated by semicolons")
                .contains("day before month, as row 5 shows (13.4.98)")
                .contains("birds2026.csv:7:When: “31/04/2026”: April has 30 days.")
                .contains("Was it Mill Bridge")
                .contains("answer with --decimals either")
                .contains("4 rows to add, 1 there already, 1 none seen, 5 rejected")
                .endsWith("or import only what is ready, with --accept.\n");
        assertThat(sightings()).isZero();
    }

    @Test
    void takesTheRiverOfTheVisitWithoutAskingInABookOfTwoRivers() throws Exception {
        try (Book opened = Book.open(book)) {
            River beck = new River(UUID.randomUUID(), "Sorn Beck", Optional.empty());
            opened.change(Message.of("history.import", "rivers"), "A. Brook", edit -> {
                edit.add(beck);
                edit.add(new RiverLine(
                        beck.id(),
                        1,
                        Chainage.ofKm(0),
                        List.of(new GeoPoint(57, -3), new GeoPoint(57.1, -3)),
                        "drawn by hand"));
                return beck;
            });
        }
        Path visits = Files.writeString(
                folder.resolve("visits.csv"),
                "visit,date,river,from_km,to_km,species\nS1,2026-03-16,Sorn Beck,0,8,dipper\n");
        Path birds = Files.writeString(
                folder.resolve("birds.csv"), "visit,km,species,count\nS1,4.2,dipper,2\nS1,5.1,dipper,1\n");

        CommandRun run = CommandRun.of("import", book, visits, birds);

        assertThat(run.exitCode()).isZero();
        assertThat(sightings()).isEqualTo(2);
        assertThat(CommandRun.of("show", book, "sightings").out())
                .contains("Sorn Beck")
                .doesNotContain("Arrel Water");
    }

    @Test
    void importsNothingWhileAnythingIsWrong() throws Exception {
        CommandRun run = CommandRun.of("import", book, notebooks());

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.out()).contains("Nothing was imported.");
        assertThat(sightings()).isZero();
    }

    @Test
    void acceptsWhatIsReadyAndGivesBackTheRest() throws Exception {
        Path rejected = folder.resolve("to-mend.csv");

        CommandRun run = CommandRun.of("import", book, notebooks(), "--accept", "--rejected", rejected, "--json");

        assertThat(run.exitCode()).isZero();
        JsonObject report = JsonParser.parseString(run.out()).getAsJsonObject();
        assertThat(report.get("added").getAsLong()).isEqualTo(12);
        assertThat(report.get("rejected").getAsLong()).isEqualTo(10);
        assertThat(report.get("open").getAsLong()).isEqualTo(1);
        assertThat(sightings()).isEqualTo(5);
        assertThat(Files.readAllLines(rejected))
                .hasSize(6)
                .first()
                .isEqualTo("When,Place,No.,Species,Activity,Age,Visit,Time,Obs,Remarks,Hat");
        assertThat(folder.resolve("to-mend-old98.csv")).exists();
    }

    @Test
    void mendedRowsGoInAndTheOthersAreKnownAgain() throws IOException {
        Path file = folder.resolve("birds.csv");
        Files.writeString(file, "date,km,species\n2026-03-16,8.4,dipper\nmid Apr,8.5,dipper\n");
        Path rejected = folder.resolve("mend.csv");
        CommandRun.of("import", book, file, "--accept", "--rejected", rejected);
        Files.writeString(rejected, Files.readString(rejected).replace("mid Apr", "2026-04-15"));

        assertThat(CommandRun.of("import", book, rejected).exitCode()).isZero();
        assertThat(sightings()).isEqualTo(2);
        assertThat(CommandRun.of("import", book, rejected).out()).contains("the book has all of this already");
    }

    @Test
    void wrongAnswersAreWrongUsage() throws Exception {
        assertThat(CommandRun.of("import", book, notebooks(), "--dates", "backwards")
                        .exitCode())
                .isEqualTo(2);
        assertThat(CommandRun.of("import", book, notebooks(), "--river", "Nile").err())
                .contains("Arrel Water");
        assertThat(CommandRun.of("import", book, folder.resolve("none.csv")).err())
                .contains("There is no file");
        assertThat(CommandRun.of("import", book).exitCode()).isEqualTo(2);
    }
}
