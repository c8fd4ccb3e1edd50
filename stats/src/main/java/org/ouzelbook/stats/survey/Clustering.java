package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.ouzelbook.stats.estimator.segmentation.Line;
import org.ouzelbook.stats.estimator.segmentation.LinePoint;
import org.ouzelbook.stats.estimator.segmentation.Partition;
import org.ouzelbook.stats.estimator.segmentation.PointPair;
import org.ouzelbook.tracker.domain.River;

/** From what is certain to clusters: each river's line is cut by itself, then clusters are joined through confluences. */
final class Clustering {
    private Clustering() {}

    /**
     * The clusters of a field, by river in the order of the network, going upstream.
     *
     * @param more registrations asked for beyond the rule
     */
    static List<Cluster> of(Field field, Season season, int more) {
        return Confluences.joined(cut(field, season, more), field, season, more);
    }

    /** The clusters of each river by itself, before any are joined through confluences. */
    static List<Cluster> cut(Field field, Season season, int more) {
        List<Cluster> clusters = new ArrayList<>();
        for (River river : season.records().rivers().rivers()) {
            clusters.addAll(cut(field, season, river.id(), more));
        }
        return clusters;
    }

    /** The clusters of one river by itself. */
    static List<Cluster> cut(Field field, Season season, UUID riverId, int more) {
        List<Member> members = field.on(riverId);
        Partition partition = Partition.of(line(field, riverId, season), season.acceptance(riverId, more));
        return partition.clusters().stream()
                .map(cluster -> Cluster.of(riverId, members.subList(cluster.from(), cluster.to()), cluster.accepted()))
                .toList();
    }

    /** A river of a field as the estimator sees it; its points are the members in their order. */
    static Line line(Field field, UUID riverId, Season season) {
        Map<UUID, Integer> index = new HashMap<>();
        List<LinePoint> points = new ArrayList<>();
        for (Member member : field.on(riverId)) {
            index.put(member.id(), points.size());
            points.add(field.point(member));
        }
        Set<PointPair> apart = new HashSet<>();
        Set<PointPair> together = new HashSet<>();
        for (Field.Link link : field.links()) {
            Integer one = index.get(link.one().id());
            Integer other = index.get(link.other().id());
            if (one != null && other != null) {
                (link.kind().apart() ? apart : together).add(PointPair.of(one, other));
            }
        }
        List<Double> walls = field.walls().stream()
                .filter(wall -> wall.riverId().equals(riverId))
                .map(Field.Wall::metres)
                .toList();
        return new Line(
                points,
                apart,
                together,
                walls,
                season.settings().maximumLengthMetres(),
                season.decisions().on(riverId));
    }
}
