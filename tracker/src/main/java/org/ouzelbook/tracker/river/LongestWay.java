package org.ouzelbook.tracker.river;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.Set;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.river.ChainedLine.Part;

/**
 * The longest of the shortest ways between two ends of a web of pieces: the main line of a river with side branches.
 *
 * <p>The end farthest from any end, and then the end farthest from that one, by the shortest ways between them (E. W. Dijkstra
 * 1959, Numer. Math. 1:269–271). In a web without meshes this is the longest way; at a mesh it takes the shorter side. Of
 * several webs apart from each other, the one with the longest way counts.
 */
final class LongestWay {
    private final Map<GeoPoint, List<Step>> stepsFrom = new LinkedHashMap<>();

    private LongestWay(List<Part> web) {
        for (Part part : web) {
            stepsFrom.computeIfAbsent(part.start(), key -> new ArrayList<>()).add(new Step(part, true));
            stepsFrom.computeIfAbsent(part.end(), key -> new ArrayList<>()).add(new Step(part, false));
        }
    }

    /** A part passed on the way, as drawn or against it. */
    record Step(Part part, boolean forward) {
        List<GeoPoint> points() {
            if (forward) {
                return part.points();
            }
            List<GeoPoint> points = new ArrayList<>(part.points());
            Collections.reverse(points);
            return points;
        }

        private GeoPoint start() {
            return forward ? part.start() : part.end();
        }

        private GeoPoint end() {
            return forward ? part.end() : part.start();
        }
    }

    /** The way back. */
    static List<Step> reversed(List<Step> way) {
        List<Step> back = new ArrayList<>();
        for (Step step : way) {
            back.add(0, new Step(step.part, !step.forward));
        }
        return back;
    }

    static List<Step> through(List<Part> web) {
        LongestWay ways = new LongestWay(web);
        Reached longest = new Reached(web.get(0).start(), 0, Map.of());
        List<GeoPoint> unseen = new ArrayList<>(ways.stepsFrom.keySet());
        Set<GeoPoint> seen = new HashSet<>();
        for (GeoPoint start : unseen) {
            if (!seen.contains(start)) {
                Reached any = ways.farthestFrom(start);
                seen.add(start);
                seen.addAll(any.arrivals.keySet());
                Reached far = ways.farthestFrom(any.end);
                longest = far.metres > longest.metres ? far : longest;
            }
        }
        return longest.way();
    }

    /** The farthest end, and by which step each end was reached. */
    private record Reached(GeoPoint end, double metres, Map<GeoPoint, Step> arrivals) {
        List<Step> way() {
            List<Step> way = new ArrayList<>();
            GeoPoint at = end;
            Step arrival = arrivals.get(at);
            while (arrival != null) {
                way.add(arrival);
                at = arrival.start();
                arrival = arrivals.get(at);
            }
            Collections.reverse(way);
            return way;
        }
    }

    private record Waiting(GeoPoint end, double metres) {}

    private Reached farthestFrom(GeoPoint start) {
        Map<GeoPoint, Double> best = new HashMap<>(Map.of(start, 0.0));
        Map<GeoPoint, Step> arrivals = new HashMap<>();
        PriorityQueue<Waiting> waiting = new PriorityQueue<>(Comparator.comparingDouble(Waiting::metres));
        waiting.add(new Waiting(start, 0));
        Waiting farthest = new Waiting(start, 0);
        while (!waiting.isEmpty()) {
            Waiting here = waiting.remove();
            if (here.metres > best.getOrDefault(here.end, Double.POSITIVE_INFINITY)) {
                continue;
            }
            farthest = here.metres > farthest.metres ? here : farthest;
            for (Step step : stepsFrom.getOrDefault(here.end, List.of())) {
                double there = here.metres + step.part.length();
                if (there < best.getOrDefault(step.end(), Double.POSITIVE_INFINITY)) {
                    best.put(step.end(), there);
                    arrivals.put(step.end(), step);
                    waiting.add(new Waiting(step.end(), there));
                }
            }
        }
        return new Reached(farthest.end, farthest.metres, arrivals);
    }
}
