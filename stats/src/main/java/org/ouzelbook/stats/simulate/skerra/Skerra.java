package org.ouzelbook.stats.simulate.skerra;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.stats.simulate.Draws;
import org.ouzelbook.stats.simulate.nature.Course;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.river.MeasuredLine;

/** The rivers of Skerra, an island that exists nowhere: its place on the globe is open ocean. */
final class Skerra {
    /** Where chance begins on Skerra. */
    static final long SEED = 3726;

    static final UUID ARREL = key("Arrel Water");
    static final UUID SORN = key("Sorn Beck");

    private static final double BECKFOOT_METRES = 6900;

    private final RiverLine arrelLine;
    private final RiverLine sornLine;
    private final River sorn;

    Skerra() {
        Draws draws = Draws.of(SEED).branch("rivers");
        GeoPoint mouth = new GeoPoint(51.962, -20.118);
        List<GeoPoint> arrelPoints =
                Meander.line(mouth, 18_200, List.of(70.0, 40.0, 62.0, 25.0, 48.0, 20.0), draws.branch("Arrel Water"));
        arrelLine = new RiverLine(ARREL, 1, new Chainage(0), arrelPoints, "rivers.geojson");
        MeasuredLine measured = MeasuredLine.of(arrelLine);
        int meeting = nearest(measured, arrelPoints, BECKFOOT_METRES);
        List<GeoPoint> sornPoints = Meander.line(
                arrelPoints.get(meeting), 7_100, List.of(125.0, 95.0, 120.0, 80.0), draws.branch("Sorn Beck"));
        sornLine = new RiverLine(SORN, 1, new Chainage(0), sornPoints, "rivers.geojson");
        Chainage beckfoot = measured.nearest(arrelPoints.get(meeting)).chainage();
        sorn = new River(SORN, "Sorn Beck", Optional.of(new River.Confluence(ARREL, beckfoot)));
    }

    private static UUID key(String name) {
        return UUID.nameUUIDFromBytes(("Skerra, " + name).getBytes(StandardCharsets.UTF_8));
    }

    private static int nearest(MeasuredLine line, List<GeoPoint> points, double metres) {
        int best = 0;
        for (int i = 0; i < points.size(); i++) {
            if (Math.abs(line.nearest(points.get(i)).chainage().metres() - metres)
                    < Math.abs(line.nearest(points.get(best)).chainage().metres() - metres)) {
                best = i;
            }
        }
        return best;
    }

    List<Course> courses() {
        return List.of(
                new Course(
                        new River(ARREL, "Arrel Water", Optional.empty()),
                        line(ARREL).length()),
                new Course(sorn, line(SORN).length()));
    }

    RiverLine drawn(UUID riverId) {
        return riverId.equals(ARREL) ? arrelLine : sornLine;
    }

    MeasuredLine line(UUID riverId) {
        return MeasuredLine.of(drawn(riverId));
    }

    static String name(UUID riverId) {
        return riverId.equals(ARREL) ? "Arrel Water" : "Sorn Beck";
    }
}
