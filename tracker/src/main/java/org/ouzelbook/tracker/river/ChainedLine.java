package org.ouzelbook.tracker.river;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.ouzelbook.tracker.domain.GeoPoint;

/**
 * The pieces of a drawn river put together into one line, which runs the way most of its pieces were drawn.
 *
 * <p>Pieces join where they share an end. What remains apart is joined over the smallest gaps. The line is the longest way
 * through all of that; where channels part and meet again it takes the shorter one.
 *
 * @param points the line
 * @param pieces how many pieces are in it
 * @param turned how many of these were drawn against the others
 * @param gaps gaps between pieces that follow each other on the line, in its order; those of at most 5 m, which is a slip of
 *     the drawing, are closed and not listed
 * @param leftOutMetres lengths of the pieces that are not in the line: side channels, and what lies beyond gaps too wide
 */
record ChainedLine(List<GeoPoint> points, int pieces, int turned, List<Gap> gaps, List<Double> leftOutMetres) {
    /** Gaps of at most this many metres are slips of the drawing. Common practice, no source. */
    static final double SLIP_METRES = 5;

    ChainedLine {
        points = List.copyOf(points);
        gaps = List.copyOf(gaps);
        leftOutMetres = List.copyOf(leftOutMetres);
    }

    /** A gap on the line. */
    record Gap(GeoPoint from, GeoPoint to, double metres) {}

    /** A piece, or a part of it between two places where others join; from one node of the web to another. */
    record Part(int piece, List<GeoPoint> points, boolean gap) {
        GeoPoint start() {
            return points.get(0);
        }

        GeoPoint end() {
            return points.get(points.size() - 1);
        }

        double length() {
            return MeasuredLine.length(points);
        }
    }

    /**
     * {@return the line through these pieces; empty if none has any length}
     *
     * @param drawn pieces of line
     * @param widestGap gaps wider than this, in metres, are not crossed
     */
    static Optional<ChainedLine> of(List<List<GeoPoint>> drawn, double widestGap) {
        List<Part> parts = parts(drawn);
        if (parts.isEmpty()) {
            return Optional.empty();
        }
        Set<GeoPoint> nodes = new LinkedHashSet<>();
        parts.forEach(part -> nodes.addAll(List.of(part.start(), part.end())));
        List<Part> web = new ArrayList<>(parts);
        web.addAll(Gaps.closing(List.copyOf(nodes), parts, Math.max(widestGap, SLIP_METRES)));
        return Optional.of(along(LongestWay.through(web), parts));
    }

    private static List<Part> parts(List<List<GeoPoint>> drawn) {
        Set<GeoPoint> ends = new LinkedHashSet<>();
        Map<Set<GeoPoint>, List<GeoPoint>> distinct = new LinkedHashMap<>();
        for (List<GeoPoint> piece : drawn) {
            List<GeoPoint> clean = withoutRepeats(piece);
            if (clean.size() > 1) {
                distinct.putIfAbsent(new LinkedHashSet<>(clean), clean);
                ends.add(clean.get(0));
                ends.add(clean.get(clean.size() - 1));
            }
        }
        List<Part> parts = new ArrayList<>();
        int number = 0;
        for (List<GeoPoint> piece : distinct.values()) {
            int from = 0;
            for (int i = 1; i < piece.size(); i++) {
                if (ends.contains(piece.get(i)) || i == piece.size() - 1) {
                    parts.add(new Part(number, List.copyOf(piece.subList(from, i + 1)), false));
                    from = i;
                }
            }
            number++;
        }
        return parts;
    }

    private static List<GeoPoint> withoutRepeats(List<GeoPoint> points) {
        List<GeoPoint> clean = new ArrayList<>();
        for (GeoPoint point : points) {
            if (clean.isEmpty() || !clean.get(clean.size() - 1).equals(point)) {
                clean.add(point);
            }
        }
        return clean;
    }

    private static ChainedLine along(List<LongestWay.Step> way, List<Part> parts) {
        Map<Integer, Boolean> forwardByPiece = new HashMap<>();
        way.stream()
                .filter(step -> !step.part().gap())
                .forEach(step -> forwardByPiece.putIfAbsent(step.part().piece(), step.forward()));
        int forward = (int) forwardByPiece.values().stream().filter(f -> f).count();
        boolean reverse = forward * 2 < forwardByPiece.size();
        List<LongestWay.Step> steps = reverse ? LongestWay.reversed(way) : way;

        List<GeoPoint> points = new ArrayList<>();
        List<Gap> gaps = new ArrayList<>();
        for (LongestWay.Step step : steps) {
            points.addAll(step.points());
            double metres = step.part().length();
            if (step.part().gap() && metres > SLIP_METRES) {
                gaps.add(new Gap(step.points().get(0), step.points().get(1), metres));
            }
        }
        Set<Part> used = new HashSet<>();
        steps.forEach(step -> used.add(step.part()));
        List<Double> leftOut = parts.stream()
                .filter(part -> !used.contains(part))
                .map(Part::length)
                .filter(metres -> metres > SLIP_METRES)
                .toList();
        int turned = Math.min(forward, forwardByPiece.size() - forward);
        return new ChainedLine(withoutRepeats(points), forwardByPiece.size(), turned, gaps, leftOut);
    }
}
