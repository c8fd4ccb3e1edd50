package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
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
    private final Map<UUID, OnRiver> rivers = new HashMap<>();
    private final Set<UUID> turnedBack = new HashSet<>();
    private final Set<UUID> linked = new HashSet<>();

    /** The clusters without certain marks, by the records whose marks they are; a pair of neighbours asks twice. */
    private final Map<Set<UUID>, List<Cluster>> withoutMarks = new HashMap<>();

    /**
     * A river, ready to be asked what it is without one of its records.
     *
     * @param members its records, going upstream
     * @param places the place of each among them, by its key
     * @param byStart its clusters, by the place of their first record
     * @param others the clusters of the other rivers
     * @param cuts the river’s best cuts with one record left out
     */
    private record OnRiver(
            List<Member> members,
            Map<UUID, Integer> places,
            Map<Integer, Cluster> byStart,
            List<Cluster> others,
            LeaveOneOut cuts) {}

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
        field.walls().forEach(wall -> turnedBack.add(wall.sighting().id()));
        for (Field.Link link : field.links()) {
            linked.add(link.one().id());
            linked.add(link.other().id());
        }
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
        OnRiver river = river(riverId);
        boolean marks = turnedBack.contains(member.id());
        // What is certain of the others is the same field, but for its members, where this record is in none of it.
        Field others = marks || linked.contains(member.id()) ? field.without(Set.of(member.id())) : field;
        List<Cluster> then = new ArrayList<>(river.others());
        then.addAll(marks ? Clustering.cut(others, season, riverId, 0) : without(member, river));
        return Confluences.joined(then, others, season, 0);
    }

    /** The clusters of a river without a record; one that stays is the same object. */
    private static List<Cluster> without(Member left, OnRiver river) {
        UUID riverId = left.place().riverId();
        List<Member> members = river.members();
        int place = Objects.requireNonNull(river.places().get(left.id()));
        List<Cluster> then = new ArrayList<>();
        for (Partition.Cluster one : river.cuts().without(place).clusters()) {
            int from = one.from() >= place ? one.from() + 1 : one.from();
            int to = one.to() > place ? one.to() + 1 : one.to();
            Cluster was = river.byStart().get(from);
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
                                            .filter(member -> !member.id().equals(left.id()))
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

    private OnRiver river(UUID riverId) {
        return rivers.computeIfAbsent(riverId, this::ready);
    }

    private OnRiver ready(UUID riverId) {
        List<Member> members = field.on(riverId);
        Map<UUID, Integer> places = new HashMap<>();
        for (int i = 0; i < members.size(); i++) {
            places.put(members.get(i).id(), i);
        }
        Map<Integer, Cluster> byStart = new HashMap<>();
        List<Cluster> others = new ArrayList<>();
        int start = 0;
        for (Cluster one : cut) {
            if (one.riverId().equals(riverId)) {
                byStart.put(start, one);
                start += one.members().size();
            } else {
                others.add(one);
            }
        }
        return new OnRiver(
                members,
                places,
                byStart,
                others,
                LeaveOneOut.of(Clustering.line(field, riverId, season), season.acceptance(riverId, 0)));
    }

    private List<Cluster> clustersWithoutMarks(Set<UUID> records) {
        return withoutMarks.computeIfAbsent(
                Set.copyOf(records), marks -> Clustering.of(field.withoutWalls(marks), season, 0));
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
            List<Cluster> then = clustersWithoutMarks(records);
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
