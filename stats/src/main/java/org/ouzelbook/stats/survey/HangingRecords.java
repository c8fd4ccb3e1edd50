package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.ouzelbook.stats.estimator.segmentation.Line;
import org.ouzelbook.stats.estimator.segmentation.Partition;
import org.ouzelbook.stats.survey.Territory.HangsOn;
import org.ouzelbook.stats.survey.Territory.Standing;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Message;

/**
 * Finds the records on which the answer for one territory hangs, by making its part of the map again without them: each
 * record alone, and together the marks that keep it apart from a neighbour.
 *
 * <p>Only records within two maximum lengths of the territory are read again, if those alone give the same territory and
 * neighbours as the whole river; else the whole river is.
 */
final class HangingRecords {
    private final Season season;
    private final Cluster cluster;
    private final Field nearby;
    private final List<Cluster> now;
    private final Standing standing;
    private final int likely;
    private final int countedNow;
    private final List<UUID> onRiver;
    private final Line line;
    private final Partition partition;

    private HangingRecords(Season season, Cluster cluster, Field nearby, List<Cluster> now, int likely) {
        this.season = season;
        this.cluster = cluster;
        this.nearby = nearby;
        this.now = now;
        this.standing = season.standing(cluster);
        this.likely = likely;
        this.countedNow = counted(now);
        this.onRiver = nearby.on(cluster.riverId()).stream().map(Member::id).toList();
        this.line = Clustering.line(nearby, cluster.riverId(), season);
        this.partition = Partition.of(line, season.acceptance(cluster.riverId(), 0));
    }

    /**
     * The records that one cluster hangs on.
     *
     * @param listed every cluster of its river, going upstream
     * @param place which of them
     */
    static List<HangsOn> of(Season season, Field field, List<Cluster> listed, int place) {
        Cluster cluster = listed.get(place);
        Field nearby = nearby(season, field, cluster);
        List<Cluster> now = Clustering.of(nearby, season, 0);
        if (!holdsAlike(now, cluster, neighbours(listed, place))) {
            nearby = field;
            now = Clustering.of(field, season, 0);
        }
        int likely = season.count(listed, cluster.riverId(), Standing.COUNTED);
        HangingRecords hanging = new HangingRecords(season, cluster, nearby, now, likely);
        List<HangsOn> found = new ArrayList<>();
        for (Member member : cluster.members()) {
            hanging.without(member).ifPresent(found::add);
        }
        for (Cluster neighbour : neighbours(listed, place)) {
            hanging.withoutWallsTo(neighbour, listed).ifPresent(found::add);
        }
        return found;
    }

    private static boolean holdsAlike(List<Cluster> now, Cluster cluster, List<Cluster> neighbours) {
        return now.stream().anyMatch(cluster::sameAs)
                && neighbours.stream().allMatch(neighbour -> now.stream().anyMatch(neighbour::sameAs));
    }

    private static List<Cluster> neighbours(List<Cluster> listed, int place) {
        List<Cluster> neighbours = new ArrayList<>();
        if (place > 0) {
            neighbours.add(listed.get(place - 1));
        }
        if (place + 1 < listed.size()) {
            neighbours.add(listed.get(place + 1));
        }
        return neighbours;
    }

    private static Field nearby(Season season, Field field, Cluster cluster) {
        double within = 2 * season.settings().maximumLengthMetres();
        Member lowest = cluster.atHome().get(0);
        Member highest = cluster.atHome().get(cluster.atHome().size() - 1);
        Set<UUID> near = new HashSet<>();
        for (Member member : field.members()) {
            if (season.metresBetween(member, lowest) <= within || season.metresBetween(member, highest) <= within) {
                near.add(member.id());
            }
        }
        near.addAll(cluster.ids());
        return field.restrictedTo(near);
    }

    private Optional<HangsOn> without(Member member) {
        Set<UUID> records = Set.of(member.id());
        List<Cluster> then = changesNothingElse(member)
                ? now.stream()
                        .map(one -> one.sameAs(cluster) ? one.without(member) : one)
                        .toList()
                : Clustering.of(nearby.without(records), season, 0);
        return difference(then, List.of(member.name()), records)
                .or(() -> weakerEvidence(then, member))
                .map(otherwise -> new HangsOn(List.of(member.id()), otherwise));
    }

    /**
     * Whether every cluster stays as it is without a record, but that its own is one shorter. True for most records, and found
     * without making the clusters; where a wall or a second river is at play it is not even asked.
     */
    private boolean changesNothingElse(Member member) {
        boolean turnedBack =
                nearby.walls().stream().anyMatch(wall -> wall.sighting().id().equals(member.id()));
        if (turnedBack
                || cluster.members().size() == 1
                || onRiver.size() < nearby.members().size()) {
            return false;
        }
        int place = onRiver.indexOf(member.id());
        Partition without = Partition.of(line.without(place), season.acceptance(cluster.riverId(), 0));
        return partition.staysWithout(without, place);
    }

    private Optional<HangsOn> withoutWallsTo(Cluster neighbour, List<Cluster> listed) {
        Separation separation = Separation.between(cluster, neighbour, nearby, season);
        if (separation.isEmpty()) {
            return Optional.empty();
        }
        Set<UUID> records = new LinkedHashSet<>();
        Set<Object> names = new LinkedHashSet<>();
        for (Field.Link link : separation.links()) {
            for (Member member : List.of(link.one(), link.other())) {
                records.add(member.id());
                names.add(member.name());
            }
        }
        for (Field.Wall wall : separation.walls()) {
            records.add(wall.sighting().id());
            names.add(Member.name(wall.sighting()));
        }
        List<Cluster> then = Clustering.of(nearby.withoutWalls(records), season, 0);
        boolean joined =
                then.stream().anyMatch(one -> holdsAll(one, cluster, Set.of()) && holdsAll(one, neighbour, Set.of()));
        return joined
                ? Optional.of(new HangsOn(
                        List.copyOf(records),
                        Message.of(
                                "map.without.marks",
                                List.copyOf(names),
                                MapMaker.letter(listed.indexOf(neighbour)),
                                count(then))))
                : Optional.empty();
    }

    /** What becomes of the territory, if it is something else. */
    private Optional<Message> difference(List<Cluster> then, List<Object> names, Set<UUID> left) {
        List<Cluster> parts =
                then.stream().filter(one -> one.sharesWith(cluster)).toList();
        if (parts.isEmpty()) {
            return cluster.accepted()
                    ? Optional.of(Message.of("map.without.gone", names, count(then)))
                    : Optional.empty();
        }
        if (parts.size() > 1) {
            long accepted = parts.stream().filter(Cluster::accepted).count();
            return accepted > 1 || cluster.accepted()
                    ? Optional.of(Message.of("map.without.split", names, parts.size(), count(then)))
                    : Optional.empty();
        }
        Cluster rest = parts.get(0);
        boolean tookIn = now.stream()
                .filter(other -> other.accepted() && !other.sameAs(cluster))
                .anyMatch(other -> holdsAll(rest, other, left));
        if (tookIn && rest.members().size() > cluster.members().size() - left.size()) {
            return Optional.of(Message.of("map.without.joined", names, count(then)));
        }
        Standing otherwise = season.standing(rest);
        return otherwise == standing
                ? Optional.empty()
                : Optional.of(Message.of("map.without.standing", names, otherwise, count(then)));
    }

    private Optional<Message> weakerEvidence(List<Cluster> then, Member member) {
        Optional<BreedingCode> before = code(cluster);
        Optional<BreedingCode> after =
                then.stream().filter(one -> one.sharesWith(cluster)).findFirst().flatMap(this::code);
        boolean otherClass =
                !before.flatMap(BreedingCode::evidenceClass).equals(after.flatMap(BreedingCode::evidenceClass));
        return cluster.accepted() && after.isPresent() && otherClass
                ? after.get()
                        .evidenceClass()
                        .map(shown -> Message.of(
                                "map.without.evidence",
                                List.of(member.name()),
                                shown,
                                after.get().number()))
                : Optional.empty();
    }

    private Optional<BreedingCode> code(Cluster one) {
        return Grading.of(one, season.settings()).map(Territory.Evidence::code);
    }

    private static boolean holdsAll(Cluster one, Cluster other, Set<UUID> except) {
        return other.members().stream().allMatch(member -> one.holds(member) || except.contains(member.id()));
    }

    /** What the count of the whole river would be, since only what is near the territory changes. */
    private Message count(List<Cluster> then) {
        int otherwise = likely + counted(then) - countedNow;
        return otherwise == likely
                ? Message.of("map.without.sameCount", likely)
                : Message.of("map.without.count", otherwise, likely);
    }

    private int counted(List<Cluster> clusters) {
        return season.count(clusters, cluster.riverId(), Standing.COUNTED);
    }
}
