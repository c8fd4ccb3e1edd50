package org.ouzelbook.tracker.notebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Direction;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.LandmarkKind;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.place.PlaceSettings;
import org.ouzelbook.tracker.place.Places;
import org.ouzelbook.tracker.river.RiverNetwork;

/** What is written must read back as the same record; and what is offered must be what the reader understands. */
class WrittenLineTest {
    private static final UUID ARREL = new UUID(0, 1);
    private static final UUID BECK = new UUID(0, 2);

    private final RiverNetwork network = RiverNetwork.of(
            List.of(
                    new River(ARREL, "Arrel Water", Optional.empty()),
                    new River(BECK, "Sorn Beck", Optional.of(new River.Confluence(ARREL, Chainage.ofKm(16.4))))),
            List.of());
    private final List<Landmark> landmarks = List.of(
            landmark(1, "Otter Stone", ARREL, 8.35),
            landmark(2, "Kirk Bridge", ARREL, 10.4),
            landmark(3, "Mill Weir", ARREL, 6.9),
            landmark(4, "Songbird Rock", ARREL, 7.1));
    private final List<RingedBird> ringed = List.of(new RingedBird(
            new UUID(7, 7), "Ada", "", "RN", "", "mW", "", Sex.FEMALE, Optional.empty(), Optional.empty(), ""));
    private final Places places = Places.of(network, landmarks, PlaceSettings.USUAL);
    private final Visit visit = new Visit(
            new UUID(1, 1),
            "2026-05-11",
            ARREL,
            LocalDate.of(2026, 5, 11),
            Optional.of(LocalTime.of(7, 0)),
            Optional.of(LocalTime.of(9, 35)),
            Optional.of(Stretch.ofKm(6.0, 10.4)),
            Optional.of(Direction.DOWNSTREAM),
            Optional.empty(),
            List.of("AB", "Ina Brekke"),
            List.of(Species.DIPPER, Species.GREY_WAGTAIL),
            "low and clear",
            "still",
            false,
            "ice at the edges");

    private static Landmark landmark(int key, String name, UUID river, double km) {
        Place place = new Place(river, Chainage.ofKm(km), Bank.UNKNOWN, 20, 1);
        return new Landmark(new UUID(9, key), name, LandmarkKind.OTHER, place, List.of(), false);
    }

    private Sighting read(String line) {
        LineReading reading = NotebookLine.read(line, LineContext.of(places, visit, Optional.empty()));
        assertThat(reading.questions()).as(line).isEmpty();
        return reading.sightings().get(0);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "otter stone 0712 2 song",
                "km 8.4 LB pair, flew up, back at 8.9",
                "8.347 ± 80 m ad f food rings RN/mW code 14 // under the arch",
                "kirk bridge juv dep with young",
                "km 8 3 kingfisher call alarm",
                "Sorn Beck 0.3 1y m midstream flew down",
                "6.95 flew to 7.2",
                "6.95 juv indep resting, tb 7.05",
                "6.95 RB flushed down to mill weir, mat",
                "mill weir ± 7.5 m GL"
            })
    void readsBackAsTheSameSighting(String line) {
        Sighting sighting = read(line);

        Sighting again = read(WrittenLine.of(sighting, network, Optional.of(visit)));

        assertThat(again)
                .usingRecursiveComparison()
                .ignoringFields("id")
                .withEqualsForType((a, b) -> Math.abs(a - b) < 1e-6, Double.class)
                .isEqualTo(sighting);
    }

    @Test
    void writesATurnedBackBirdInTwoKeystrokes() {
        Sighting sighting = read("8.2 tb 8.55");

        assertThat(sighting.turnedBack()).isTrue();
        assertThat(sighting.flewTo()).contains(Chainage.ofKm(8.55));
    }

    @Test
    void readsBackAsTheSameVisit() {
        String line = WrittenLine.of(visit, network);

        VisitLine.Reading again = VisitLine.read(line, places, LocalDate.of(2026, 6, 1));

        assertThat(again.questions()).as(line).isEmpty();
        assertThat(again.visit().orElseThrow())
                .usingRecursiveComparison()
                .ignoringFields("id")
                .isEqualTo(visit);
    }

    private List<String> offered(String line) {
        return Completion.of(line, line.length(), landmarks, ringed).stream()
                .map(Completion.Suggestion::text)
                .toList();
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            ot,              Otter Stone
            ott st,          Otter Stone
            kirk br,         Kirk Bridge
            8.4 pair so,     song
            8.4 carrying fo, carrying food
            8.4 fo,          food
            visit today mill weir to k, Kirk Bridge
            8.4 ki,          kingfisher
            8.4 turn,        'turned back at '
            8.4 back at kir, Kirk Bridge
            8.4 = mil,       Mill Weir
            8.4 rings R,     RN/mW
            8.4 rings ad,    RN/mW
            vi,              'visit '
            'visit today mill weir to ki', Kirk Bridge
            'visit today, lo',           'looking for '
            'visit today, looking for gr', grey wagtail
            """)
    void offersTheLikeliestFirst(String line, String first) {
        assertThat(offered(line)).first().isEqualTo(first);
    }

    @Test
    void offersALandmarkBeforeAWordWhereAPlaceIsMissingAndAfterItWhereOneIsTold() {
        assertThat(offered("song")).containsSubsequence("Songbird Rock");
        assertThat(offered("so")).containsSubsequence("Songbird Rock", "song");
        assertThat(offered("8.4 so")).containsSubsequence("song", "Songbird Rock");
    }

    @Test
    void replacesOnlyTheWordsThatAreMeant() {
        Completion.Suggestion otter =
                Completion.of("8.4 = ott st 2", 12, landmarks, ringed).get(0);

        assertThat(otter.from()).isEqualTo(6);
        assertThat(otter.to()).isEqualTo(12);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "otter stone ", "8.4 pair // so", "8.4 pair \"so", "0712", "otter stone"})
    void keepsQuietWhereNothingIsBegun(String line) {
        assertThat(offered(line)).isEmpty();
    }
}
