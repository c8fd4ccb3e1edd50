package org.ouzelbook.tracker.notebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.LandmarkKind;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.place.PlaceSettings;
import org.ouzelbook.tracker.place.Places;
import org.ouzelbook.tracker.river.RiverNetwork;

class NotebookLineTest {
    private static final UUID ARREL = new UUID(0, 1);
    private static final UUID BECK = new UUID(0, 2);

    private final Places places = Places.of(
            RiverNetwork.of(
                    List.of(
                            new River(ARREL, "Arrel Water", Optional.empty()),
                            new River(
                                    BECK, "Sorn Beck", Optional.of(new River.Confluence(ARREL, Chainage.ofKm(16.4))))),
                    List.of()),
            List.of(
                    landmark(1, "Otter Rock", ARREL, 8.35),
                    landmark(2, "Kirk Bridge", ARREL, 10.4),
                    landmark(3, "Kirk Weir", ARREL, 10.9),
                    landmark(4, "Song Bridge", ARREL, 3.0),
                    landmark(5, "Beck Foot", BECK, 0.1)),
            PlaceSettings.USUAL);

    private final Visit visit = new Visit(
            new UUID(1, 1),
            "2026-05-11",
            ARREL,
            LocalDate.of(2026, 5, 11),
            Optional.of(LocalTime.of(7, 0)),
            Optional.empty(),
            Optional.of(Stretch.ofKm(6.0, 10.4)),
            Optional.empty(),
            Optional.empty(),
            List.of("AB", "CD"),
            List.of(Species.DIPPER, Species.KINGFISHER),
            "",
            "",
            true,
            "");

    private static Landmark landmark(int key, String name, UUID river, double km) {
        Place place = new Place(river, Chainage.ofKm(km), Bank.UNKNOWN, 20, 1);
        return new Landmark(new UUID(9, key), name, LandmarkKind.OTHER, place, List.of(), false);
    }

    private LineReading read(String line) {
        return NotebookLine.read(line, LineContext.of(places, visit, Optional.empty()));
    }

    private List<Sighting> clear(String line) {
        LineReading reading = read(line);
        assertThat(reading.questions()).as(line).isEmpty();
        return reading.sightings();
    }

    private Sighting one(String line) {
        List<Sighting> sightings = clear(line);
        assertThat(sightings).as(line).hasSize(1);
        return sightings.get(0);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "otter, 2, song, 0712",
                "otter rock 0712 2 song",
                "0712 two birds singing at Otter Rock",
                "2 song 7:12 otter ro",
                "otter,2,0712,singing"
            })
    void readsABirdAtAKnownRockInAnyOrder(String line) {
        Sighting sighting = one(line);

        assertThat(sighting.place().chainage()).isEqualTo(Chainage.ofKm(8.35));
        assertThat(sighting.place().uncertaintyMetres()).isEqualTo(20);
        assertThat(sighting.time()).contains(LocalTime.of(7, 12));
        assertThat(sighting.count()).isEqualTo(2);
        assertThat(sighting.activities()).containsExactly(Activity.SINGING);
        assertThat(sighting.age()).isEqualTo(Age.UNKNOWN);
        assertThat(sighting.sex()).as("both sexes of dipper sing").isEqualTo(Sex.UNKNOWN);
        assertThat(sighting.visitId()).contains(visit.id());
        assertThat(sighting.date()).isEqualTo(visit.date());
        assertThat(sighting.species()).isEqualTo(Species.DIPPER);
        assertThat(sighting.observer()).isEqualTo("AB, CD");
    }

    @Test
    void readsAPairThatTurnedBack() {
        Sighting pair = one("km 8.4 LB pair, flew up, back at 8.9");

        assertThat(pair.place().chainage()).isEqualTo(Chainage.ofKm(8.4));
        assertThat(pair.place().uncertaintyMetres()).isEqualTo(50);
        assertThat(pair.place().bank()).isEqualTo(Bank.LEFT);
        assertThat(pair.count()).isEqualTo(2);
        assertThat(pair.age()).isEqualTo(Age.ADULT);
        assertThat(pair.activities()).containsExactly(Activity.FLYING_UP);
        assertThat(pair.flewTo()).contains(Chainage.ofKm(8.9));
        assertThat(pair.turnedBack()).isTrue();
    }

    @Test
    void readsAFlightWithoutATurn() {
        Sighting flushed = one("9.05 flushed down to otter rock");

        assertThat(flushed.flewTo()).contains(Chainage.ofKm(8.35));
        assertThat(flushed.turnedBack()).isFalse();
        assertThat(one("9.05 flew up").flewTo()).isEmpty();
    }

    @Test
    void readsAFamilyAsTwoSightingsThatAreNotLinked() {
        List<Sighting> family = clear("9.05 ad + 3 juv food 0730 // by the ledge");

        assertThat(family).extracting(Sighting::count).containsExactly(1, 3);
        assertThat(family).extracting(Sighting::age).containsExactly(Age.ADULT, Age.JUVENILE);
        assertThat(family.get(0).activities()).containsExactly(Activity.CARRYING_FOOD);
        assertThat(family.get(1).activities()).isEmpty();
        assertThat(family).allSatisfy(sighting -> {
            assertThat(sighting.simultaneousWith()).isEmpty();
            assertThat(sighting.note()).isEqualTo("by the ledge");
        });
        assertThat(clear("9.05 ad+3juv")).extracting(Sighting::count).containsExactly(1, 3);
        assertThat(clear("9.05 ad +3 juv")).extracting(Sighting::count).containsExactly(1, 3);
    }

    @Test
    void linksTwoBirdsAtOnceOnOneLine() {
        List<Sighting> birds = clear("8.0 0812 pair = 8.9 song");

        assertThat(birds.get(0).simultaneousWith()).containsExactly(birds.get(1).id());
        assertThat(birds.get(1).simultaneousWith()).containsExactly(birds.get(0).id());
        assertThat(birds.get(1).time()).contains(LocalTime.of(8, 12));
    }

    @Test
    void linksALineToTheOneBefore() {
        Sighting before = one("8.0 0812 pair");

        LineReading reading = NotebookLine.read("= 8.9 song", LineContext.of(places, visit, Optional.of(before)));

        assertThat(reading.sightings().get(0).simultaneousWith()).containsExactly(before.id());
        assertThat(reading.sightings().get(0).time()).contains(LocalTime.of(8, 12));
        assertThat(read("= 8.9 song").questions())
                .extracting(question -> question.question().key())
                .containsExactly("log.nothingBefore");
    }

    @ParameterizedTest
    @CsvSource({
        "8.4 1 juv indep, INDEPENDENT_JUVENILE",
        "8.4 juv dep, DEPENDENT_JUVENILE",
        "8.4 1y, FIRST_YEAR",
        "8.4 juv, JUVENILE",
        "8.4 adult f, ADULT"
    })
    void readsAges(String line, Age age) {
        assertThat(one(line).age()).isEqualTo(age);
    }

    @ParameterizedTest
    @CsvSource({
        "8.4 mat, CARRYING_MATERIAL",
        "8.4 food, CARRYING_FOOD",
        "8.4 with faecal sac, CARRYING_FAECAL_SAC",
        "8.4 s, SINGING",
        "8.4 feeding young, FEEDING_YOUNG",
        "8.4 feeding, FEEDING",
        "8.4 at nest site, AT_NEST_SITE"
    })
    void readsWhatItDid(String line, Activity activity) {
        assertThat(one(line).activities()).containsExactly(activity);
    }

    @Test
    void readsTheRest() {
        Sighting sighting = one("8.412 ±30m RB KF m R/N code 14 by EF \"under the arch\"");

        assertThat(sighting.species()).isEqualTo(Species.KINGFISHER);
        assertThat(sighting.sex()).isEqualTo(Sex.MALE);
        assertThat(sighting.rings()).isEqualTo("R/N");
        assertThat(sighting.breedingCode()).contains(new BreedingCode(14));
        assertThat(sighting.observer()).isEqualTo("EF");
        assertThat(sighting.place().uncertaintyMetres()).isEqualTo(30);
        assertThat(sighting.place().bank()).isEqualTo(Bank.RIGHT);
        assertThat(sighting.note()).isEqualTo("under the arch");
    }

    /** A word of the vocabulary begins no landmark, but a landmark written whole is one. */
    @Test
    void tellsWordsFromLandmarks() {
        assertThat(one("song 8.4").place().chainage()).isEqualTo(Chainage.ofKm(8.4));
        assertThat(one("song bridge song").place().chainage()).isEqualTo(Chainage.ofKm(3.0));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            2 song                      | log.noPlace
            kirk song                   | place.ambiguous
            oter rock song              | place.unknown.similar
            8.4 blah                    | log.unknownWord
            8.4 712                     | log.number
            8.4 2560                    | log.noTime
            8.4 0                       | log.zero
            8.4 none                    | log.zero
            8.4 8.9 song                | log.secondPlace
            8.4 2 3                     | log.secondCount
            8.4 pair juv                | log.secondAge
            8.4 m f                     | log.secondSex
            8.4 KF GL                   | log.secondSpecies
            8.4 ad +                    | log.emptyGroup
            8.4 song =                  | log.emptyAtOnce
            8.4 flew up back at 8.1     | log.wrongWay
            8.4 flushed                 | log.whichWay
            8.4 turned back             | log.whereBack
            8.4 0712 0713               | log.twice
            8.4 LB RB                   | log.twice
            8.4 code 17                 | log.noCode
            8.4 flew to sorn beck 0.3   | log.flewToOtherRiver
            below kirk bridge song      | place.howFar
            // only a note              | log.empty
            """)
    void asksAboutWhatIsUnclear(String line, String key) {
        LineReading reading = read(line);

        assertThat(reading.questions())
                .extracting(question -> question.question().key())
                .as(line)
                .contains(key);
        assertThat(reading.sightings()).isEmpty();
    }

    @Test
    void offersTheLandmarksThatAWordMayMean() {
        assertThat(read("kirk song").questions().get(0).choices()).containsExactly("Kirk Bridge", "Kirk Weir");
    }

    /** Every character that is not a blank or a comma belongs to a part or to a question. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "km 8.4 LB pair, flew up, back at 8.9",
                "8.0 0812 pair = 8.9 song // note",
                "9.05 ad + 3 juv blah, food",
                "otter rock +50 m 2 birds singing and then 0712",
                "blah otter, xyz 712"
            })
    void passesOverNoWord(String line) {
        LineReading reading = read(line);
        boolean[] covered = new boolean[line.length()];
        reading.parts().forEach(part -> Arrays.fill(covered, part.from(), part.to(), true));
        reading.questions().forEach(question -> Arrays.fill(covered, question.from(), question.to(), true));

        for (int i = 0; i < line.length(); i++) {
            assertThat(covered[i] || " ,;".indexOf(line.charAt(i)) >= 0)
                    .as("%s at %d", line, i)
                    .isTrue();
        }
    }

    @Test
    void remarksOnWhatIsUnusual() {
        assertThat(read("12.5 0650 GL song").remarks())
                .extracting(Message::key)
                .containsExactly("log.outsideStretch", "log.outsideTime", "log.notLookedFor");
        assertThat(read("beck foot song").remarks()).extracting(Message::key).containsExactly("log.otherRiver");
    }
}
