package org.ouzelbook.tracker.river;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.river.Pieces.Piece;

class PiecesTest {
    /** All over the earth, at both poles and the antimeridian; the points lie up to a quarter of the earth away. */
    @ParameterizedTest
    @CsvSource({"0, 0", "0, 90", "89.9, 10", "-89.9, -170", "45, 45", "35.3, -135", "16.5, 180", "-52, -20"})
    void findsWhatLookingAtEveryPieceFinds(double latitude, double longitude) {
        Random random = new Random(11);
        List<GeoPoint> vertices = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            vertices.add(somewhere(latitude, longitude, 0.02, random));
        }
        List<Piece> all = new ArrayList<>();
        for (int i = 0; i + 1 < vertices.size(); i++) {
            all.add(new Piece(i, Earth.inSpace(vertices.get(i)), Earth.inSpace(vertices.get(i + 1))));
        }
        Pieces pieces = Pieces.between(vertices);

        for (double reach : new double[] {0.001, 0.1, 60}) {
            Coordinate point = Earth.inSpace(somewhere(latitude, longitude, reach, random));
            Comparator<Piece> nearer = Comparator.comparingDouble(piece -> piece.distance(point));
            double nearest = all.stream().min(nearer).orElseThrow().distance(point);

            assertThat(pieces.nearest(point).distance(point)).isCloseTo(nearest, within(1e-6));
            assertThat(pieces.within(point, 1.2 * nearest + 50))
                    .isSortedAccordingTo(nearer)
                    .containsExactlyInAnyOrderElementsOf(all.stream()
                            .filter(piece -> piece.distance(point) <= 1.2 * nearest + 50)
                            .toList());
        }
    }

    private static GeoPoint somewhere(double latitude, double longitude, double reach, Random random) {
        double north = latitude + reach * random.nextDouble(-1, 1);
        double east = longitude + reach * random.nextDouble(-1, 1);
        return new GeoPoint(Math.max(-90, Math.min(90, north)), Math.IEEEremainder(east, 360));
    }
}
