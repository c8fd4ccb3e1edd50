package org.ouzelbook.tracker.place;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.LandmarkKind;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.river.RiverNetwork;

class PlacesTest {
    private static final UUID ARREL = new UUID(0, 1);
    private static final UUID BECK = new UUID(0, 2);

    /** A river going due north for 11.1 km, and a beck that leaves it eastwards at km 5.56. */
    private final RiverNetwork network = RiverNetwork.of(
            List.of(
                    new River(ARREL, "Arrel Water", Optional.empty()),
                    new River(BECK, "Sorn Beck", Optional.of(new River.Confluence(ARREL, new Chainage(5563.2))))),
            List.of(
                    line(ARREL, new GeoPoint(52.10, -3.40), new GeoPoint(52.20, -3.40)),
                    line(BECK, new GeoPoint(52.15, -3.40), new GeoPoint(52.15, -3.35))));

    private final Places places = Places.of(
            network,
            List.of(
                    landmark(1, "Otter Stone", ARREL, 8.35, Bank.CHANNEL, "the big rock"),
                    landmark(2, "Otter Pool", ARREL, 9.00, Bank.UNKNOWN),
                    landmark(3, "Mill Bridge", ARREL, 4.20, Bank.UNKNOWN, "Pont y Felin"),
                    landmark(4, "Weir 2", ARREL, 2.00, Bank.UNKNOWN),
                    landmark(5, "Weir 21", ARREL, 10.00, Bank.UNKNOWN),
                    landmark(6, "Footbridge", ARREL, 3.00, Bank.UNKNOWN),
                    landmark(7, "Footbridge", BECK, 0.40, Bank.UNKNOWN)),
            PlaceSettings.USUAL);

    private static RiverLine line(UUID river, GeoPoint... points) {
        return new RiverLine(river, 3, new Chainage(0), List.of(points), "invented");
    }

    private static Landmark landmark(int key, String name, UUID river, double km, Bank bank, String... aliases) {
        Place place = new Place(river, Chainage.ofKm(km), bank, 20, 3);
        return new Landmark(new UUID(9, key), name, LandmarkKind.ROCK, place, List.of(aliases), false);
    }

    private Place found(String text) {
        PlaceReading reading = places.read(text, Optional.empty());
        assertThat(reading).as(text).isInstanceOf(PlaceReading.Found.class);
        return ((PlaceReading.Found) reading).place();
    }

    private PlaceReading.Unclear unclear(String text) {
        PlaceReading reading = places.read(text, Optional.empty());
        assertThat(reading).as(text).isInstanceOf(PlaceReading.Unclear.class);
        return (PlaceReading.Unclear) reading;
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            otter stone                     | 8350 | 20   | CHANNEL
            Otter St                        | 8350 | 20   | CHANNEL
            the big rock                    | 8350 | 20   | CHANNEL
            otter stone +50                 | 8400 | 25   | UNKNOWN
            otter stone + 50 m              | 8400 | 25   | UNKNOWN
            OTTER STONE −50m LB             | 8300 | 25   | LEFT
            150 m below Mill Bridge         | 4050 | 35   | UNKNOWN
            150m d/s of mill br.            | 4050 | 35   | UNKNOWN
            100 metres upstream from the mill | 4300 | 30 | UNKNOWN
            mill bridge 100 m above         | 4300 | 30   | UNKNOWN
            pont y felin, right bank        | 4200 | 20   | RIGHT
            weir 2                          | 2000 | 20   | UNKNOWN
            weir 21                         | 10000 | 20  | UNKNOWN
            otter pool ± 80 m               | 9000 | 80   | UNKNOWN
            sorn beck 0.3                   | 300  | 50   | UNKNOWN
            Arrel Water km 8.4 LB           | 8400 | 50   | LEFT
            left bank arrel water 8,45 km   | 8450 | 20   | LEFT
            arrel water km 8                | 8000 | 500  | UNKNOWN
            arrel water 8.412 +-30m         | 8412 | 30   | UNKNOWN
            """)
    void readsAPlace(String text, double metres, double uncertainty, Bank bank) {
        Place place = found(text);

        assertThat(place.chainage().metres()).isCloseTo(metres, within(1e-6));
        assertThat(place.uncertaintyMetres()).isCloseTo(uncertainty, within(1e-9));
        assertThat(place.bank()).isEqualTo(bank);
        assertThat(place.lineVersion()).isEqualTo(3);
    }

    /** A bare km is clear only where the river is. */
    @Test
    void asksForTheRiverOfABareKm() {
        assertThat(unclear("km 1.2").question().key()).isEqualTo("place.whichRiver");
        assertThat(unclear("1.2").choices()).hasSize(2);
        assertThat(places.read("1.2", Optional.of(BECK))).isInstanceOf(PlaceReading.Found.class);
        assertThat(unclear("km 8.4").choices())
                .as("only one river is that long, but say so")
                .hasSize(1);
    }

    @Test
    void asksWhereANameIsAmbiguous() {
        PlaceReading.Unclear otter = unclear("otter");

        assertThat(otter.question().key()).isEqualTo("place.ambiguous");
        assertThat(otter.choices())
                .extracting(choice -> choice.place().chainage().km())
                .containsExactly(8.35, 9.0);
        assertThat(unclear("footbridge").choices()).hasSize(2);
        assertThat(places.read("footbridge", Optional.of(BECK))).isInstanceOf(PlaceReading.Found.class);
    }

    @ParameterizedTest
    @CsvSource({
        "oter stone, place.unknown.similar",
        "heron island, place.unknown",
        "below mill bridge, place.howFar",
        "mill bridge sideways, place.leftover",
        "'', place.empty",
        "arrel water km 31.2, place.beyondLine",
        "6000 m below mill bridge, place.beyondLine",
        "152.104 -3.412, place.noCoordinates"
    })
    void saysWhatIsUnclear(String text, String key) {
        assertThat(unclear(text).question().key()).isEqualTo(key);
    }

    @Test
    void refusesALandmarkOfAnotherRiver() {
        PlaceReading reading = places.read("mill bridge", Optional.of(BECK));

        assertThat(((PlaceReading.Unclear) reading).question().key()).isEqualTo("place.otherRiver");
    }

    /** 0.001° of longitude at 52.12° N is 68.5 m on WGS84, so 0.0005° lies within 50 m and 0.002° does not. */
    @ParameterizedTest
    @ValueSource(strings = {"52.1200, -3.4005", "52.1200N 3.4005W", "52.1200,-3.4005", "N52.1200 W3.4005"})
    void takesCoordinatesNearTheRiver(String text) {
        Place place = found(text);

        assertThat(place.chainage().metres()).isCloseTo(2225.3, within(1.0));
        assertThat(place.uncertaintyMetres()).isEqualTo(30);
    }

    @Test
    void asksAboutCoordinatesOffTheRiverAndHoldsBackThoseFarOff() {
        assertThat(unclear("52.1200, -3.4020").question().key()).isEqualTo("place.ask");
        assertThat(unclear("52.1200, -3.4020").choices()).hasSize(1);
        assertThat(unclear("52.1200, -3.4100").question().key()).isEqualTo("place.held");
        assertThat(unclear("52.1200, -3.4100").choices()).isEmpty();
        assertThat(unclear("52.2006, -3.4000").question().key()).isEqualTo("place.pastEnd");
    }

    @Test
    void neverMovesAPointToTheWrongRiverAtAConfluence() {
        GeoPoint atTheMouth = new GeoPoint(52.1502, -3.3997);

        PlaceReading anyRiver = places.atPoint(atTheMouth, OptionalDouble.of(20), Optional.empty());
        PlaceReading main = places.atPoint(atTheMouth, OptionalDouble.of(20), Optional.of(ARREL));

        assertThat(((PlaceReading.Unclear) anyRiver).question().key()).isEqualTo("place.severalNear");
        assertThat(((PlaceReading.Unclear) anyRiver).choices())
                .extracting(choice -> choice.place().riverId())
                .containsExactlyInAnyOrder(ARREL, BECK);
        assertThat(((PlaceReading.Found) main).place().uncertaintyMetres()).isEqualTo(20);
    }

    /**
     * PROJ 9.1.1, EPSG 27700 with transformation 1314: the middle of SO 042 500 lies at 52.140417, −3.400536. A degree of
     * latitude holds 111.26 km here.
     */
    @Test
    void findsTheMiddleOfAGridSquareAsUncertainAsTheSquare() {
        Place hundredMetres = found("SO 042 500 LB");

        assertThat(hundredMetres.riverId()).isEqualTo(ARREL);
        assertThat(hundredMetres.bank()).isEqualTo(Bank.LEFT);
        assertThat(hundredMetres.chainage().metres()).isCloseTo(0.040417 * 111_260, within(10.0));
        assertThat(hundredMetres.uncertaintyMetres()).isCloseTo(71, within(0.5));
    }
}
