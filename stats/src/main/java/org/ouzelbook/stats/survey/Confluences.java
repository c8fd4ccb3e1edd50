package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.DecisionKind;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * Joins clusters of two rivers through the confluence where they meet.
 *
 * <p>First form: each river has been cut by itself, and here the lowest cluster of a tributary is joined to the nearest
 * cluster of the receiving river, if along the water they fit the longest territory and neither a turn-back nor a pair of
 * birds seen at once lies between them. So a cluster is joined whole or not at all, which need not be the best cut of the
 * whole tree of rivers.
 */
final class Confluences {
    private final Field field;
    private final Season season;
    private final int more;
    private final List<Cluster> clusters;

    private Confluences(List<Cluster> clusters, Field field, Season season, int more) {
        this.clusters = new ArrayList<>(clusters);
        this.field = field;
        this.season = season;
        this.more = more;
    }

    static List<Cluster> joined(List<Cluster> clusters, Field field, Season season, int more) {
        Confluences confluences = new Confluences(clusters, field, season, more);
        for (River river : season.records().rivers().rivers()) {
            river.mouth().ifPresent(mouth -> confluences.joinAt(river, mouth));
        }
        return List.copyOf(confluences.clusters);
    }

    private void joinAt(River tributary, River.Confluence mouth) {
        double junction = mouth.chainage().metres();
        Optional<Cluster> lowest = clusters.stream()
                .filter(cluster -> !cluster.on(tributary.id()).isEmpty())
                .min(Comparator.comparingDouble(
                        cluster -> cluster.on(tributary.id()).get(0).metres()));
        if (lowest.isEmpty()) {
            return;
        }
        nearest(mouth.riverId(), junction).stream()
                .filter(main -> !main.sameAs(lowest.get()))
                .filter(main -> length(main, lowest.get()) <= season.settings().maximumLengthMetres())
                .filter(main -> nothingBetween(main, mouth.riverId(), junction, lowest.get(), tributary.id()))
                .min(Comparator.comparingDouble(main -> length(main, lowest.get())))
                .ifPresent(main -> replace(main, lowest.get()));
    }

    /** The cluster across a place of a river; if there is none, the nearest below it and the nearest above. */
    private List<Cluster> nearest(UUID riverId, double place) {
        List<Cluster> here = clusters.stream()
                .filter(cluster -> !cluster.on(riverId).isEmpty())
                .toList();
        List<Cluster> across = here.stream()
                .filter(cluster -> low(cluster, riverId) <= place && place <= high(cluster, riverId))
                .toList();
        if (!across.isEmpty()) {
            return across;
        }
        List<Cluster> nearest = new ArrayList<>();
        here.stream()
                .filter(cluster -> high(cluster, riverId) < place)
                .max(Comparator.comparingDouble(cluster -> high(cluster, riverId)))
                .ifPresent(nearest::add);
        here.stream()
                .filter(cluster -> low(cluster, riverId) > place)
                .min(Comparator.comparingDouble(cluster -> low(cluster, riverId)))
                .ifPresent(nearest::add);
        return nearest;
    }

    private boolean nothingBetween(Cluster main, UUID mainId, double junction, Cluster side, UUID sideId) {
        double from = Math.min(junction, high(main, mainId));
        double to = Math.max(junction, low(main, mainId));
        boolean wall = field.walls().stream().anyMatch(turned -> {
            boolean below = turned.riverId().equals(mainId) && from <= turned.metres() && turned.metres() <= to;
            return below || (turned.riverId().equals(sideId) && turned.metres() <= low(side, sideId));
        });
        boolean apart =
                field.links().stream().anyMatch(link -> link.kind().apart() && link.between(main::holds, side::holds));
        return !wall && !apart && !isDecided(main, mainId, from, to) && !isDecided(side, sideId, 0, low(side, sideId));
    }

    /** Whether a surveyor decided that something ends between a cluster and the confluence, or that the cluster is none. */
    private boolean isDecided(Cluster cluster, UUID riverId, double from, double to) {
        return !season.decisions()
                        .partings(riverId, Stretch.between(new Chainage(from), new Chainage(to)))
                        .isEmpty()
                || !season.decisions().about(cluster, DecisionKind.NO_TERRITORY).isEmpty();
    }

    private static double low(Cluster cluster, UUID riverId) {
        return cluster.on(riverId).get(0).metres();
    }

    private static double high(Cluster cluster, UUID riverId) {
        List<Member> members = cluster.on(riverId);
        return members.get(members.size() - 1).metres();
    }

    /** How long the two would be as one, along the water, in metres. */
    private double length(Cluster main, Cluster side) {
        double longest = 0;
        for (Member one : ends(main)) {
            for (Member other : ends(side)) {
                longest = Math.max(longest, season.metresBetween(one, other));
            }
        }
        return longest;
    }

    /** Its lowest and highest member on each of its rivers: no two others are farther from each other. */
    private static List<Member> ends(Cluster cluster) {
        List<Member> ends = new ArrayList<>();
        cluster.members().stream()
                .map(member -> member.place().riverId())
                .distinct()
                .map(cluster::on)
                .forEach(there -> {
                    ends.add(there.get(0));
                    ends.add(there.get(there.size() - 1));
                });
        return ends;
    }

    private void replace(Cluster main, Cluster side) {
        boolean listedOnSide = side.registrations() > main.registrations();
        Cluster home = listedOnSide ? side : main;
        Cluster other = listedOnSide ? main : side;
        List<Member> members = new ArrayList<>(home.members());
        members.addAll(other.members());
        Cluster joined = Cluster.of(home.riverId(), List.copyOf(members), false);
        clusters.set(clusters.indexOf(home), joined.with(season.accepts(joined, more)));
        clusters.remove(other);
    }
}
