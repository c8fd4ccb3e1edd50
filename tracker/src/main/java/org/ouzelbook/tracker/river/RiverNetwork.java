package org.ouzelbook.tracker.river;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;

/** The rivers of a book as a tree: which joins which, and how far it is along the water from one place to another. */
public final class RiverNetwork {
    private final List<River> rivers;
    private final Map<UUID, River> byId = new HashMap<>();
    private final Map<UUID, RiverLine> currentLines = new HashMap<>();
    private final Map<UUID, MeasuredLine> measured = new HashMap<>();

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

    /**
     * {@return the newest version of the line of a river with its measure; empty if it has none}
     *
     * @param riverId key of a river
     */
    public synchronized Optional<MeasuredLine> measuredLine(UUID riverId) {
        return line(riverId).map(line -> measured.computeIfAbsent(riverId, id -> MeasuredLine.of(line)));
    }

    /** {@return the rivers in the order of the water: each main river followed by its tributaries from the mouth up} */
    public List<River> inOrderOfWater() {
        List<River> ordered = new ArrayList<>();
        rivers.stream().filter(river -> river.mouth().isEmpty()).forEach(river -> addWithTributaries(river, ordered));
        return List.copyOf(ordered);
    }

    private void addWithTributaries(River river, List<River> ordered) {
        ordered.add(river);
        tributaries(river.id()).forEach(tributary -> addWithTributaries(tributary, ordered));
    }

    /**
     * {@return the rivers whose mouths lie on this river, from its mouth up}
     *
     * @param riverId key of a river
     */
    public List<River> tributaries(UUID riverId) {
        return rivers.stream()
                .filter(river -> river.mouth()
                        .filter(mouth -> mouth.riverId().equals(riverId))
                        .isPresent())
                .sorted(Comparator.comparing(
                        river -> river.mouth().orElseThrow().chainage()))
                .toList();
    }

    /**
     * {@return the river at whose mouth the water of a river leaves this network: itself, where it joins no other}
     *
     * @param riverId key of a river
     * @throws IllegalArgumentException if there is none
     */
    public River outlet(UUID riverId) {
        River river = river(riverId);
        while (river.mouth().isPresent()) {
            river = river(river.mouth().get().riverId());
        }
        return river;
    }

    /**
     * One stretch of a way along the water.
     *
     * @param riverId the {@link River}
     * @param from where the way enters it
     * @param to where the way leaves it
     */
    public record Leg(UUID riverId, Chainage from, Chainage to) {
        /** {@return the length, in metres} */
        public double length() {
            return from.distanceTo(to);
        }
    }

    /**
     * {@return the way along the water from one place to another, through confluences; empty where no water joins them}
     *
     * <p>Uncertainty and bank play no part.
     *
     * @param from a place on a river of this network
     * @param to a place on a river of this network
     * @throws IllegalArgumentException if a place lies on a river that is not there
     */
    public List<Leg> way(Place from, Place to) {
        List<Leg> down = wayDown(from);
        List<Leg> up = new ArrayList<>();
        for (Leg below : wayDown(to)) {
            for (int i = 0; i < down.size(); i++) {
                if (down.get(i).riverId().equals(below.riverId())) {
                    List<Leg> way = new ArrayList<>(down.subList(0, i));
                    way.add(new Leg(below.riverId(), down.get(i).from(), below.from()));
                    way.addAll(up);
                    return List.copyOf(way);
                }
            }
            up.add(0, new Leg(below.riverId(), below.to(), below.from()));
        }
        return List.of();
    }

    /** The way from a place to the mouth of its main river. */
    private List<Leg> wayDown(Place start) {
        List<Leg> legs = new ArrayList<>();
        River river = river(start.riverId());
        Chainage entry = start.chainage();
        while (true) {
            legs.add(new Leg(river.id(), entry, new Chainage(0)));
            if (river.mouth().isEmpty()) {
                return legs;
            }
            River.Confluence mouth = river.mouth().get();
            entry = mouth.chainage();
            river = river(mouth.riverId());
        }
    }

    /**
     * {@return the distance along the water between two places, through confluences, in metres; empty where no water joins
     * them}
     *
     * @param one a place on a river of this network
     * @param other a place on a river of this network
     * @throws IllegalArgumentException if a place lies on a river that is not there
     */
    public OptionalDouble distance(Place one, Place other) {
        List<Leg> way = way(one, other);
        return way.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(way.stream().mapToDouble(Leg::length).sum());
    }
}
