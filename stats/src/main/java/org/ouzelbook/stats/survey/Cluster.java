package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * Records judged to belong to one territory.
 *
 * @param riverId the river that it is listed on
 * @param members its records, going upstream, those of the listed river first
 * @param accepted whether the rules accept it
 * @param ids keys of its records
 */
record Cluster(UUID riverId, List<Member> members, boolean accepted, Set<UUID> ids) {

    static Cluster of(UUID riverId, List<Member> members, boolean accepted) {
        return new Cluster(
                riverId,
                List.copyOf(members),
                accepted,
                members.stream().map(Member::id).collect(Collectors.toUnmodifiableSet()));
    }

    Cluster with(boolean acceptance) {
        return new Cluster(riverId, members, acceptance, ids);
    }

    /** The same with one record fewer, accepted alike. */
    Cluster without(Member member) {
        return of(
                riverId,
                members.stream().filter(one -> !one.id().equals(member.id())).toList(),
                accepted);
    }

    /** The days on which it was met, in order. */
    List<LocalDate> days() {
        return members.stream()
                .flatMap(member -> member.dates().stream())
                .collect(Collectors.toCollection(TreeSet::new))
                .stream()
                .toList();
    }

    int spreadDays() {
        List<LocalDate> days = days();
        return (int) ChronoUnit.DAYS.between(days.get(0), days.get(days.size() - 1));
    }

    /** Its members on one river, going upstream. */
    List<Member> on(UUID river) {
        Member last = members.get(members.size() - 1);
        if (last.place().riverId().equals(riverId)) {
            return river.equals(riverId) ? members : List.of();
        }
        return members.stream()
                .filter(member -> member.place().riverId().equals(river))
                .toList();
    }

    List<Member> atHome() {
        return on(riverId);
    }

    Chainage lowest() {
        return atHome().get(0).place().chainage();
    }

    Chainage highest() {
        List<Member> home = atHome();
        return home.get(home.size() - 1).place().chainage();
    }

    Stretch stretch() {
        return new Stretch(lowest(), highest());
    }

    boolean holds(Member member) {
        return holds(member.id());
    }

    boolean holds(UUID id) {
        return ids.contains(id);
    }

    /** Whether the two have a record in common. */
    boolean sharesWith(Cluster other) {
        return members.stream().anyMatch(other::holds);
    }

    /** Whether the two hold the same records and are accepted alike. */
    boolean sameAs(Cluster other) {
        return accepted == other.accepted && ids.equals(other.ids);
    }

    /** Its sightings, by date. */
    List<Member.Seen> sightings() {
        return members.stream()
                .filter(Member.Seen.class::isInstance)
                .map(Member.Seen.class::cast)
                .sorted((one, other) -> one.first().compareTo(other.first()))
                .toList();
    }

    /** Its nests, by the day when they first showed breeding. */
    List<Member.Nesting> nests() {
        return members.stream()
                .filter(Member.Nesting.class::isInstance)
                .map(Member.Nesting.class::cast)
                .sorted((one, other) -> one.first().compareTo(other.first()))
                .toList();
    }

    /** How many registrations it has: each sighting one, each nest one a day on which it showed breeding. */
    int registrations() {
        return members.stream().mapToInt(member -> member.dates().size()).sum();
    }
}
