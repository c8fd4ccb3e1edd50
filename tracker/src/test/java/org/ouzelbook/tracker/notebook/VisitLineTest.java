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
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Direction;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.LandmarkKind;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.place.PlaceSettings;
import org.ouzelbook.tracker.place.Places;
import org.ouzelbook.tracker.river.RiverNetwork;

class VisitLineTest {
    private static final UUID ARREL = new UUID(0, 1);
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    private final Places places = Places.of(
            RiverNetwork.of(List.of(new River(ARREL, "Arrel Water", Optional.empty())), List.of()),
            List.of(landmark(1, "Otter Stone", 6.0), landmark(2, "Kirk Bridge", 10.4)),
            PlaceSettings.USUAL);

    private static Landmark landmark(int key, String name, double km) {
        Place place = new Place(ARREL, Chainage.ofKm(km), Bank.UNKNOWN, 20, 1);
        return new Landmark(new UUID(9, key), name, LandmarkKind.OTHER, place, List.of(), false);
    }

    private Visit visit(String line) {
        VisitLine.Reading reading = VisitLine.read(line, places, TODAY);
        assertThat(reading.questions()).as(line).isEmpty();
        return reading.visit().orElseThrow();
    }

    @Test
    void opensAVisit() {
        Visit visit = visit("visit 11 may otter stone to kirk bridge, upstream, 0700-0935, AB+CD, level low, foot, "
                + "looking for dipper kingfisher, GL and CS // bright");

        assertThat(visit.label()).isEqualTo("2026-05-11");
        assertThat(visit.date()).isEqualTo(LocalDate.of(2026, 5, 11));
        assertThat(visit.walked()).contains(Stretch.ofKm(6.0, 10.4));
        assertThat(visit.direction()).contains(Direction.UPSTREAM);
        assertThat(visit.start()).contains(LocalTime.of(7, 0));
        assertThat(visit.end()).contains(LocalTime.of(9, 35));
        assertThat(visit.observers()).containsExactly("AB", "CD");
        assertThat(visit.lookedFor())
                .containsExactly(Species.DIPPER, Species.KINGFISHER, Species.GREY_WAGTAIL, Species.COMMON_SANDPIPER);
        assertThat(visit.level()).isEqualTo("low");
        assertThat(visit.note()).isEqualTo("bright");
    }

    @ParameterizedTest
    @CsvSource({
        "visit 11 may 6.0-10.4, 2026-05-11, UPSTREAM",
        "visit 2 dec 2025 10.4 to 6, 2025-12-02, DOWNSTREAM",
        "visit 2 dec km 6 to km 10, 2025-12-02, UPSTREAM",
        "visit 2026-03-16 kirk to otter, 2026-03-16, DOWNSTREAM",
        "visit today otter stone to kirk bridge, 2026-11-25, UPSTREAM",
        "visit otter stone to kirk bridge, 2026-11-25, UPSTREAM"
    })
    void tellsTheDayAndTheWay(String line, LocalDate date, Direction direction) {
        Visit visit = visit(line + ", looking for dipper");

        assertThat(visit.date()).isEqualTo(date);
        assertThat(visit.direction()).contains(direction);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            visit 11 may otter stone to kirk bridge                                    | visit.whichBirds
            visit 11 may, looking for dipper                                           | visit.whichStretch
            visit 31 apr otter stone to kirk bridge, looking for dipper                | visit.noDate
            visit 2027-05-11 otter stone to kirk bridge, looking for dipper            | visit.future
            visit otter stone to nowhere, looking for dipper                           | place.unknown
            visit otter stone to kirk bridge, downstream, looking for dipper           | visit.wrongWay
            visit otter stone to kirk bridge, 0900-0730, looking for dipper            | visit.endsBeforeStart
            visit otter stone to kirk bridge, 2500, looking for dipper                 | log.noTime
            visit otter stone to kirk bridge, looking for phoenix                      | visit.unknownBird
            visit otter stone to kirk bridge, bananas, looking for dipper              | visit.unknownPart
            """)
    void asksAboutWhatIsUnclear(String line, String key) {
        VisitLine.Reading reading = VisitLine.read(line, places, TODAY);

        assertThat(reading.visit()).isEmpty();
        assertThat(reading.questions()).extracting(Message::key).contains(key);
    }

    /** Turned back at 9.1: the visit shows nothing of the water beyond. */
    @Test
    void closesWhereItTurnedBack() {
        Visit open = visit("visit 11 may otter stone to kirk bridge, 0700, looking for dipper");

        Visit closed = VisitEnd.read("end 0935 at 9.1", open, places).visit().orElseThrow();

        assertThat(closed.end()).contains(LocalTime.of(9, 35));
        assertThat(closed.walked()).contains(Stretch.ofKm(6.0, 9.1));
        assertThat(VisitEnd.read("end 09:35", open, places)
                        .visit()
                        .orElseThrow()
                        .walked())
                .contains(Stretch.ofKm(6.0, 10.4));
        Visit down = visit("visit 11 may kirk bridge to otter stone, looking for dipper");
        assertThat(VisitEnd.read("end 0935 at 9.1", down, places)
                        .visit()
                        .orElseThrow()
                        .walked())
                .contains(Stretch.ofKm(9.1, 10.4));
    }

    @ParameterizedTest
    @CsvSource({
        "end, visit.endWhen",
        "end 0630, visit.endsBeforeStart",
        "end 2960, log.noTime",
        "end 0935 at 12.5, visit.endOutside",
        "end soon, visit.endForm",
        "end 0935 at nowhere, place.unknown"
    })
    void asksHowAVisitEnded(String line, String key) {
        Visit open = visit("visit 11 may otter stone to kirk bridge, 0700, looking for dipper");

        VisitEnd.Reading reading = VisitEnd.read(line, open, places);

        assertThat(reading.visit()).isEmpty();
        assertThat(reading.question().orElseThrow().key()).isEqualTo(key);
    }
}
