package org.ouzelbook.tracker.grid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ouzelbook.tracker.domain.GeoPoint;

class GridReferenceTest {
    private static GridSquare square(String text) {
        GridReading reading = GridReference.of(text);
        assertThat(reading).as(text).isInstanceOf(GridReading.Read.class);
        return ((GridReading.Read) reading).square();
    }

    private static String refusal(String text) {
        GridReading reading = GridReference.of(text);
        assertThat(reading).as(text).isInstanceOf(GridReading.Refused.class);
        return ((GridReading.Refused) reading).why().key();
    }

    private static double metres(GeoPoint point, double latitude, double longitude) {
        return Geodesic.WGS84.Inverse(point.latitude(), point.longitude(), latitude, longitude).s12;
    }

    /**
     * Ordnance Survey, OSTN15/OSGM15 transformation test data (2016): easting and northing, ETRS89 latitude and longitude.
     * A shift of seven parameters is good to about 5 m over Great Britain, says A Guide to Coordinate Systems in Great
     * Britain, section 6.6; cutting to whole metres moves a point by at most 0.71 m more.
     */
    @ParameterizedTest
    @CsvSource(textBlock = """
            SV 91492 11318, 49.92226394, -6.29977752
            SX 50359 62016, 50.43885826, -4.10864564
            ST 62269 69978, 51.42754743, -2.54407618
            TQ 30624 78388, 51.48936565, -0.11992557
            SN 41124 20332, 51.85890896, -4.30852477
            TF 62180 19784, 52.75136687,  0.40153547
            SE 22242 33818, 53.80021520, -1.66379168
            NY 39921 56034, 54.89542340, -2.93827741
            NH 67056 46176, 57.48625001, -4.21926399
            NA 71713 38516, 58.21262247, -7.59255561
            NC 99721 67202, 58.58120461, -3.72631022
            HU 40725 07878, 59.85409914, -1.27486910
            """)
    void agreesWithTheTestPointsOfGreatBritain(String reference, double latitude, double longitude) {
        assertThat(metres(square(reference).centre(), latitude, longitude)).isLessThan(5 + Math.sqrt(0.5));
    }

    /** EPSG registry, the middles of the areas of use of EPSG 29903 and 2157 as epsg.io prints them, to 0.01 degrees. */
    @ParameterizedTest
    @CsvSource(textBlock = """
            N 03374 39960
            ITM 603324 739986
            """)
    void agreesWithTheRegistryInIreland(String reference) {
        GeoPoint centre = square(reference).centre();

        assertThat(centre.latitude()).isCloseTo(53.41, within(0.005));
        assertThat(centre.longitude()).isCloseTo(-7.95, within(0.005));
    }

    /** PROJ 9.1.1, {@code cs2cs EPSG:29903 EPSG:4326} with EPSG transformation 1954: a general reference, to 1e-7 degrees. */
    @Test
    void agreesWithAGeneralReferenceInIreland() {
        assertThat(metres(square("N 03374 39960").centre(), 53.4099978, -7.9499949))
                .isLessThan(1);
    }

    /** GeographicLib, GeoConvert(1), examples, which print five decimals; 4Q FJ by PROJ 9.1.1, EPSG 32604, to seven. */
    @ParameterizedTest
    @CsvSource(textBlock = """
            38SMB4488,              33.33424,     44.40363,      1
            38S MB 44 88,           33.33424,     44.40363,      1
            4Q FJ 12345 67890,      21.4098012, -157.9160763,    0.1
            38N 444500 3688500,     33.33424,     44.40363,      1
            38S 444500 3688500,     33.33424,     44.40363,      1
            """)
    void agreesWithGeneralReferencesOnTheWorldGrid(String reference, double latitude, double longitude, double within) {
        assertThat(metres(square(reference).centre(), latitude, longitude)).isLessThan(within);
    }

    /** Chapman and Wieczorek (2020), Georeferencing Best Practices: the middle, and half of the diagonal. */
    @ParameterizedTest
    @CsvSource(textBlock = """
            NY2154407210, 0.7
            NY 2154 0721, 7
            ny215072,     71
            NGR: NY 21 07, 707
            NY20M,        1414
            NY20,         7071
            H 123 456,    71
            30U VF 4500 4000, 7
            """)
    void isAsUncertainAsItsSquare(String reference, double radius) {
        assertThat(square(reference).radiusMetres()).isCloseTo(radius, within(0.5));
    }

    @Test
    void namesTheMiddleOfTheSquare() {
        GeoPoint wide = square("NY 21 07").centre();
        GeoPoint middle = square("NY 2150 0750").centre();

        assertThat(metres(wide, middle.latitude(), middle.longitude())).isCloseTo(7.07, within(0.1));
    }

    /** M is the thirteenth letter of A to Z without O, and letters go up column by column: 4 km east, 4 km north. */
    @Test
    void readsTheLetterOfASquareOf2Km() {
        GeoPoint tetrad = square("NY20M").centre();
        GeoPoint middle = square("NY 25000 05000").centre();

        assertThat(metres(tetrad, middle.latitude(), middle.longitude())).isLessThan(1);
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            215072,              place.grid.noLetters
            NY 12345 6789,       place.grid.unequal
            NY 21507,            place.grid.unequal
            NY 123456 123456,    place.grid.unequal
            IY 123 456,          place.grid.noSquare
            AB 123 456,          place.grid.noSquare
            NY20O,               place.grid.letterBehind
            NY215072A,           place.grid.letterBehind
            61U VF 4500 4000,    place.grid.noZone
            30I VF 4500 4000,    place.grid.noSquare
            30U AF 4500 4000,    place.grid.noSquare
            30T VF 4500 4000,    place.grid.noSquare
            30C 445000 6040000,  place.grid.otherBand
            below the mill,      place.grid.unknown
            """)
    void tellsWhyItNamesNoSquare(String reference, String key) {
        assertThat(refusal(reference)).isEqualTo(key);
    }

    @ParameterizedTest
    @ValueSource(strings = {"GL 2", "DI 2 1", "NE 12", "km 8.4", "NY 21 07", "CS 4 juv", "30 m below Mill Bridge"})
    void findsNoneAmongWordsThatMeanSomethingElse(String words) {
        assertThat(GridReference.amongWords(words)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"NY 215 072", "ny215072", "O 159 343", "30U VF 4500 4000", "ITM 715830 734697"})
    void findsFineOnesAmongWords(String words) {
        assertThat(GridReference.amongWords(words)).isPresent();
    }
}
