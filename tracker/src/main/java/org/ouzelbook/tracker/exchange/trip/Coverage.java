package org.ouzelbook.tracker.exchange.trip;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Direction;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.river.MeasuredLine;
import org.ouzelbook.tracker.river.RiverNetwork;
import org.ouzelbook.tracker.river.Snap;

/**
 * What of a river a track covers: the water between neighbouring points of the track that both lie within 100 m of the line and
 * not more than 500 m of water apart (common practice, no source).
 *
 * @param river the river that most points of the track lie beside
 * @param walked from the lowest to the highest covered place
 * @param covered what of it is covered, as separate stretches going upstream
 * @param direction the way along the river; empty for a walk there and back
 */
record Coverage(River river, Stretch walked, List<Stretch> covered, Optional<Direction> direction) {
    private static final double BESIDE_METRES = 100;
    private static final double FARTHEST_APART_METRES = 500;

    /** {@return what the track covers; empty if it lies beside no river} */
    static Optional<Coverage> of(Track track, RiverNetwork rivers) {
        Optional<Coverage> most = Optional.empty();
        for (River river : rivers.rivers()) {
            Optional<Coverage> here = rivers.measuredLine(river.id()).flatMap(line -> of(track, river, line));
            if (here.isPresent()
                    && (most.isEmpty() || here.get().metres() > most.get().metres())) {
                most = here;
            }
        }
        return most;
    }

    /** {@return whether a point of the track lies beside a river at all} */
    static boolean isBeside(Track track, RiverNetwork rivers) {
        return rivers.rivers().stream()
                .flatMap(river -> rivers.measuredLine(river.id()).stream())
                .anyMatch(line -> track.segments().stream()
                        .flatMap(List::stream)
                        .anyMatch(point -> line.nearest(point).offsetMetres() <= BESIDE_METRES));
    }

    private static Optional<Coverage> of(Track track, River river, MeasuredLine line) {
        List<Stretch> pieces = new ArrayList<>();
        List<Chainage> passed = new ArrayList<>();
        for (List<GeoPoint> segment : track.segments()) {
            Optional<Chainage> before = Optional.empty();
            for (GeoPoint point : segment) {
                Snap snap = line.nearest(point);
                Optional<Chainage> here =
                        snap.offsetMetres() <= BESIDE_METRES ? Optional.of(snap.chainage()) : Optional.empty();
                here.ifPresent(passed::add);
                if (before.isPresent()
                        && here.isPresent()
                        && before.get().distanceTo(here.get()) <= FARTHEST_APART_METRES) {
                    pieces.add(Stretch.between(before.get(), here.get()));
                }
                before = here;
            }
        }
        List<Stretch> covered = Stretch.union(pieces);
        if (Stretch.totalLength(covered) <= 0) {
            return Optional.empty();
        }
        Stretch walked = new Stretch(
                covered.get(0).lower(), covered.get(covered.size() - 1).upper());
        return Optional.of(new Coverage(river, walked, covered, direction(passed, walked)));
    }

    private static Optional<Direction> direction(List<Chainage> passed, Stretch walked) {
        double net = passed.get(passed.size() - 1).metres() - passed.get(0).metres();
        if (Math.abs(net) < walked.length() / 2) {
            return Optional.empty();
        }
        return Optional.of(net > 0 ? Direction.UPSTREAM : Direction.DOWNSTREAM);
    }

    private double metres() {
        return Stretch.totalLength(covered);
    }

    /** {@return the share of a stretch of the river that is covered, 0 to 1} */
    double shareOf(Stretch stretch) {
        double inside = covered.stream()
                .flatMap(piece -> piece.intersection(stretch).stream())
                .mapToDouble(Stretch::length)
                .sum();
        return inside / stretch.length();
    }

    /** {@return the stretches between what is covered} */
    List<Stretch> gaps() {
        List<Stretch> gaps = new ArrayList<>();
        for (int i = 1; i < covered.size(); i++) {
            gaps.add(Stretch.between(covered.get(i - 1).upper(), covered.get(i).lower()));
        }
        return gaps;
    }
}
