package org.ouzelbook.tracker.store;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Message;

/**
 * Finds what two people may both have written down: one bird, or one visit that they made together.
 *
 * <p>One bird: same species, count, river and day; within 50 m, or 100 m where one place is known no better than that; within 10
 * minutes where both times are known; and not said to be two birds at the same time. One visit: same river and day, times that
 * overlap where both are known, and the half of the shorter walk walked by both. The limits are common practice, no source.
 */
final class SameSeen {
    private static final double NEAR_METRES = 50;
    private static final double ROUGH_METRES = 100;
    private static final long NEAR_SECONDS = 600;
    private static final double SHARE_OF_THE_SHORTER = 0.5;

    private final Database database;
    private final Map<UUID, String> owners;
    private final Set<UUID> decided = new HashSet<>();
    private final List<SamePair> found = new ArrayList<>();

    private SameSeen(Database database) {
        this.database = database;
        this.owners = Together.owners(database);
        Together.PAIRS.rows(database, "").forEach(row -> decided.add(row.id()));
    }

    /** {@return the pairs of which nobody has decided yet, visits before sightings, by day} */
    static List<SamePair> open(Database database) {
        SameSeen seen = new SameSeen(database);
        if (!seen.owners.isEmpty()) {
            seen.visits();
            seen.sightings();
        }
        return List.copyOf(seen.found);
    }

    private void visits() {
        Table visits = VisitStore.VISITS.table();
        byGroup(visits, "ORDER BY walked_on, river_id, id", row -> row.date("walked_on") + " " + row.key("river_id"))
                .forEach(group -> pairs(group, SameSeen::sameVisit));
    }

    private void sightings() {
        Table sightings = SightingStore.SIGHTINGS.table();
        byGroup(
                        sightings,
                        "ORDER BY seen_on, species, river_id, chainage_m, id",
                        row -> row.date("seen_on") + " " + row.text("species") + " " + row.key("river_id"))
                .forEach(group -> pairs(group, this::sameBird));
    }

    private interface Group {
        String of(Row row);
    }

    /** {@return groups that hold records of two people} */
    private List<List<Row>> byGroup(Table table, String order, Group name) {
        List<List<Row>> groups = new ArrayList<>();
        List<Row> current = new ArrayList<>();
        String[] last = {""};
        database.each(table.select() + " " + order, result -> Row.of(table, result), row -> {
            String group = name.of(row);
            if (!group.equals(last[0])) {
                keep(current, groups);
                current.clear();
                last[0] = group;
            }
            current.add(row);
        });
        keep(current, groups);
        return groups;
    }

    private void keep(List<Row> group, List<List<Row>> groups) {
        if (group.stream().map(row -> owner(row.id())).distinct().count() > 1) {
            groups.add(List.copyOf(group));
        }
    }

    private interface Judge {
        boolean areOne(Row one, Row other);
    }

    private void pairs(List<Row> group, Judge judge) {
        for (int i = 0; i < group.size(); i++) {
            for (int j = i + 1; j < group.size(); j++) {
                if (!owner(group.get(i).id()).equals(owner(group.get(j).id()))
                        && judge.areOne(group.get(i), group.get(j))) {
                    propose(group.get(i), group.get(j));
                }
            }
        }
    }

    private String owner(UUID id) {
        return owners.getOrDefault(id, "");
    }

    private void propose(Row one, Row other) {
        Row pair = Together.pair(one.table().name(), one.id(), other.id(), true, "", java.time.LocalDate.EPOCH);
        if (decided.contains(pair.id())) {
            return;
        }
        boolean inOrder = pair.key("one_id").equals(one.id());
        Row first = inOrder ? one : other;
        Row second = inOrder ? other : one;
        boolean visit = one.table().equals(VisitStore.VISITS.table());
        found.add(new SamePair(
                MergeTally.code("pair " + pair.id()),
                one.table().name(),
                first.id(),
                second.id(),
                Message.of(
                        visit ? "merge.pair.visit" : "merge.pair.bird",
                        Merge.words(first),
                        ownerWords(first.id()),
                        Merge.words(second),
                        ownerWords(second.id())),
                owner(first.id()),
                owner(second.id())));
    }

    private Object ownerWords(UUID id) {
        String owner = owner(id);
        return owner.isEmpty() ? Message.of("merge.yours") : owner;
    }

    private boolean sameBird(Row one, Row other) {
        boolean rough = Math.max(one.decimal("uncertainty_m"), other.decimal("uncertainty_m")) > NEAR_METRES;
        double apart = Math.abs(one.decimal("chainage_m") - other.decimal("chainage_m"));
        return apart <= (rough ? ROUGH_METRES : NEAR_METRES) + 1e-6
                && one.whole("individuals") == other.whole("individuals")
                && near(one.optionalTime("seen_at"), other.optionalTime("seen_at"))
                && SimultaneousLinks.TABLE
                        .row(
                                database,
                                SimultaneousLinks.link(one.id(), other.id()).id())
                        .isEmpty();
    }

    private static boolean near(Optional<LocalTime> one, Optional<LocalTime> other) {
        return one.isEmpty()
                || other.isEmpty()
                || Math.abs(one.get().toSecondOfDay() - other.get().toSecondOfDay()) <= NEAR_SECONDS;
    }

    private static boolean sameVisit(Row one, Row other) {
        Optional<Double> lower = one.optional("walked_lower_m", Double.class);
        Optional<Double> otherLower = other.optional("walked_lower_m", Double.class);
        if (lower.isEmpty() || otherLower.isEmpty()) {
            return false;
        }
        double upper = one.decimal("walked_upper_m");
        double otherUpper = other.decimal("walked_upper_m");
        double shared = Math.min(upper, otherUpper) - Math.max(lower.get(), otherLower.get());
        double shorter = Math.min(upper - lower.get(), otherUpper - otherLower.get());
        return shared >= 0 && shared >= SHARE_OF_THE_SHORTER * shorter && overlap(one, other);
    }

    private static boolean overlap(Row one, Row other) {
        return !after(one.optionalTime("started_at"), other.optionalTime("ended_at"))
                && !after(other.optionalTime("started_at"), one.optionalTime("ended_at"));
    }

    private static boolean after(Optional<LocalTime> start, Optional<LocalTime> end) {
        return start.isPresent() && end.isPresent() && start.get().isAfter(end.get());
    }

    /**
     * {@return for each record of a table that is of the same bird or visit as another, the one that stands for both: the
     * keeper's own, else the one with the oldest key}
     */
    static Map<UUID, UUID> standIns(Database database, Table table) {
        Map<UUID, String> owners = Together.owners(database);
        Groups<UUID> same = new Groups<>();
        for (Row row :
                Together.PAIRS.rows(database, "WHERE table_name = ? AND is_same = TRUE ORDER BY id", table.name())) {
            UUID one = same.leader(row.key("one_id"));
            UUID other = same.leader(row.key("other_id"));
            boolean oneFirst = rank(owners, one).compareTo(rank(owners, other)) < 0;
            if (table.row(database, one).isPresent()
                    && table.row(database, other).isPresent()) {
                same.join(oneFirst ? one : other, oneFirst ? other : one);
            }
        }
        return same.standIns();
    }

    private static String rank(Map<UUID, String> owners, UUID key) {
        return (owners.containsKey(key) ? "2 " : "1 ") + key;
    }
}
