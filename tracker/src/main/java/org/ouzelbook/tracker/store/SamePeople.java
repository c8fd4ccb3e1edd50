package org.ouzelbook.tracker.store;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.BiPredicate;
import java.util.stream.Stream;
import org.ouzelbook.tracker.domain.Message;

/**
 * Finds names of observers that may be one person's, in a book that was put together.
 *
 * <p>Three rules, common practice, no source: the same letters, whatever their case, accents, spaces and points; the same
 * surname, and first names of which one is the other's initial, or which one of them does not tell; and a set of initials that is
 * that of exactly one name written out. What follows from other answers is not asked. It depends on the names and the decisions
 * alone, not on the order in which books came.
 */
final class SamePeople {
    private final Map<String, Use> uses = new TreeMap<>();
    private final Groups<String> same = new Groups<>();
    private final List<Row> apart = new ArrayList<>();

    /** In how many records a name stands, and whose those are; blank for the keeper's own. */
    private static final class Use {
        private long records;
        private final Set<String> owners = new TreeSet<>();
    }

    private SamePeople(Database database, Map<UUID, String> owners) {
        Table visits = VisitStore.VISITS.table();
        database.each(
                visits.select(),
                result -> Row.of(visits, result),
                row -> row.texts("observers").forEach(name -> use(name, row.id(), owners)));
        Table sightings = SightingStore.SIGHTINGS.table();
        database.each(
                sightings.select() + " WHERE observer <> ''",
                result -> Row.of(sightings, result),
                row -> use(row.text("observer"), row.id(), owners));
    }

    private void use(String name, UUID record, Map<UUID, String> owners) {
        Use use = uses.computeIfAbsent(name, any -> new Use());
        use.records++;
        use.owners.add(owners.getOrDefault(record, ""));
    }

    /** {@return the pairs of names of which nobody has decided yet, the one that tells more first} */
    static List<SamePair> open(Database database) {
        Map<UUID, String> owners = Together.owners(database);
        return owners.isEmpty() ? List.of() : new SamePeople(database, owners).open(decisions(database));
    }

    private static List<Row> decisions(Database database) {
        return Together.PAIRS.rows(database, "WHERE table_name = ? ORDER BY id", Together.PEOPLE);
    }

    private List<SamePair> open(List<Row> decisions) {
        join(same, decisions);
        decisions.stream().filter(row -> !row.yes("is_same")).forEach(apart::add);
        List<PersonName> names = uses.keySet().stream()
                .flatMap(name -> PersonName.of(name).stream())
                .sorted(PersonName.FULLEST)
                .toList();
        List<SamePair> open = new ArrayList<>();
        for (BiPredicate<PersonName, PersonName> rule : rules(names)) {
            for (int i = 0; i < names.size(); i++) {
                for (int j = i + 1; j < names.size(); j++) {
                    PersonName one = names.get(i);
                    PersonName other = names.get(j);
                    if (rule.test(one, other) && isOpen(one.written(), other.written())) {
                        open.add(pair(one.written(), other.written()));
                    }
                }
            }
        }
        return open;
    }

    private static List<BiPredicate<PersonName, PersonName>> rules(Collection<PersonName> names) {
        Map<String, Set<String>> full = new TreeMap<>();
        names.stream()
                .filter(PersonName::isFull)
                .forEach(name -> full.computeIfAbsent(name.initials(), initials -> new HashSet<>())
                        .add(name.letters()));
        return List.of(
                (one, other) -> one.letters().equals(other.letters()),
                PersonName::fits,
                (one, other) -> one.isFull()
                        && other.isOnlyInitials()
                        && other.letters().equals(one.initials())
                        && full.getOrDefault(one.initials(), Set.of()).size() == 1);
    }

    /** {@return whether neither a decision nor a yes to what was asked before tells that the two are one, or two; now it is asked} */
    private boolean isOpen(String one, String other) {
        String leader = same.leader(one);
        String otherLeader = same.leader(other);
        if (leader.equals(otherLeader) || areTwo(Set.of(leader, otherLeader))) {
            return false;
        }
        same.join(leader, otherLeader);
        return true;
    }

    private boolean areTwo(Set<String> leaders) {
        return apart.stream()
                .anyMatch(row -> leaders.equals(new HashSet<>(
                        List.of(same.leader(row.text("one_name")), same.leader(row.text("other_name"))))));
    }

    private SamePair pair(String one, String other) {
        Row pair = Together.people(one, other, true, "", LocalDate.EPOCH);
        return new SamePair(
                MergeTally.code("pair " + pair.id()),
                Together.PEOPLE,
                Together.person(one),
                Together.person(other),
                Message.of("merge.pair.person", one, usedIn(one), other, usedIn(other)),
                String.join(", ", use(one).owners),
                String.join(", ", use(other).owners));
    }

    private Use use(String name) {
        return uses.getOrDefault(name, new Use());
    }

    private Message usedIn(String name) {
        Use use = use(name);
        List<Object> owners = new ArrayList<>();
        use.owners.forEach(owner -> owners.add(owner.isEmpty() ? Message.of("merge.yours") : owner));
        return Message.of("merge.pair.person.records", use.records, owners);
    }

    /**
     * {@return the row that remembers what was decided of two names}
     *
     * @throws IllegalArgumentException if the book has one of the names no more
     */
    static Row decided(Database database, SamePair pair, boolean isSame, String by, LocalDate on) {
        Set<String> names = new SamePeople(database, Map.of()).uses.keySet();
        return Together.people(name(names, pair.one()), name(names, pair.other()), isSame, by, on);
    }

    private static String name(Set<String> names, UUID key) {
        return names.stream()
                .filter(name -> Together.person(name).equals(key))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("The book has no name with the key " + key));
    }

    /** {@return for each name that was decided to be the same person's as another, the one that tells most} */
    static Map<String, String> standIns(Database database) {
        Groups<String> same = new Groups<>();
        join(same, decisions(database));
        return same.standIns();
    }

    private static void join(Groups<String> same, List<Row> decisions) {
        decisions.stream().filter(row -> row.yes("is_same")).forEach(row -> {
            List<String> leaders = Stream.of(row.text("one_name"), row.text("other_name"))
                    .map(same::leader)
                    .flatMap(name -> PersonName.of(name).stream())
                    .sorted(PersonName.FULLEST)
                    .map(PersonName::written)
                    .toList();
            if (leaders.size() == 2) {
                same.join(leaders.get(0), leaders.get(1));
            }
        });
    }
}
