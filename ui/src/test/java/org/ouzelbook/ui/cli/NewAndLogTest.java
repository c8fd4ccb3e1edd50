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
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.river.RiverNetwork;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.SightingQuery;

/** A book made of a drawn river, and lines of a notebook entered into it. */
class NewAndLogTest {
    private static final String RIVERS = """
            {"type":"FeatureCollection","features":[
            {"type":"Feature","properties":{"name":"Arrel Water"},"geometry":{"type":"LineString","coordinates":
              [[-3.40,52.20],[-3.40,52.18],[-3.41,52.15]]}},
            {"type":"Feature","properties":{"name":"Arrel Water"},"geometry":{"type":"LineString","coordinates":
              [[-3.40,52.10],[-3.41,52.1496]]}},
            {"type":"Feature","properties":{"name":"Arrel Water"},"geometry":{"type":"LineString","coordinates":
              [[-3.40,52.22],[-3.40,52.20]]}},
            {"type":"Feature","properties":{"name":"Sorn Beck","mouth_on":"Arrel Water"},"geometry":{"type":
              "MultiLineString","coordinates":[[[-3.35,52.17],[-3.38,52.165]],[[-3.38,52.165],[-3.4046,52.166]]]}}]}
            """;

    @TempDir
    Path folder;

    private Path rivers;
    private Path book;

    @BeforeEach
    void drawTheRivers() throws IOException {
        rivers = Files.writeString(folder.resolve("rivers.geojson"), RIVERS);
        book = folder.resolve("arrel.mv.db");
    }

    private CommandRun make(String... options) {
        List<Object> all = new ArrayList<>(List.of("new", book, "--river", rivers));
        all.addAll(List.of(options));
        return CommandRun.of(all.toArray());
    }

    @Test
    void asksAboutTheGapAndMakesNothing() {
        CommandRun run = make();

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.err()).contains("a gap of 45 m at km 5.56").contains("--bridge-gaps 45");
        assertThat(book).doesNotExist();
    }

    @Test
    void makesTheBookAndTellsWhatWasUnderstood() {
        CommandRun run = make("--bridge-gaps", "50", "--json");

        assertThat(run.exitCode()).isZero();
        JsonObject answer = JsonParser.parseString(run.out()).getAsJsonObject();
        JsonObject arrel = answer.getAsJsonArray("rivers").get(0).getAsJsonObject();
        assertThat(arrel.get("river").getAsString()).isEqualTo("Arrel Water");
        assertThat(arrel.get("lengthKm").getAsDouble()).isCloseTo(13.46, within(0.01));
        assertThat(arrel.get("mouthBy").getAsString()).isEqualTo("drawn downstream");
        assertThat(arrel.get("turned").getAsInt()).isEqualTo(1);
        assertThat(arrel.getAsJsonArray("gaps")).hasSize(1);
        JsonObject beck = answer.getAsJsonArray("rivers").get(1).getAsJsonObject();
        assertThat(beck.getAsJsonObject("joins").get("km").getAsDouble()).isCloseTo(7.42, within(0.01));
        try (Book made = Book.open(book)) {
            RiverNetwork network = made.read(view -> view.network());
            UUID arrelWater =
                    made.read(view -> view.river("arrel water").orElseThrow().id());
            assertThat(network.rivers()).hasSize(2);
            assertThat(network.measuredLine(arrelWater).orElseThrow().length()).isCloseTo(13460, within(10.0));
        }
    }

    @Test
    void tellsHowToTurnTheRiverAndTurnsIt() {
        assertThat(make("--bridge-gaps", "50").out()).contains("--mouth-at \"Arrel Water=first\"");
        book = folder.resolve("turned.mv.db");

        CommandRun turned = make("--bridge-gaps", "50", "--mouth-at", "Arrel Water=first");

        assertThat(turned.out()).contains("Lower end at 52.22000, -3.40000: as you said.");
    }

    @Test
    void refusesWhatCannotBeMeant() {
        assertThat(make("--mouth-at", "left").exitCode()).isEqualTo(2);
        assertThat(make("--joins", "Sorn Beck").exitCode()).isEqualTo(2);
        assertThat(make("--bridge-gaps", "-3").exitCode()).isEqualTo(2);
        assertThat(make("--bridge-gaps", "50").exitCode()).isZero();
        CommandRun again = make("--bridge-gaps", "50");
        assertThat(again.exitCode()).isEqualTo(1);
        assertThat(again.err()).contains("arrel.mv.db");
    }

    private static final String LINES = """
            visit 11 may arrel water 6.0-10.4, 0700, AB, looking for dipper GL KF CS
            8.4 0712 2 song
            8.0 0812 pair, flew up, back at 8.55
            = 8.9 song

            end 0935 at 9.1
            """;

    @Test
    void logsAVisitWithItsZeros() {
        make("--bridge-gaps", "50");

        CommandRun run = CommandRun.typing(LINES, "log", book.toString());

        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).isZero();
        assertThat(run.out())
                .contains("Arrel Water km 8.40 ± 50 m · 07:12 · two dippers, singing · visit of 11 May")
                .contains("turned back at km 8.55")
                .contains("km 6.00–9.10, 3.10 km · upstream · 07:00–09:35 (2 h 35 min)")
                .contains("3 sightings.")
                .contains("Not seen: grey wagtail, kingfisher, common sandpiper, on km 6.00–9.10 only.");
        try (Book made = Book.open(book)) {
            Sighting later =
                    made.read(view -> view.sightings(SightingQuery.ALL)).get(2);
            Sighting earlier =
                    made.read(view -> view.sightings(SightingQuery.ALL)).get(1);
            assertThat(later.simultaneousWith()).containsExactly(earlier.id());
            assertThat(earlier.simultaneousWith()).containsExactly(later.id());
            assertThat(made.history(10)).hasSize(6);
        }
    }

    @Test
    void rehearsesAWholeNotebook() {
        make("--bridge-gaps", "50");

        CommandRun run = CommandRun.typing(LINES, "log", book.toString(), "--dry-run");

        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).contains("3 sightings.").contains("nothing was stored");
        assertThat(sightings()).isZero();
        try (Book made = Book.open(book)) {
            List<Visit> visits = made.read(view -> view.visits());
            assertThat(visits).isEmpty();
        }
    }

    @Test
    void asksAndStoresNothingWhereALineIsUnclear() {
        make("--bridge-gaps", "50");
        CommandRun.typing(LINES, "log", book.toString());

        CommandRun unclear = CommandRun.of("log", book.toString(), "8.4 blah song", "--visit", onlyVisit());

        assertThat(unclear.exitCode()).isEqualTo(1);
        assertThat(unclear.err()).contains("“blah” is not understood").contains("Nothing was stored.");
        CommandRun dry =
                CommandRun.of("log", book.toString(), "8.4 song", "--visit", onlyVisit(), "--dry-run", "--json");
        assertThat(dry.exitCode()).isZero();
        assertThat(JsonParser.parseString(dry.out())
                        .getAsJsonObject()
                        .get("stored")
                        .getAsBoolean())
                .isFalse();
        CommandRun noVisit = CommandRun.of("log", book.toString(), "8.4 song", "--date", "2026-01-02");
        assertThat(noVisit.exitCode()).isEqualTo(1);
        assertThat(noVisit.err()).contains("There is no visit on 2 Jan 2026");
        assertThat(CommandRun.of("log", book.toString(), "8.4 song", "--visit", "nonsense")
                        .exitCode())
                .isEqualTo(2);
        assertThat(sightings()).isEqualTo(3);
        CommandRun casual =
                CommandRun.of("log", book.toString(), "sorn beck 0.3 song", "--date", "2026-01-02", "--casual");
        assertThat(casual.out()).contains("2 Jan 2026, without a visit");
        assertThat(sightings()).isEqualTo(4);
    }

    private String onlyVisit() {
        try (Book made = Book.open(book)) {
            return made.read(view -> view.visits().get(0).label());
        }
    }

    private int sightings() {
        try (Book made = Book.open(book)) {
            return made.read(view -> view.sightings(SightingQuery.ALL).size());
        }
    }
}
