package org.ouzelbook.tracker.store;

import static org.ouzelbook.tracker.store.Table.key;

import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Sighting;

/**
 * Keeps which sightings were simultaneous: one row for two sightings, so a link is always mutual. A link to a sighting that
 * is still to come waits until it is there.
 */
final class SimultaneousLinks {
    static final Table TABLE = Table.ofLinks("simultaneous", key("one_id", "sighting"), key("other_id", "sighting"));

    private static final String TOUCHING = "WHERE one_id = ? OR other_id = ?";

    private final Database database;
    private final Ledger ledger;
    private final Map<UUID, Row> waiting = new LinkedHashMap<>();

    SimultaneousLinks(Database database, Ledger ledger) {
        this.database = database;
        this.ledger = ledger;
    }

    /** Links a new sighting. */
    void add(Sighting sighting) {
        for (UUID other : sighting.simultaneousWith()) {
            Row link = link(sighting.id(), other);
            waiting.putIfAbsent(link.id(), link);
        }
    }

    /** Makes the links of a sighting those that it now has, and no others. */
    void replace(Sighting sighting) {
        Set<UUID> kept = new HashSet<>();
        sighting.simultaneousWith()
                .forEach(other -> kept.add(link(sighting.id(), other).id()));
        for (Row link : links(sighting.id())) {
            if (!kept.remove(link.id())) {
                ledger.remove(TABLE, link.id());
            }
        }
        waiting.values().removeIf(link -> touches(link, sighting.id()));
        sighting.simultaneousWith().stream()
                .map(other -> link(sighting.id(), other))
                .filter(link -> kept.contains(link.id()))
                .forEach(link -> waiting.put(link.id(), link));
    }

    /** Removes every link of a sighting. */
    void remove(UUID sightingId) {
        links(sightingId).forEach(link -> ledger.remove(TABLE, link.id()));
        waiting.values().removeIf(link -> touches(link, sightingId));
    }

    /** Writes the links whose two sightings are there. */
    void write() {
        for (Iterator<Row> links = waiting.values().iterator(); links.hasNext(); ) {
            Row link = links.next();
            if (isThere(link.key("one_id")) && isThere(link.key("other_id"))) {
                if (TABLE.row(database, link.id()).isEmpty()) {
                    ledger.add(link);
                }
                links.remove();
            }
        }
    }

    /**
     * Writes every link.
     *
     * @throws IllegalArgumentException if a sighting of one is not there
     */
    void writeAll() {
        write();
        if (!waiting.isEmpty()) {
            throw new IllegalArgumentException("A sighting was simultaneous with one that is not in the book: "
                    + waiting.values().iterator().next().values());
        }
    }

    private boolean isThere(UUID sightingId) {
        return database.first("SELECT 1 FROM sighting WHERE id = ?", result -> true, sightingId)
                .isPresent();
    }

    private List<Row> links(UUID sightingId) {
        return links(database, sightingId);
    }

    /** {@return every link of a sighting} */
    static List<Row> links(Database database, UUID sightingId) {
        return TABLE.rows(database, TOUCHING, sightingId, sightingId);
    }

    private static boolean touches(Row link, UUID sightingId) {
        return link.key("one_id").equals(sightingId) || link.key("other_id").equals(sightingId);
    }

    /** {@return the row for two sightings, in either order} */
    static Row link(UUID sightingId, UUID otherId) {
        boolean inOrder = sightingId.toString().compareTo(otherId.toString()) < 0;
        UUID one = inOrder ? sightingId : otherId;
        UUID other = inOrder ? otherId : sightingId;
        UUID id = UUID.nameUUIDFromBytes((one + " " + other).getBytes(StandardCharsets.UTF_8));
        return new Row(TABLE).set("id", id).set("one_id", one).set("other_id", other);
    }
}
