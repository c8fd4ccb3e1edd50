package org.ouzelbook.tracker.river;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;

/** The rivers of a book as a tree: which joins which, and how far it is along the water from one place to another. */
public final class RiverNetwork {
    private final List<River> rivers;
    private final Map<UUID, River> byId = new HashMap<>();
    private final Map<UUID, RiverLine> currentLines = new HashMap<>();

    private RiverNetwork(List<River> rivers, List<RiverLine> lines) {
        this.rivers = List.copyOf(rivers);
        rivers.forEach(river -> byId.put(river.id(), river));
        for (RiverLine line : lines) {
            currentLines.merge(line.riverId(), line, (one, other) -> one.version() >= other.version() ? one : other);
        }
        rivers.forEach(this::refuseCircle);
    }

    /**
     * {@return the network of these rivers}
     *
     * @param rivers the rivers, in the order in which they are to be shown
     * @param lines their lines, any number of versions each
     * @throws IllegalArgumentException if rivers join in a circle, or one joins a river that is not there
     */
    public static RiverNetwork of(List<River> rivers, List<RiverLine> lines) {
        return new RiverNetwork(rivers, lines);
    }

    private void refuseCircle(River start) {
        Set<UUID> passed = new HashSet<>();
        River river = start;
        while (river.mouth().isPresent()) {
            if (!passed.add(river.id())) {
                throw new IllegalArgumentException(start.name() + " joins itself through its tributaries");
            }
            UUID next = river.mouth().get().riverId();
            river = Optional.ofNullable(byId.get(next))
                    .orElseThrow(() -> new IllegalArgumentException(start.name() + " joins a river that is not there"));
        }
    }

    /** {@return the rivers, in the order in which they are to be shown} */
    public List<River> rivers() {
        return rivers;
    }

    /**
     * {@return the river with this key}
     *
     * @param id key of a river of this network
     * @throws IllegalArgumentException if there is none
     */
    public River river(UUID id) {
        return Optional.ofNullable(byId.get(id))
                .orElseThrow(() -> new IllegalArgumentException("No river has the key " + id));
    }

    /**
     * {@return the newest version of the line of a river; empty if it has none}
     *
     * @param riverId key of a river
     */
    public Optional<RiverLine> line(UUID riverId) {
        return Optional.ofNullable(currentLines.get(riverId));
    }
}
