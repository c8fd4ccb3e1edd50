package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.ouzelbook.stats.estimator.segmentation.LinePoint;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Sighting;

/**
 * What the notebook says for certain of one species and season: the records that can belong to a territory, which of them
 * belong together or apart, and where birds turned back.
 *
 * @param members the records, going upstream
 * @param links pairs of them that are certainly one territory, or certainly two
 * @param walls places where a bird turned back
 * @param droppedLinks simultaneous pairs that rings show to be one bird
 * @param points each record as the estimator sees it, by its key
 */
record Field(
        List<Member> members,
        List<Link> links,
        List<Wall> walls,
        List<Link> droppedLinks,
        Map<UUID, LinePoint> points) {

    /** What a link says, and from what. */
    enum Kind {
        /** Two birds certainly different, seen at one time. */
        SIMULTANEOUS,
        /** Two nests in use on the same days. */
        TWO_NESTS,
        /** The same complete reading of colour rings. */
        SAME_RINGS,
        /** A dependent brood and the nest it can have left. */
        BROOD;

        boolean apart() {
            return this == SIMULTANEOUS || this == TWO_NESTS;
        }
    }

    /**
     * A pair of records of which something is certain.
     *
     * @param one one of them
     * @param other the other
     * @param kind what is certain
     */
    record Link(Member one, Member other, Kind kind) {
        /** Whether one of the pair is among some records and the other among others. */
        boolean between(Predicate<Member> some, Predicate<Member> others) {
            boolean thisWay = some.test(one) && others.test(other);
            boolean thatWay = some.test(other) && others.test(one);
            return thisWay || thatWay;
        }
    }

    /**
     * A place where a bird turned back.
     *
     * @param sighting the sighting of that bird
     * @param metres the place, on the river of the sighting
     */
    record Wall(Sighting sighting, double metres) {
        UUID riverId() {
            return sighting.place().riverId();
        }

        /** Whether the bird came from below, so that its own ground ends here upstream. */
        boolean isUpperEnd() {
            return sighting.place().chainage().metres() <= metres;
        }
    }

    /**
     * What is certain of the records that take part in a season.
     *
     * @param admitted the sightings that take part
     */
    static Field of(List<Sighting> admitted, Season season) {
        List<NestHistory> nests = season.nests();
        MapSettings settings = season.settings();
        List<Member> members = new ArrayList<>();
        admitted.forEach(sighting -> members.add(new Member.Seen(sighting, BreedingSigns.of(sighting, settings))));
        nests.stream()
                .filter(history -> !history.signs().isEmpty())
                .forEach(history -> members.add(new Member.Nesting(history)));
        members.sort(Member.UPSTREAM);
        List<Link> rings = sameRings(members);
        List<Link> links = new ArrayList<>(rings);
        List<Link> dropped = new ArrayList<>();
        for (Link link : simultaneous(members)) {
            (sameReading(link) ? dropped : links).add(link);
        }
        links.addAll(twoNests(members, season));
        links.addAll(broods(members, settings));
        List<Wall> walls = admitted.stream()
                .filter(Sighting::turnedBack)
                .map(sighting ->
                        new Wall(sighting, sighting.flewTo().orElseThrow().metres()))
                .toList();
        Map<UUID, LinePoint> points = new HashMap<>();
        members.forEach(member -> points.put(member.id(), point(member, settings)));
        return new Field(List.copyOf(members), List.copyOf(links), walls, List.copyOf(dropped), Map.copyOf(points));
    }

    private static LinePoint point(Member member, MapSettings settings) {
        return new LinePoint(
                member.metres(),
                member.place().uncertaintyMetres(),
                member.dates().stream().map(date -> (int) date.toEpochDay()).toList(),
                settings.isDecisive(member.code()));
    }

    /** A record as the estimator sees it. */
    LinePoint point(Member member) {
        return Objects.requireNonNull(points.get(member.id()));
    }

    private static List<Link> simultaneous(List<Member> members) {
        Map<UUID, Member> byId = new HashMap<>();
        members.forEach(member -> byId.put(member.id(), member));
        List<Link> links = new ArrayList<>();
        Set<Set<UUID>> done = new HashSet<>();
        for (Member member : members) {
            if (member instanceof Member.Seen seen) {
                for (UUID otherId : seen.sighting().simultaneousWith()) {
                    Member other = byId.get(otherId);
                    if (other != null && done.add(Set.of(member.id(), otherId))) {
                        boolean lowerFirst = Member.UPSTREAM.compare(member, other) <= 0;
                        links.add(
                                new Link(lowerFirst ? member : other, lowerFirst ? other : member, Kind.SIMULTANEOUS));
                    }
                }
            }
        }
        return links;
    }

    private static List<Link> sameRings(List<Member> members) {
        Map<String, Member> last = new LinkedHashMap<>();
        List<Link> links = new ArrayList<>();
        for (Member member : members) {
            completeRings(member).ifPresent(rings -> {
                Member before = last.put(rings, member);
                if (before != null) {
                    links.add(new Link(before, member, Kind.SAME_RINGS));
                }
            });
        }
        return links;
    }

    private static boolean sameReading(Link link) {
        Optional<String> one = completeRings(link.one());
        return one.isPresent() && one.equals(completeRings(link.other()));
    }

    /** The colour-ring reading of a sighting of one bird, if both legs were read and nothing is unsure. */
    private static Optional<String> completeRings(Member member) {
        return member instanceof Member.Seen seen && seen.sighting().count() == 1
                ? Optional.of(seen.sighting().rings().replaceAll("\\s+", ""))
                        .filter(rings -> rings.contains("/") && !rings.contains("?"))
                : Optional.empty();
    }

    /** Of nests on waters that nothing joins nobody asks whether they are of one pair. */
    private static List<Link> twoNests(List<Member> members, Season season) {
        Map<UUID, List<Member.Nesting>> byWater = nests(members).stream()
                .collect(Collectors.groupingBy(
                        nest -> season.outlet(nest.place().riverId()), LinkedHashMap::new, Collectors.toList()));
        List<Link> links = new ArrayList<>();
        byWater.values().forEach(nests -> addTwoNests(nests, links));
        return links;
    }

    private static void addTwoNests(List<Member.Nesting> nests, List<Link> links) {
        for (int i = 0; i < nests.size(); i++) {
            for (int j = i + 1; j < nests.size(); j++) {
                if (nests.get(i).history().activeWith(nests.get(j).history())) {
                    links.add(new Link(nests.get(i), nests.get(j), Kind.TWO_NESTS));
                }
            }
        }
    }

    private static List<Link> broods(List<Member> members, MapSettings settings) {
        List<Member.Nesting> nests = nests(members);
        List<Link> links = new ArrayList<>();
        for (Member member : members) {
            if (member instanceof Member.Seen seen && isDependentBrood(seen.sighting())) {
                nests.stream()
                        .filter(nest ->
                                nest.place().riverId().equals(seen.place().riverId()))
                        .filter(nest -> Math.abs(nest.metres() - seen.metres()) <= settings.maximumLengthMetres())
                        .filter(nest ->
                                nest.history().canHaveFledged(seen.sighting().date()))
                        .min((one, other) -> Double.compare(
                                Math.abs(one.metres() - seen.metres()), Math.abs(other.metres() - seen.metres())))
                        .ifPresent(nest -> links.add(new Link(nest, seen, Kind.BROOD)));
            }
        }
        return links;
    }

    private static boolean isDependentBrood(Sighting sighting) {
        return sighting.age() == Age.DEPENDENT_JUVENILE
                || sighting.activities().contains(Activity.DEPENDENT_YOUNG)
                || sighting.breedingCode().filter(code -> code.number() == 12).isPresent();
    }

    private static List<Member.Nesting> nests(List<Member> members) {
        return members.stream()
                .filter(Member.Nesting.class::isInstance)
                .map(Member.Nesting.class::cast)
                .toList();
    }

    /** The records on one river, going upstream. */
    List<Member> on(UUID riverId) {
        return keep(members, member -> member.place().riverId().equals(riverId));
    }

    /** Whether rings or a brood bind one group of records to another. */
    boolean bindsAcross(Cluster some, Cluster others) {
        return links.stream()
                .filter(link -> !link.kind().apart())
                .anyMatch(link -> link.between(some::holds, others::holds));
    }

    /** This field as if some records had not been made. */
    Field without(Set<UUID> records) {
        return new Field(
                keep(members, member -> !records.contains(member.id())),
                keep(
                        links,
                        link -> !records.contains(link.one().id())
                                && !records.contains(link.other().id())),
                keep(walls, wall -> !records.contains(wall.sighting().id())),
                droppedLinks,
                points);
    }

    /** The fields of waters that nothing can bind to each other, by a river that stands for each of them. */
    Map<UUID, Field> byWater(UnaryOperator<UUID> waterOf) {
        Map<UUID, List<Member>> there = members.stream()
                .collect(Collectors.groupingBy(
                        member -> waterOf.apply(member.place().riverId())));
        Map<UUID, List<Link>> certain = links.stream()
                .filter(link -> waterOf.apply(link.one().place().riverId())
                        .equals(waterOf.apply(link.other().place().riverId())))
                .collect(Collectors.groupingBy(
                        link -> waterOf.apply(link.one().place().riverId())));
        Map<UUID, Field> fields = new HashMap<>();
        there.forEach((water, some) -> fields.put(
                water, new Field(some, certain.getOrDefault(water, List.of()), walls, droppedLinks, points)));
        return fields;
    }

    /** The part of this field that some of its members make, with what is certain of them. */
    Field restrictedTo(Set<UUID> some) {
        return new Field(
                keep(members, member -> some.contains(member.id())),
                keep(
                        links,
                        link -> some.contains(link.one().id())
                                && some.contains(link.other().id())),
                walls,
                droppedLinks,
                points);
    }

    /** This field as if these records had been made, but neither turn-backs nor pairs apart among them. */
    Field withoutWalls(Set<UUID> records) {
        return new Field(
                members,
                keep(
                        links,
                        link -> !link.kind().apart()
                                || !records.contains(link.one().id())
                                || !records.contains(link.other().id())),
                keep(walls, wall -> !records.contains(wall.sighting().id())),
                droppedLinks,
                points);
    }

    private static <T> List<T> keep(List<T> all, Predicate<T> wanted) {
        return all.stream().filter(wanted).toList();
    }
}
