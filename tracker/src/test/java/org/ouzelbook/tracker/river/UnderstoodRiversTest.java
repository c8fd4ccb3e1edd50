package org.ouzelbook.tracker.river;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.river.RiverAnswers.Mouth;
import org.ouzelbook.tracker.river.UnderstoodRiver.MouthBy;

class UnderstoodRiversTest {
    /** Degrees of latitude that make a metre at 52° N on WGS84: a degree is 111 267 m there. */
    private static final double METRE = 1 / 111267.0;

    private static DrawnRiver drawn(String name, String mouthOn, List<List<GeoPoint>> pieces) {
        return new DrawnRiver(
                name, Optional.of(mouthOn).filter(n -> !n.isEmpty()), 0, pieces, false, "invented.geojson");
    }

    /** A line down a meridian, from the source at 52° N + {@code from} metres to its mouth at {@code to} metres. */
    private static List<GeoPoint> south(double from, double to) {
        List<GeoPoint> points = new ArrayList<>();
        for (int i = 0; i <= 4; i++) {
            points.add(new GeoPoint(52 + METRE * (from + (to - from) * i / 4), -3.4));
        }
        return points;
    }

    private static List<GeoPoint> turned(List<GeoPoint> points) {
        List<GeoPoint> turned = new ArrayList<>(points);
        Collections.reverse(turned);
        return turned;
    }

    private static List<GeoPoint> axesSwapped(List<GeoPoint> points) {
        return points.stream()
                .map(point -> new GeoPoint(point.longitude(), point.latitude()))
                .toList();
    }

    /** 37 pieces of 335 m drawn downstream in no order, three of them upstream, and one gap of 60 m. */
    private static List<List<GeoPoint>> thirtySevenPieces() {
        List<List<GeoPoint>> pieces = new ArrayList<>();
        double top = 37 * 335 + 60;
        for (int i = 0; i < 37; i++) {
            double shift = i < 14 ? 0 : 60;
            List<GeoPoint> piece = south(top - shift - i * 335, top - shift - (i + 1) * 335);
            pieces.add(i == 3 || i == 20 || i == 36 ? turned(piece) : piece);
        }
        Collections.shuffle(pieces, new Random(3));
        return pieces;
    }

    @Test
    void asksAboutAGapAndSaysWhereItIs() {
        UnderstoodRivers rivers =
                UnderstoodRivers.of(List.of(drawn("Arrel Water", "", thirtySevenPieces())), RiverAnswers.NONE);

        assertThat(rivers.questions()).extracting(Message::key).containsExactly("river.gap");
        assertThat((Double) rivers.questions().get(0).facts().get(1)).isCloseTo(60, within(0.1));
        assertThat(((Chainage) rivers.questions().get(0).facts().get(2)).km()).isCloseTo(23 * 0.335, within(0.001));
    }

    @Test
    void chainsManyPiecesIntoOneLineGoingUpstream() {
        RiverAnswers bridge = new RiverAnswers(Map.of(), Map.of(), 61, false);

        UnderstoodRivers rivers = UnderstoodRivers.of(List.of(drawn("Arrel Water", "", thirtySevenPieces())), bridge);

        assertThat(rivers.questions()).isEmpty();
        UnderstoodRiver river = rivers.rivers().get(0);
        assertThat(river.lengthMetres()).isCloseTo(37 * 335 + 60, within(3.0));
        assertThat(river.pieces()).isEqualTo(37);
        assertThat(river.turned()).isEqualTo(3);
        assertThat(river.gaps()).hasSize(1);
        assertThat(river.gaps().get(0).at().km()).isCloseTo(23 * 0.335, within(0.001));
        assertThat(river.leftOutMetres()).isEmpty();
        assertThat(river.mouthBy()).isEqualTo(MouthBy.DRAWN_DOWNSTREAM);
        assertThat(river.lowerEnd().latitude()).isLessThan(river.upperEnd().latitude());
    }

    @Test
    void leavesOutWhatLiesBeyondAGap() {
        RiverAnswers leave = new RiverAnswers(Map.of(), Map.of(), 0, true);

        UnderstoodRiver river = UnderstoodRivers.of(List.of(drawn("Arrel Water", "", thirtySevenPieces())), leave)
                .rivers()
                .get(0);

        assertThat(river.lengthMetres()).isCloseTo(23 * 335, within(2.0));
        assertThat(river.leftOutMetres()).hasSize(14);
    }

    @Test
    void turnsTheLineWhenToldWhereTheMouthIs() {
        List<DrawnRiver> river = List.of(drawn("Arrel Water", "", List.of(south(5000, 0))));

        for (Mouth mouth : List.of(new Mouth.First(), new Mouth.Near(new GeoPoint(52.04, -3.4)))) {
            UnderstoodRiver told = UnderstoodRivers.of(river, new RiverAnswers(Map.of("", mouth), Map.of(), 0, false))
                    .rivers()
                    .get(0);
            assertThat(told.mouthBy()).isEqualTo(MouthBy.TOLD);
            assertThat(told.lowerEnd().latitude()).isGreaterThan(told.upperEnd().latitude());
        }
    }

    @Test
    void joinsATributaryAtTheEndNearestToItsRiver() {
        List<GeoPoint> beck = new ArrayList<>();
        beck.add(new GeoPoint(52 + METRE * 2000, -3.39));
        beck.add(new GeoPoint(52 + METRE * 2000, -3.3999));
        UnderstoodRivers rivers = UnderstoodRivers.of(
                List.of(
                        drawn("Sorn Beck", "ARREL water", List.of(turned(beck))),
                        drawn("Arrel Water", "", List.of(south(5000, 0)))),
                RiverAnswers.NONE);

        assertThat(rivers.questions()).isEmpty();
        assertThat(rivers.rivers())
                .extracting(river -> river.river().name())
                .containsExactly("Arrel Water", "Sorn Beck");
        UnderstoodRiver tributary = rivers.rivers().get(1);
        assertThat(tributary.mouthBy()).isEqualTo(MouthBy.JOINS);
        assertThat(tributary.lowerEnd().longitude()).isEqualTo(-3.3999);
        assertThat(tributary.river().mouth().orElseThrow().chainage().metres()).isCloseTo(2000, within(1.0));
        assertThat(tributary.metresFromReceiving().orElseThrow()).isCloseTo(6.87, within(0.05));
    }

    @Test
    void proposesThatANearRiverJoins() {
        List<List<GeoPoint>> beck =
                List.of(List.of(new GeoPoint(52 + METRE * 2000, -3.3999), new GeoPoint(52 + METRE * 2000, -3.39)));
        List<DrawnRiver> drawn =
                List.of(drawn("Sorn Beck", "", beck), drawn("Arrel Water", "", List.of(south(5000, 0))));

        assertThat(UnderstoodRivers.of(drawn, RiverAnswers.NONE).questions())
                .extracting(Message::key)
                .containsExactly("river.joins");

        RiverAnswers joins = new RiverAnswers(Map.of(), Map.of("sorn beck", Optional.of("Arrel Water")), 0, false);
        assertThat(UnderstoodRivers.of(drawn, joins).rivers().get(1).river().mouth())
                .isPresent();

        RiverAnswers alone = new RiverAnswers(Map.of(), Map.of("Sorn Beck", Optional.empty()), 0, false);
        assertThat(UnderstoodRivers.of(drawn, alone).questions()).isEmpty();
        assertThat(UnderstoodRivers.of(drawn, alone).rivers().get(0).river().mouth())
                .isEmpty();
    }

    @Test
    void keepsTheMainLineAndSaysWhatIsLeftOver() {
        List<GeoPoint> main = south(5000, 0);
        GeoPoint fork = main.get(2);
        List<GeoPoint> branch = List.of(new GeoPoint(fork.latitude(), -3.395), fork);

        UnderstoodRiver river = UnderstoodRivers.of(
                        List.of(drawn("Arrel Water", "", List.of(branch, main))), RiverAnswers.NONE)
                .rivers()
                .get(0);

        assertThat(river.lengthMetres()).isCloseTo(5000, within(2.0));
        assertThat(river.leftOutMetres()).hasSize(1);
        assertThat(river.leftOutMetres().get(0)).isCloseTo(343, within(2.0));
    }

    @Test
    void closesSlipsOfTheDrawingAndForgetsRepeatedPoints() {
        List<GeoPoint> lower = new ArrayList<>(south(2500, 0));
        lower.add(1, lower.get(0));
        UnderstoodRiver river = UnderstoodRivers.of(
                        List.of(drawn("Arrel Water", "", List.of(lower, south(5000, 2503), lower))), RiverAnswers.NONE)
                .rivers()
                .get(0);

        assertThat(river.lengthMetres()).isCloseTo(5000, within(2.0));
        assertThat(river.gaps()).isEmpty();
        assertThat(river.leftOutMetres()).isEmpty();
        assertThat(river.line().points()).doesNotHaveDuplicates();
    }

    @Test
    void asksWhatTheDrawingLeavesOpen() {
        DrawnRiver walk = new DrawnRiver("Walk", Optional.empty(), 0, List.of(south(900, 0)), true, "walk.gpx");

        assertThat(keys(List.of(walk))).containsExactly("river.walked");
        assertThat(keys(List.of(drawn("Arrel Water", "Nowhere", List.of(south(9, 0))))))
                .containsExactly("river.unknown");
        assertThat(keys(List.of(drawn("Arrel Water", "", List.of(List.of(new GeoPoint(52, 1)))))))
                .containsExactly("river.noLength");
        assertThat(keys(List.of(
                        drawn("One", "Two", List.of(south(900, 0))), drawn("Two", "One", List.of(south(1800, 900))))))
                .containsExactly("river.circle");
        assertThat(keys(List.of(
                        drawn("One", "", List.of(south(900, 0))), drawn("Two", "One", List.of(south(3800, 1800))))))
                .containsExactly("river.mouthFar");
        assertThat(keys(List.of(
                        drawn("One", "", List.of(south(900, 0))),
                        drawn("Two", "One", List.of(axesSwapped(south(3800, 900)))))))
                .containsExactly("river.axesSwapped");
        assertThat(keys(List.of(
                        drawn("One", "", List.of(south(900, 0))), drawn("Leat", "One", List.of(south(700, 500))))))
                .containsExactly("river.bothEndsNear");
        assertThat(keys(List.of(drawn("Long", "", List.of(List.of(new GeoPoint(80, 0), new GeoPoint(-80, 0)))))))
                .containsExactly("river.tooLong");
    }

    private static List<String> keys(List<DrawnRiver> drawn) {
        return UnderstoodRivers.of(drawn, RiverAnswers.NONE).questions().stream()
                .map(Message::key)
                .toList();
    }
}
