package org.ouzelbook.tracker.store;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.river.MeasuredLine;

/** Finds which river of another book is which of this one, and how places on its lines get to the lines here. */
final class RiverMeeting {
    /** A hundred-thousandth of a degree is about a metre: lines that were written with fewer digits are still the same. */
    private static final double SAME_DEGREES = 1e-5;

    private static final double SAME_METRES = 1;

    /** The line with more points is the finer one; of equally fine ones it is a matter of form which counts, but never of chance. */
    private static final Comparator<RiverLine> FINER = Comparator.<RiverLine>comparingInt(
                    line -> line.points().size())
            .thenComparing(line -> RiverStore.LINES.row(line).text("points"));

    private final Database database;
    private final Bundle bundle;
    private final Map<UUID, UUID> keys;
    private final MergeTally tally;
    private final RiverLines lines = new RiverLines();
    private final List<RiverLine> toAdd = new ArrayList<>();
    private final Set<UUID> open = new HashSet<>();
    private final Set<UUID> met = new HashSet<>();
    private int known;

    RiverMeeting(Database database, Bundle bundle, Map<UUID, UUID> keys, MergeTally tally) {
        this.database = database;
        this.bundle = bundle;
        this.keys = keys;
        this.tally = tally;
    }

    /** Matches every river of the other book. */
    void run() {
        for (Row river : bundle.rows(RiverStore.RIVERS.table())) {
            UUID here = keys.getOrDefault(river.id(), river.id());
            Optional<Row> known = RiverStore.RIVERS.table().row(database, here);
            Optional<Row> found = known.isPresent() ? known : named(river);
            if (found.isEmpty()) {
                linesThere(river.id()).forEach(line -> {
                    lines.same(river.id(), line.version(), line.version());
                    toAdd.add(line);
                });
            } else if (known.isPresent() || isOne(river, found.get())) {
                if (known.isEmpty()) {
                    keys.put(river.id(), found.get().id());
                    met.add(river.id());
                }
                if (river.id().equals(found.get().id())) {
                    meetLines(river, river.id());
                } else {
                    meetDrawings(river, found.get().id());
                }
            }
        }
    }

    private Optional<Row> named(Row river) {
        return RiverStore.RIVERS
                .table()
                .rows(database, "WHERE LOWER(name) = LOWER(?) ORDER BY id", river.text("name"))
                .stream()
                .filter(mine -> bundle.rows(RiverStore.RIVERS.table()).stream()
                        .noneMatch(other -> other.id().equals(mine.id())))
                .findFirst();
    }

    /** Rivers with one name are one if they share a line; else a person must tell. */
    private boolean isOne(Row river, Row mine) {
        List<RiverLine> there = linesThere(river.id());
        List<RiverLine> here = RiverStore.lines(database, mine.id());
        if (there.stream().anyMatch(line -> here.stream().anyMatch(other -> isSame(line, other)))
                || (there.isEmpty() && here.isEmpty())) {
            return true;
        }
        Optional<MergeAnswer> answer = tally.ask(
                MergeQuestion.About.ONE_RIVER,
                river.id() + " " + mine.id(),
                Message.of("merge.ask.river", mine.text("name"), bundle.from(), kilometres(there), kilometres(here)),
                List.of(),
                List.of(MergeAnswer.SAME, MergeAnswer.DIFFERENT));
        if (answer.isEmpty()) {
            open.add(river.id());
        } else if (answer.get() == MergeAnswer.DIFFERENT) {
            there.forEach(line -> {
                lines.same(river.id(), line.version(), line.version());
                toAdd.add(line);
            });
        }
        return answer.filter(MergeAnswer.SAME::equals).isPresent();
    }

    private static double kilometres(List<RiverLine> lines) {
        return lines.isEmpty()
                ? 0
                : MeasuredLine.of(lines.get(lines.size() - 1)).length() / 1000;
    }

    /** One river that two people drew: what the other measured on another line is measured anew on the one here. */
    private void meetDrawings(Row river, UUID hereId) {
        List<RiverLine> here = RiverStore.lines(database, hereId);
        for (RiverLine line : linesThere(river.id())) {
            Optional<RiverLine> same = same(line, here);
            if (same.isPresent()) {
                known++;
                lines.same(river.id(), line.version(), same.get().version());
            } else if (!here.isEmpty()) {
                lines.anew(river.id(), line, here.get(here.size() - 1));
                tally.notes.add(Message.of("merge.note.measuredAnew", river.text("name"), bundle.from()));
            }
        }
    }

    /**
     * One river with the same key in both books. Every line is kept, and places stay on the one that they were measured on. The
     * newest line is that of the book which knows the other’s; where neither does, two people corrected the line apart, and
     * {@link #FINER} tells the same one in every book.
     */
    private void meetLines(Row river, UUID riverId) {
        List<RiverLine> here = RiverStore.lines(database, riverId);
        List<RiverLine> there = linesThere(river.id());
        List<RiverLine> unknown = new ArrayList<>();
        for (RiverLine line : there) {
            Optional<RiverLine> same = same(line, here);
            same.ifPresent(mine -> lines.same(river.id(), line.version(), mine.version()));
            if (same.isEmpty()) {
                unknown.add(line);
            }
        }
        known += there.size() - unknown.size();
        if (unknown.isEmpty()) {
            return;
        }
        int version = here.stream().mapToInt(RiverLine::version).max().orElse(0);
        for (RiverLine line : unknown) {
            version = Math.max(version + 1, line.version());
            lines.same(river.id(), line.version(), version);
            toAdd.add(numbered(line, version));
        }
        RiverLine theirs = there.get(there.size() - 1);
        Optional<RiverLine> mine = here.isEmpty() ? Optional.empty() : Optional.of(here.get(here.size() - 1));
        boolean theyKnowMine = mine.isEmpty() || same(mine.get(), there).isPresent();
        boolean iKnowTheirs = same(theirs, here).isPresent();
        boolean mineIsNewest = iKnowTheirs || (!theyKnowMine && FINER.compare(mine.orElseThrow(), theirs) > 0);
        if (mineIsNewest) {
            toAdd.add(numbered(mine.orElseThrow(), version + 1));
        }
        if (theyKnowMine) {
            tally.notes.add(Message.of("merge.note.newLine", river.text("name"), version));
        } else if (!iKnowTheirs) {
            tally.notes.add(Message.of(
                    "merge.note.twoLines",
                    river.text("name"),
                    bundle.from(),
                    mineIsNewest ? Message.of("merge.note.twoLines.mine") : Message.of("merge.note.twoLines.theirs")));
        }
    }

    private static Optional<RiverLine> same(RiverLine line, List<RiverLine> others) {
        return others.stream().filter(other -> isSame(line, other)).findFirst();
    }

    private static RiverLine numbered(RiverLine line, int version) {
        return new RiverLine(line.riverId(), version, line.lowerEnd(), line.points(), line.source());
    }

    private List<RiverLine> linesThere(UUID riverId) {
        return bundle.rows(RiverStore.LINES.table()).stream()
                .filter(row -> row.key("river_id").equals(riverId))
                .map(RiverStore.LINES::entry)
                .sorted(Comparator.comparing(RiverLine::version))
                .toList();
    }

    static boolean isSame(RiverLine one, RiverLine other) {
        if (one.points().size() != other.points().size() || one.lowerEnd().distanceTo(other.lowerEnd()) > SAME_METRES) {
            return false;
        }
        for (int i = 0; i < one.points().size(); i++) {
            GeoPoint point = one.points().get(i);
            GeoPoint twin = other.points().get(i);
            if (Math.abs(point.latitude() - twin.latitude()) > SAME_DEGREES
                    || Math.abs(point.longitude() - twin.longitude()) > SAME_DEGREES) {
                return false;
            }
        }
        return true;
    }

    /** {@return how places get here} */
    RiverLines lines() {
        return lines;
    }

    /** {@return lines that are new here, of rivers that may be} */
    List<RiverLine> toAdd() {
        return toAdd;
    }

    /** {@return how many lines of the other book are here already} */
    int known() {
        return known;
    }

    /** {@return rivers of which a person must first tell whether they are one with a river here} */
    Set<UUID> open() {
        return open;
    }

    /** {@return rivers that were found here under another key} */
    Set<UUID> met() {
        return met;
    }
}
