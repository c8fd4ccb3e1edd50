package org.ouzelbook.tracker.store;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Function;
import org.ouzelbook.tracker.domain.RiverLine;

/**
 * The lines of one river as people drew them, and which of them each had before when drawing. Of all drawings that two books know
 * together, the newest is one that nobody had when drawing another; where people drew apart, {@link #FINER} chooses. So the newest
 * line depends on the drawings alone, and on no order in which books were put together.
 */
final class LineDrawings {
    /** The line with more points is the finer one; of equally fine ones it is a matter of form which counts, but never of chance. */
    private static final Comparator<RiverLine> FINER = Comparator.<RiverLine>comparingInt(
                    line -> line.points().size())
            .thenComparing(line -> RiverStore.LINES.row(line).text("points"));

    /** Stands for what was there before a river's first line. */
    private static final long NOTHING = 0;

    /** In the order in which a book has them. */
    private final Map<UUID, Drawing> drawings = new LinkedHashMap<>();

    /**
     * One drawing.
     *
     * @param line what was drawn; which version it is in some book is no matter
     * @param again how many drawings of the same line whoever drew it had before: a line may be taken up again
     * @param before the states of the drawings that were had before
     */
    record Drawing(RiverLine line, int again, Set<Long> before) {
        Drawing {
            before = Set.copyOf(before);
        }

        long state() {
            return state(line, again);
        }

        UUID key() {
            return key(line, again);
        }

        private static String words(RiverLine line, int again) {
            Row row = RiverStore.LINES.row(line);
            return "drawing " + again + " " + line.riverId() + " " + row.decimal("lower_end_m") + " "
                    + row.text("points");
        }

        static long state(RiverLine line, int again) {
            return RowHash.of(words(line, again));
        }

        static UUID key(RiverLine line, int again) {
            return Together.made(words(line, again));
        }
    }

    /**
     * Takes up a book's lines.
     *
     * @param lines the lines of the river in the order of their versions
     * @param before what is known of a drawing: the states of those that were had before; empty if it is no drawing that is known
     */
    void add(List<RiverLine> lines, Function<UUID, Set<Long>> before) {
        Set<Long> soFar = new HashSet<>(Set.of(NOTHING));
        for (RiverLine line : lines) {
            Drawing first = new Drawing(line, 0, before.apply(Drawing.key(line, 0)));
            if (first.before().isEmpty() && !soFar.contains(first.state())) {
                // a book of an older program does not tell: there each line was drawn by one who had those before it
                first = new Drawing(line, 0, soFar);
            }
            for (Drawing one = first; !one.before().isEmpty(); one = next(one, before)) {
                add(one);
                soFar.add(one.state());
            }
        }
    }

    private static Drawing next(Drawing one, Function<UUID, Set<Long>> before) {
        int again = one.again() + 1;
        return new Drawing(one.line(), again, before.apply(Drawing.key(one.line(), again)));
    }

    private void add(Drawing drawing) {
        drawings.merge(drawing.key(), drawing, (one, other) -> {
            Set<Long> before = new HashSet<>(one.before());
            before.addAll(other.before());
            return new Drawing(one.line(), one.again(), before);
        });
    }

    /** {@return all of them} */
    Collection<Drawing> all() {
        return drawings.values();
    }

    /** {@return the drawings that nobody had when drawing another} */
    List<Drawing> newest() {
        Set<Long> old = new HashSet<>();
        drawings.values().forEach(drawing -> old.addAll(drawing.before()));
        return drawings.values().stream()
                .filter(drawing -> !old.contains(drawing.state()))
                .sorted(Comparator.comparing(Drawing::line, FINER.reversed())
                        .thenComparing(Drawing::again, Comparator.reverseOrder()))
                .toList();
    }

    /**
     * Tells every drawing of several rivers.
     *
     * @param lines the rivers' lines, those of one river together and in the order of their versions
     * @param before as in {@link #add}
     * @param reader hears them
     */
    static void each(List<RiverLine> lines, Function<UUID, Set<Long>> before, Consumer<Drawing> reader) {
        Map<UUID, List<RiverLine>> rivers = new LinkedHashMap<>();
        lines.forEach(line -> rivers.computeIfAbsent(line.riverId(), river -> new ArrayList<>())
                .add(line));
        rivers.values().forEach(river -> {
            LineDrawings drawings = new LineDrawings();
            drawings.add(river, before);
            drawings.all().forEach(reader);
        });
    }

    /** Remembers, when somebody draws a line, which drawings were there. */
    static void remember(Database database, Ledger ledger, RiverLine line) {
        List<RiverLine> there = RiverStore.lines(database, line.riverId()).stream()
                .filter(other -> !other.id().equals(line.id()))
                .toList();
        LineDrawings known = new LineDrawings();
        known.add(there, key -> before(database, key));
        int again = (int) known.all().stream()
                .filter(one -> Drawing.state(one.line(), 0) == Drawing.state(line, 0))
                .count();
        List<Long> before = new ArrayList<>(List.of(NOTHING));
        known.all().forEach(one -> before.add(one.state()));
        UUID key = Drawing.key(line, again);
        before.removeAll(before(database, key));
        before.forEach(state -> ledger.add(Together.state(RiverStore.LINES.table(), key, state, Optional.empty())));
    }

    private static Set<Long> before(Database database, UUID key) {
        Set<Long> before = new HashSet<>();
        Together.STATES.rows(database, "WHERE record_id = ?", key).forEach(row -> before.add(row.number("state")));
        return before;
    }
}
