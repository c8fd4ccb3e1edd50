package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.ouzelbook.stats.estimator.segmentation.LeaveOneOut;
import org.ouzelbook.stats.estimator.segmentation.Partition;
import org.ouzelbook.stats.survey.Territory.HangsOn;
import org.ouzelbook.stats.survey.Territory.Standing;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Message;

/**
 * Finds the records on which the answer for one territory hangs, by making the map again without them: each record alone, and
 * together the marks that keep it apart from a neighbour.
 */
final class HangingRecords {
    private final Season season;
    private final Field field;
    private final List<Cluster> cut;
    private final List<Cluster> now;
    private final IdentityHashMap<Cluster, Standing> standings = new IdentityHashMap<>();
    private final Map<UUID, LeaveOneOut> rivers = new HashMap<>();

    /**
     * @param season what the map is made from
     * @param field what is certain of it
     */
    HangingRecords(Season season, Field field) {
        this.season = season;
        this.field = field;
        this.cut = Clustering.cut(field, season, 0);
        this.now = Confluences.joined(cut, field, season, 0);
        now.forEach(one -> standings.put(one, season.standing(one)));
    }

    /**
     * The records that one cluster hangs on.
     *
     * @param listed every cluster of its river, going upstream
     * @param place which of them
     */
    List<HangsOn> of(List<Cluster> listed, int place) {
        OfOne one = new OfOne(listed, place);
        List<HangsOn> found = new ArrayList<>();
        for (Member member : one.cluster.members()) {
            one.without(member).ifPresent(found::add);
        }
        for (Cluster neighbour : neighbours(listed, place)) {
            one.withoutWallsTo(neighbour).ifPresent(found::add);
        }
        return found;
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

    /**
     * The clusters without a record. Only its own river can be cut otherwise, and where it shows nothing of others that is found
     * without cutting the river anew.
     */
    private List<Cluster> clustersWithout(Member member) {
        UUID riverId = member.place().riverId();
        Field others = field.without(Set.of(member.id()));
        boolean turnedBack =
                field.walls().stream().anyMatch(wall -> wall.sighting().id().equals(member.id()));
        List<Cluster> then = new ArrayList<>();
        List<Cluster> own = new ArrayList<>();
        for (Cluster one : cut) {
            (one.riverId().equals(riverId) ? own : then).add(one);
        }
        then.addAll(turnedBack ? Clustering.cut(others, season, riverId, 0) : without(member, own));
        return Confluences.joined(then, others, season, 0);
    }

    /** The clusters of a river without a record; one that stays is the same object. */
    private List<Cluster> without(Member left, List<Cluster> own) {
        UUID riverId = left.place().riverId();
        List<Member> members = field.on(riverId);
        int place = members.indexOf(left);
        Map<Integer, Cluster> byStart = new HashMap<>();
        int start = 0;
        for (Cluster one : own) {
            byStart.put(start, one);
            start += one.members().size();
        }
        List<Cluster> then = new ArrayList<>();
        for (Partition.Cluster one : river(riverId).without(place).clusters()) {
            int from = one.from() >= place ? one.from() + 1 : one.from();
            int to = one.to() > place ? one.to() + 1 : one.to();
            Cluster was = byStart.get(from);
            boolean stays = was != null
                    && was.members().size() == to - from
                    && was.accepted() == one.accepted()
                    && !(from < place && place < to);
            then.add(
                    stays
                            ? was
                            : Cluster.of(
                                    riverId,
                                    members.subList(from, to).stream()
                                            .filter(member -> !member.equals(left))
                                            .toList(),
                                    one.accepted()));
        }
        return then;
    }

    private int counted(List<Cluster> clusters, UUID riverId) {
        int count = 0;
        for (Cluster one : clusters) {
            if (one.riverId().equals(riverId)) {
                Standing known = standings.get(one);
                count += (known == null ? season.standing(one) : known) == Standing.COUNTED ? 1 : 0;
            }
        }
        return count;
    }

    private LeaveOneOut river(UUID riverId) {
        return rivers.computeIfAbsent(
                riverId, id -> LeaveOneOut.of(Clustering.line(field, id, season), season.acceptance(id, 0)));
    }

    private static boolean holdsAll(Cluster one, Cluster other, Set<UUID> except) {
        return other.members().stream().allMatch(member -> one.holds(member) || except.contains(member.id()));
    }

    /** One cluster. */
    private final class OfOne {
        private final List<Cluster> listed;
        private final Cluster cluster;
        private final Standing standing;
        private final int likely;

        OfOne(List<Cluster> listed, int place) {
            this.listed = listed;
            this.cluster = listed.get(place);
            this.standing = season.standing(cluster);
            this.likely = counted(listed);
        }

        private Optional<HangsOn> without(Member member) {
            Set<UUID> records = Set.of(member.id());
            List<Cluster> then = clustersWithout(member);
            return difference(then, List.of(member.name()), records)
                    .or(() -> weakerEvidence(then, member))
                    .map(otherwise -> new HangsOn(List.of(member.id()), otherwise));
        }

        private Optional<HangsOn> withoutWallsTo(Cluster neighbour) {
            Separation separation = Separation.between(cluster, neighbour, field, season);
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
            List<Cluster> then = Clustering.of(field.withoutWalls(records), season, 0);
            boolean joined = then.stream()
                    .anyMatch(one -> holdsAll(one, cluster, Set.of()) && holdsAll(one, neighbour, Set.of()));
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
            List<Cluster> parts = then.stream().filter(this::isPart).toList();
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
                    then.stream().filter(this::isPart).findFirst().flatMap(this::code);
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

        /** What the count of its river would be. */
        private Message count(List<Cluster> then) {
            int otherwise = counted(then);
            return otherwise == likely
                    ? Message.of("map.without.sameCount", likely)
                    : Message.of("map.without.count", otherwise, likely);
        }

        /** Whether a cluster that was made without a record has some of this one. */
        private boolean isPart(Cluster one) {
            return !standings.containsKey(one) && one.sharesWith(cluster);
        }

        private int counted(List<Cluster> clusters) {
            return HangingRecords.this.counted(clusters, cluster.riverId());
        }
    }
}
