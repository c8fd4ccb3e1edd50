package org.ouzelbook.tracker.exchange;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Sighting;

/**
 * The sightings of one file that name each other as seen at the same time. They wait until all of them are there; one that
 * names a sighting that stays out stays out as well, so that no pair of birds is torn apart.
 */
final class SimultaneousRows {
    private final BookIndex book;
    private final BiConsumer<RowReader, Sighting> ready;
    private final Consumer<RowReader> leftOut;
    private final List<Kept> rows = new ArrayList<>();
    private final Map<String, List<Kept>> byLabel = new HashMap<>();

    private static final class Kept {
        private final RowReader row;
        private final Optional<Sighting> sighting;
        private final List<String> names;
        private final Set<UUID> links = new HashSet<>();
        private final List<Kept> partners = new ArrayList<>();

        private Kept(RowReader row, Optional<Sighting> sighting, List<String> names) {
            this.row = row;
            this.sighting = sighting;
            this.names = names;
        }

        private boolean isReady() {
            return row.isReady() && sighting.isPresent();
        }
    }

    SimultaneousRows(BookIndex book, BiConsumer<RowReader, Sighting> ready, Consumer<RowReader> leftOut) {
        this.book = book;
        this.ready = ready;
        this.leftOut = leftOut;
    }

    void keep(RowReader row, String label, Optional<Sighting> sighting, List<String> names) {
        Kept kept = new Kept(row, sighting, names);
        rows.add(kept);
        if (!label.isEmpty()) {
            byLabel.computeIfAbsent(BookIndex.key(label), key -> new ArrayList<>())
                    .add(kept);
        }
    }

    void settle() {
        rows.forEach(kept -> kept.names.forEach(name -> link(kept, name)));
        spreadRefusals();
        for (Kept kept : rows) {
            if (kept.isReady()) {
                ready.accept(kept.row, linked(kept));
            } else {
                leftOut.accept(kept.row);
            }
        }
    }

    private static Sighting linked(Kept kept) {
        Sighting bare = kept.sighting.orElseThrow();
        return new Sighting(
                bare.id(),
                bare.label(),
                bare.visitId(),
                bare.date(),
                bare.time(),
                bare.place(),
                bare.species(),
                bare.count(),
                bare.age(),
                bare.sex(),
                bare.activities(),
                bare.breedingCode(),
                bare.rings(),
                kept.links,
                bare.flewTo(),
                bare.turnedBack(),
                bare.observer(),
                bare.note());
    }

    private void link(Kept kept, String name) {
        if (kept.sighting.isEmpty()) {
            byLabel.getOrDefault(BookIndex.key(name), List.of()).forEach(other -> join(kept, other));
            return;
        }
        Sighting sighting = kept.sighting.get();
        if (name.equalsIgnoreCase(sighting.label())) {
            kept.row.problem(Column.SIMULTANEOUS_WITH, Message.of("import.simultaneous.itself"));
            return;
        }
        List<Kept> named = byLabel.getOrDefault(BookIndex.key(name), List.of());
        List<Kept> sameDay = named.stream()
                .filter(other ->
                        other.sighting.isEmpty() || other.sighting.get().date().equals(sighting.date()))
                .toList();
        List<Kept> sameVisit = sameDay.stream()
                .filter(other -> other.sighting.isPresent()
                        && other.sighting.get().visitId().equals(sighting.visitId()))
                .toList();
        List<Kept> meant = sameVisit.size() == 1 ? sameVisit : sameDay;
        if (meant.size() == 1) {
            join(kept, meant.get(0));
        } else if (meant.size() > 1) {
            kept.row.problem(Column.SIMULTANEOUS_WITH, Message.of("import.simultaneous.several", name));
        } else if (named.size() == 1) {
            kept.row.problem(
                    Column.SIMULTANEOUS_WITH,
                    Message.of(
                            "import.simultaneous.otherDay",
                            name,
                            named.get(0).row.number()));
        } else {
            linkToBook(kept, sighting, name);
        }
    }

    private static void join(Kept one, Kept other) {
        one.partners.add(other);
        other.partners.add(one);
        one.sighting.ifPresent(sighting -> other.links.add(sighting.id()));
        other.sighting.ifPresent(sighting -> one.links.add(sighting.id()));
    }

    private void linkToBook(Kept kept, Sighting sighting, String name) {
        List<Sighting> sameDay = book.edit().sightings(name).stream()
                .filter(other -> other.date().equals(sighting.date()))
                .toList();
        if (sameDay.size() == 1) {
            kept.links.add(sameDay.get(0).id());
        } else if (sameDay.isEmpty()) {
            List<String> similar = Similar.to(name, byLabel.keySet().stream());
            kept.row.problem(
                    Column.SIMULTANEOUS_WITH,
                    similar.isEmpty()
                            ? Message.of("import.simultaneous.unknown", name)
                            : Message.of("import.simultaneous.unknown.similar", name, similar));
        } else {
            kept.row.problem(Column.SIMULTANEOUS_WITH, Message.of("import.simultaneous.several", name));
        }
    }

    /** A row whose partner stays out stays out too. */
    private void spreadRefusals() {
        Deque<Kept> out =
                new ArrayDeque<>(rows.stream().filter(kept -> !kept.isReady()).toList());
        while (!out.isEmpty()) {
            Kept refused = out.remove();
            for (Kept partner : refused.partners) {
                if (partner.isReady()) {
                    partner.row.problem(
                            Column.SIMULTANEOUS_WITH, Message.of("import.simultaneous.heldBack", refused.row.number()));
                    out.add(partner);
                }
            }
        }
    }
}
