package org.ouzelbook.stats.simulate.skerra;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.ouzelbook.stats.simulate.Draws;
import org.ouzelbook.tracker.domain.GeoPoint;

/**
 * The rivers as a map office hands them out: in pieces, shuffled, most of them drawn downstream and some upstream.
 *
 * <p>Source of the form: H. Butler et al. (2016), The GeoJSON Format, RFC 7946.
 */
final class DrawnRivers {
    /** Share of a step of the line that is missing. */
    private static final double SLIP = 0.08;

    private static final double ROAD = 1;

    private static final int ARREL_PIECES = 9;
    private static final int SORN_PIECES = 3;

    private DrawnRivers() {}

    /** All pieces, each meeting the next but for one slip of a few metres. */
    static String geoJson(Skerra skerra) {
        return geoJson(skerra, SLIP);
    }

    /** The same with one step of Arrel Water missing, as where a road covers the river. */
    static String withGap(Skerra skerra) {
        return geoJson(skerra, ROAD);
    }

    private static String geoJson(Skerra skerra, double gap) {
        Draws draws = Draws.of(Skerra.SEED).branch("map office");
        List<GeoPoint> arrel = skerra.drawn(Skerra.ARREL).points();
        List<List<GeoPoint>> pieces = pieces(arrel, ARREL_PIECES, gap, draws);
        List<String> features = new ArrayList<>();
        for (List<GeoPoint> piece : pieces) {
            features.add(feature("\"name\":\"Arrel Water\"", "LineString", coordinates(piece)));
        }
        String beck = pieces(skerra.drawn(Skerra.SORN).points(), SORN_PIECES, 0, draws).stream()
                .map(DrawnRivers::coordinates)
                .collect(Collectors.joining(",\n", "[", "]"));
        features.add(2, feature("\"name\":\"Sorn Beck\",\"mouth_on\":\"Arrel Water\"", "MultiLineString", beck));
        return "{\"type\":\"FeatureCollection\",\"features\":[\n" + String.join(",\n", features) + "\n]}\n";
    }

    /** Cuts a line into pieces, turns most of them downstream, and shuffles them. */
    private static List<List<GeoPoint>> pieces(List<GeoPoint> line, int count, double gap, Draws draws) {
        List<List<GeoPoint>> pieces = new ArrayList<>();
        int last = line.size() - 1;
        for (int i = 0; i < count; i++) {
            List<GeoPoint> piece = new ArrayList<>(line.subList(last * i / count, last * (i + 1) / count + 1));
            if (i == count / 2) {
                piece.set(0, between(piece.get(0), piece.get(1), gap));
            }
            boolean upstream = i % 4 == 2;
            if (!upstream) {
                Collections.reverse(piece);
            }
            pieces.add(draws.below(pieces.size() + 1), piece);
        }
        return pieces;
    }

    private static GeoPoint between(GeoPoint one, GeoPoint other, double share) {
        return new GeoPoint(
                one.latitude() + share * (other.latitude() - one.latitude()),
                one.longitude() + share * (other.longitude() - one.longitude()));
    }

    private static String feature(String properties, String type, String coordinates) {
        return "{\"type\":\"Feature\",\"properties\":{" + properties + "},\"geometry\":{\"type\":\"" + type
                + "\",\"coordinates\":" + coordinates + "}}";
    }

    private static String coordinates(List<GeoPoint> points) {
        return points.stream()
                .map(point -> String.format(Locale.ROOT, "[%.6f,%.6f]", point.longitude(), point.latitude()))
                .collect(Collectors.joining(",", "[", "]"));
    }
}
