package org.ouzelbook.tracker.river;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.RiverLine;

class MeasuredLineTest {
    private final MeasuredLine river = MeasuredLine.of(reference());

    /** The invented line of {@code measured-river.csv}. */
    static List<GeoPoint> reference() {
        List<GeoPoint> points = new ArrayList<>();
        try (BufferedReader rows = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(MeasuredLineTest.class.getResourceAsStream("measured-river.csv")),
                StandardCharsets.UTF_8))) {
            rows.lines()
                    .skip(1)
                    .map(row -> row.split(","))
                    .forEach(cells ->
                            points.add(new GeoPoint(Double.parseDouble(cells[1]), Double.parseDouble(cells[2]))));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        return points;
    }

    /** Karney (2013), test set of GeographicLib; our pieces of 500 m must add up to the whole geodesic. */
    @ParameterizedTest
    @CsvFileSource(resources = "karney-geodesics.csv", numLinesToSkip = 1)
    void reproducesKarneysGeodesics(double lat1, double lon1, double lat2, double lon2, double metres) {
        List<GeoPoint> line = List.of(new GeoPoint(lat1, between180(lon1)), new GeoPoint(lat2, between180(lon2)));

        assertThat(MeasuredLine.length(line)).isCloseTo(metres, within(1e-6));
        assertThat(MeasuredLine.of(line).length()).isCloseTo(metres, within(1e-3));
    }

    private static double between180(double longitude) {
        return longitude > 180 ? longitude - 360 : longitude;
    }

    @ParameterizedTest
    @CsvFileSource(resources = "measured-river.csv", numLinesToSkip = 1)
    void findsEachVertexAtItsGeodesicChainage(int vertex, double latitude, double longitude, double metres) {
        Snap snap = river.nearest(new GeoPoint(latitude, longitude));

        assertThat(snap.chainage().metres()).isCloseTo(metres, within(1e-3));
        assertThat(snap.offsetMetres()).isCloseTo(0, within(1e-6));
        assertThat(Earth.distance(
                        river.point(snap.chainage()).orElseThrow(), reference().get(vertex)))
                .isCloseTo(0, within(1e-3));
    }

    /** Half-way point computed with GeographicLib; 12 decimals are 0.1 µm, our pieces cost a little. */
    @Test
    void findsTheHalfWayPoint() {
        assertThat(river.length()).isCloseTo(4416.004531483, within(1e-6));

        GeoPoint middle = river.point(new Chainage(4416.004531483 / 2)).orElseThrow();

        assertThat(middle.latitude()).isCloseTo(42.920908731147, within(1e-9));
        assertThat(middle.longitude()).isCloseTo(-0.498619743681, within(1e-9));
    }

    /**
     * Snapped in the plane of UTM zone 30N (PROJ), whose scale here is 1.0001, hence the tolerance. The points are UTM
     * (703500, 4753600) and (704400, 4755100) turned into degrees.
     */
    @ParameterizedTest
    @CsvSource({"42.90787870, -0.50710308, 463.339923, 143.092036", "42.92113308, -0.49554151, 2488.919824, 165.299520"
    })
    void snapsAsAPlaneOfTheMapDoes(double latitude, double longitude, double chainage, double offset) {
        Snap snap = river.nearest(new GeoPoint(latitude, longitude));

        assertThat(snap.chainage().metres()).isCloseTo(chainage, within(0.5));
        assertThat(snap.offsetMetres()).isCloseTo(offset, within(0.5));
        assertThat(snap.beyond()).isEmpty();
    }

    @Test
    void saysThatAPointLiesPastAnEnd() {
        Snap below = river.nearest(new GeoPoint(42.90174074, -0.51469953));

        assertThat(below.beyond()).contains(Snap.End.LOWER);
        assertThat(below.chainage().metres()).isZero();
        assertThat(below.offsetMetres()).as("UTM (702900, 4752900), PROJ").isCloseTo(422.019387, within(0.5));
        assertThat(river.nearest(new GeoPoint(42.9400, -0.4840)).beyond()).contains(Snap.End.UPPER);
        assertThat(river.point(new Chainage(4500))).isEmpty();
    }

    @Test
    void agreesWithLookingAtEveryMetre() {
        Random random = new Random(7);
        for (int i = 0; i < 40; i++) {
            GeoPoint ground = new GeoPoint(42.90 + 0.04 * random.nextDouble(), -0.52 + 0.04 * random.nextDouble());
            double best = Double.POSITIVE_INFINITY;
            for (double metres = 0; metres <= 4416; metres++) {
                best = Math.min(
                        best,
                        Earth.distance(ground, river.point(new Chainage(metres)).orElseThrow()));
            }
            assertThat(river.nearest(ground).offsetMetres()).isBetween(best - 0.6, best + 1e-6);
        }
    }

    /** One metre of the antimeridian line is as one metre anywhere: 179.9° E to 179.9° W at 16.5° S, GeographicLib. */
    @Test
    void crossesTheAntimeridian() {
        MeasuredLine line = MeasuredLine.of(List.of(new GeoPoint(-16.5, 179.9), new GeoPoint(-16.5, -179.9)));

        assertThat(line.length()).isCloseTo(21352.8301008166, within(1e-6));
        assertThat(line.nearest(new GeoPoint(-16.5, 180)).chainage().metres()).isCloseTo(21352.83 / 2, within(0.01));
        assertThat(line.nearest(new GeoPoint(-16.51, -179.95)).offsetMetres()).isBetween(1100.0, 1110.0);
    }

    @Test
    void staysSaneNearThePole() {
        MeasuredLine line = MeasuredLine.of(List.of(new GeoPoint(89.9, 0), new GeoPoint(89.9, 180)));

        Snap pole = line.nearest(new GeoPoint(90, 77));

        assertThat(pole.offsetMetres()).isCloseTo(0, within(0.01));
        assertThat(pole.chainage().metres()).isCloseTo(line.length() / 2, within(0.01));
    }

    @Test
    void tellsBothPlacesAtATightBend() {
        MeasuredLine hairpin = MeasuredLine.of(List.of(
                new GeoPoint(52.1000, -3.4000), new GeoPoint(52.1000, -3.3900),
                new GeoPoint(52.1005, -3.3900), new GeoPoint(52.1005, -3.4000)));
        GeoPoint betweenTheArms = new GeoPoint(52.10024, -3.3980);

        List<Snap> candidates = hairpin.candidates(betweenTheArms, 30);

        assertThat(candidates)
                .extracting(snap -> Math.round(snap.chainage().metres()))
                .containsExactly(137L, 1289L);
        assertThat(hairpin.candidates(new GeoPoint(52.0990, -3.3980), 30)).hasSize(1);
    }

    @Test
    void keepsTheKmOfALineThatStartsAboveTheMouth() {
        RiverLine upper = new RiverLine(new UUID(0, 1), 1, Chainage.ofKm(12), reference(), "invented");

        MeasuredLine line = MeasuredLine.of(upper);

        assertThat(line.extent().lower()).isEqualTo(Chainage.ofKm(12));
        assertThat(line.extent().upper().metres()).isCloseTo(16416.0045, within(1e-3));
        assertThat(line.nearest(reference().get(3)).chainage().metres()).isCloseTo(13090.312071, within(1e-3));
        assertThat(line.point(Chainage.ofKm(11.9))).isEmpty();
    }
}
