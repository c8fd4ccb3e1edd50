package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.ouzelbook.stats.survey.Admission.DoubtfulAge;
import org.ouzelbook.stats.survey.Territory.Standing;
import org.ouzelbook.stats.survey.TerritoryMap.Reading;
import org.ouzelbook.tracker.domain.Message;

/** The other ways in which the rules can be read, one at a time, and the clusters that each would make. */
final class Readings {
    private final Season season;
    private final Field field;
    private final List<Cluster> clusters;
    private final List<Cluster> allJuveniles;
    private final List<Cluster> noJuveniles;
    private final List<Cluster> oneMore;
    private final List<Cluster> oneFewer;

    private Readings(Season season, List<Cluster> clusters, Field field) {
        this.season = season;
        this.field = field;
        this.clusters = clusters;
        this.allJuveniles = read(season, DoubtfulAge.AS_JUVENILES);
        this.noJuveniles = read(season, DoubtfulAge.AS_HOLDERS);
        this.oneMore = Clustering.of(field, season, 1);
        this.oneFewer = Clustering.of(field, season, -1);
    }

    static Readings of(Season season, Field field, List<Cluster> clusters) {
        return new Readings(season, clusters, field);
    }

    private static List<Cluster> read(Season season, DoubtfulAge reading) {
        Admission admission = Admission.of(season.sightings(), season.settings(), reading);
        return Clustering.of(Field.of(admission.admitted(), season), season, 0);
    }

    /** Every reading for a river, each with its count. */
    List<Reading> on(UUID riverId) {
        int likely = counted(clusters, riverId);
        int edge = season.count(clusters, riverId, Standing.EDGE);
        int edgeCounted = (int) clusters.stream()
                .filter(cluster -> cluster.riverId().equals(riverId))
                .filter(cluster -> season.standing(cluster) == Standing.COUNTED && season.isEdge(cluster))
                .count();
        List<Reading> readings = new ArrayList<>();
        readings.add(new Reading(Message.of("map.reading.edgesIn"), likely + edge));
        readings.add(new Reading(Message.of("map.reading.edgesOut"), likely - edgeCounted));
        readings.add(new Reading(
                Message.of("map.reading.gapsSplit", season.settings().doubtfulGapMetres()),
                counted(gapsSplit(), riverId)));
        readings.add(new Reading(Message.of("map.reading.youngBirds"), counted(allJuveniles, riverId)));
        readings.add(new Reading(Message.of("map.reading.holders"), counted(noJuveniles, riverId)));
        readings.add(new Reading(Message.of("map.reading.oneMore"), counted(oneMore, riverId)));
        readings.add(new Reading(Message.of("map.reading.oneFewer"), counted(oneFewer, riverId)));
        return readings;
    }

    private int counted(List<Cluster> read, UUID riverId) {
        return season.count(read, riverId, Standing.COUNTED);
    }

    private List<Cluster> gapsSplit() {
        return clusters.stream()
                .flatMap(cluster -> DoubtfulGap.split(cluster, field, season).stream())
                .toList();
    }
}
