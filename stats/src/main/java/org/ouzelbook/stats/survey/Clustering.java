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
        List<Cluster> clusters = new ArrayList<>();
        for (River river : season.records().rivers().rivers()) {
            List<Member> members = field.on(river.id());
            Line line = line(field, river.id(), season);
            Partition partition = Partition.of(line, season.acceptance(river.id(), more));
            for (Partition.Cluster cluster : partition.clusters()) {
                clusters.add(Cluster.of(river.id(), members.subList(cluster.from(), cluster.to()), cluster.accepted()));
            }
        }
        return Confluences.joined(clusters, field, season, more);
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
