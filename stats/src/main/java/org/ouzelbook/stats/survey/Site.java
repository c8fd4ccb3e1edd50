package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.river.MeasuredLine;

/**
 * A site: water that birds may occupy or not. A bird at the point where two sites meet belongs to the upper one.
 *
 * @param name its name; empty for a stretch that is told by its km
 * @param river its river
 * @param stretch the water
 */
public record Site(Optional<String> name, River river, Stretch stretch) {
    private static final double SHORT_END = 0.5;

    /** The sites of the water asked about, river by river, going upstream. */
    static List<Site> all(SurveyRecords records, Water water, SiteSettings settings) {
        List<Site> sites = new ArrayList<>();
        for (River river : records.rivers().rivers()) {
            List<Site> ofRiver = switch (settings.kind()) {
                case STRETCHES -> stretches(river, water(records, river), settings.stretchMetres());
                case REACHES -> reaches(records, river);
                case PLACES -> places(records, river, water(records, river), settings.placeMetres());
            };
            ofRiver.stream()
                    .filter(site -> water.contains(river.id(), site.stretch.middle()))
                    .forEach(sites::add);
        }
        return sites;
    }

    /** The river as far as it is drawn; without a line, from the mouth to the farthest that anybody walked. */
    private static Stretch water(SurveyRecords records, River river) {
        return records.rivers()
                .measuredLine(river.id())
                .map(MeasuredLine::extent)
                .orElseGet(() -> between(
                        0,
                        records.visits().stream()
                                .filter(visit -> visit.riverId().equals(river.id()))
                                .flatMap(visit -> visit.walked().stream())
                                .mapToDouble(walked -> walked.upper().metres())
                                .max()
                                .orElse(0)));
    }

    /** Pieces between multiples of a length; one at an end that would be shorter than half of it belongs to its neighbour. */
    private static List<Site> stretches(River river, Stretch water, double metres) {
        List<Site> sites = new ArrayList<>();
        double lower = water.lower().metres();
        double end = water.upper().metres();
        for (long next = Math.round(lower / metres) + 1; end - next * metres >= SHORT_END * metres; next++) {
            sites.add(new Site(Optional.empty(), river, between(lower, next * metres)));
            lower = next * metres;
        }
        if (end > lower) {
            sites.add(new Site(Optional.empty(), river, between(lower, end)));
        }
        return sites;
    }

    private static List<Site> reaches(SurveyRecords records, River river) {
        return records.reaches().stream()
                .filter(reach -> reach.riverId().equals(river.id()))
                .sorted(Comparator.comparing(reach -> reach.stretch().lower()))
                .map(reach -> new Site(Optional.of(reach.name()), river, reach.stretch()))
                .toList();
    }

    /** The water on either side of each landmark, no farther than half-way to the next; landmarks at one point make one site. */
    private static List<Site> places(SurveyRecords records, River river, Stretch water, double metres) {
        List<List<Landmark>> points = List.copyOf(records.landmarks().stream()
                .filter(landmark -> landmark.place().riverId().equals(river.id()))
                .sorted(Comparator.comparing(landmark -> landmark.place().chainage()))
                .collect(Collectors.groupingBy(
                        landmark -> landmark.place().chainage(), LinkedHashMap::new, Collectors.toList()))
                .values());
        List<Site> sites = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            double here = metres(points.get(i));
            double below = i == 0 ? water.lower().metres() : (metres(points.get(i - 1)) + here) / 2;
            double above = i == points.size() - 1 ? water.upper().metres() : (here + metres(points.get(i + 1))) / 2;
            String name = points.get(i).stream().map(Landmark::name).collect(Collectors.joining(" / "));
            Stretch.between(new Chainage(below), new Chainage(Math.max(below, above)))
                    .intersection(between(Math.max(0, here - metres), here + metres))
                    .filter(stretch -> stretch.length() > 0)
                    .ifPresent(stretch -> sites.add(new Site(Optional.of(name), river, stretch)));
        }
        return sites;
    }

    private static double metres(List<Landmark> point) {
        return point.get(0).place().chainage().metres();
    }

    private static Stretch between(double lower, double upper) {
        return new Stretch(new Chainage(lower), new Chainage(upper));
    }

    /** The share of this site that a walk covered. */
    double covered(UUID riverId, List<Stretch> walked) {
        double metres = river.id().equals(riverId)
                ? walked.stream()
                        .flatMap(one -> one.intersection(stretch).stream())
                        .mapToDouble(Stretch::length)
                        .sum()
                : 0;
        return metres / stretch.length();
    }

    /** Whether a bird there was on this site, and not on another that begins at its upper end. */
    boolean holds(UUID riverId, Chainage point, List<Site> all) {
        return river.id().equals(riverId)
                && stretch.contains(point)
                && (point.compareTo(stretch.upper()) < 0
                        || all.stream()
                                .noneMatch(other -> other.river.id().equals(riverId)
                                        && other.stretch.lower().equals(point)));
    }
}
