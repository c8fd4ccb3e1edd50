package org.ouzelbook.tracker.store;

import static org.ouzelbook.tracker.store.Table.date;
import static org.ouzelbook.tracker.store.Table.text;
import static org.ouzelbook.tracker.store.Table.yesNo;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.store.Table.Column;

/** What a book keeps so that it can be put together with other people's books, again and again. */
final class Together {
    /** Whose book a record came from. */
    static final Table OWNERS = Table.ofLinks("record_owner", text("table_name"), text("owner"));

    /** What key a record has in another book. */
    static final Table OTHER_KEYS =
            Table.ofLinks("other_key", text("table_name"), new Column("record_id", ColumnType.KEY));

    /** Which states of other books are known here. */
    static final Table STATES = Table.ofLinks(
            "known_state",
            text("table_name"),
            new Column("record_id", ColumnType.KEY),
            new Column("state", ColumnType.LONG),
            new Column("state_here", ColumnType.LONG));

    /** Which records of two people are of one bird or one visit, and which names are one person's. */
    static final Table PAIRS = Table.ofLinks(
            "same_or_not",
            text("table_name"),
            new Column("one_id", ColumnType.KEY),
            new Column("other_id", ColumnType.KEY),
            yesNo("is_same"),
            text("decided_by"),
            date("decided_on"),
            text("one_name"),
            text("other_name"));

    static final List<Table> TABLES = List.of(OWNERS, OTHER_KEYS, STATES, PAIRS);

    /** What stands for a table in pairs of names: a name is no record, so the row tells it. */
    static final String PEOPLE = "person";

    private Together() {}

    static Row owner(Table table, UUID record, String owner) {
        return new Row(OWNERS).set("id", record).set("table_name", table.name()).set("owner", owner);
    }

    static Row otherKey(Table table, UUID there, UUID here) {
        return new Row(OTHER_KEYS)
                .set("id", there)
                .set("table_name", table.name())
                .set("record_id", here);
    }

    static Row state(Table table, UUID record, long state, Optional<Long> here) {
        return new Row(STATES)
                .set("id", made(record + " " + state))
                .set("table_name", table.name())
                .set("record_id", record)
                .set("state", state)
                .set("state_here", here);
    }

    static Row pair(String table, UUID one, UUID other, boolean same, String by, LocalDate on) {
        boolean inOrder = one.toString().compareTo(other.toString()) < 0;
        UUID first = inOrder ? one : other;
        UUID second = inOrder ? other : one;
        return new Row(PAIRS)
                .set("id", made(first + " " + second))
                .set("table_name", table)
                .set("one_id", first)
                .set("other_id", second)
                .set("is_same", same)
                .set("decided_by", by)
                .set("decided_on", on);
    }

    static Row people(String one, String other, boolean same, String by, LocalDate on) {
        Row row = pair(PEOPLE, person(one), person(other), same, by, on);
        boolean inOrder = row.key("one_id").equals(person(one));
        return row.set("one_name", inOrder ? one : other).set("other_name", inOrder ? other : one);
    }

    /** {@return what stands for the key of a name} */
    static UUID person(String name) {
        return made("person " + name);
    }

    /** {@return a key that is the same in every book for the same words} */
    static UUID made(String words) {
        return UUID.nameUUIDFromBytes(words.getBytes(StandardCharsets.UTF_8));
    }

    /** {@return whose book each record came from; the keeper's own records are left out} */
    static Map<UUID, String> owners(Database database) {
        Map<UUID, String> owners = new HashMap<>();
        OWNERS.rows(database, "").forEach(row -> owners.put(row.id(), row.text("owner")));
        return owners;
    }

    /** {@return the key here of every record that has another key in another book} */
    static Map<UUID, UUID> otherKeys(Database database) {
        Map<UUID, UUID> keys = new HashMap<>();
        OTHER_KEYS.rows(database, "").forEach(row -> keys.put(row.id(), row.key("record_id")));
        return keys;
    }
}
