package org.ouzelbook.tracker.store;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
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

    private final Database database;
    private final Bundle bundle;
    private final MergeMemory memory;
    private final MergeTally tally;
    private final RiverLines lines = new RiverLines();
    private final List<RiverLine> toAdd = new ArrayList<>();
    private final Set<UUID> open = new HashSet<>();
    private final Set<UUID> met = new HashSet<>();
    private final Map<UUID, Set<Long>> drawnFrom = new HashMap<>();
    private int known;

    RiverMeeting(Database database, Bundle bundle, MergeMemory memory, MergeTally tally) {
        this.database = database;
        this.bundle = bundle;
        this.memory = memory;
        this.tally = tally;
    }

    /** Matches every river of the other book. */
    void run() {
        for (Row river : bundle.rows(RiverStore.RIVERS.table())) {
            UUID here = memory.key(river.id(), RiverStore.RIVERS.table());
            Optional<Row> known = RiverStore.RIVERS.table().row(database, here);
            Optional<Row> found = known.isPresent() ? known : named(river);
            if (found.isEmpty()) {
                takeLines(river.id());
            } else if (known.isPresent() || isOne(river, found.get())) {
                if (known.isEmpty()) {
                    memory.meet(river.id(), found.get().id());
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
            takeLines(river.id());
        }
        return answer.filter(MergeAnswer.SAME::equals).isPresent();
    }

    /** Takes every line of a river that is none of this book's. */
    private void takeLines(UUID river) {
        List<RiverLine> there = linesThere(river);
        there.forEach(line -> lines.same(river, line.version(), line.version()));
        toAdd.addAll(there);
        LineDrawings drawings = new LineDrawings();
        drawings.add(there, bundle::earlier);
        remember(drawings);
    }

    private void remember(LineDrawings drawings) {
        drawings.all().forEach(drawing -> drawnFrom.put(drawing.key(), drawing.before()));
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
     * One river with the same key in both books. Every line is kept, and places stay on the one that they were measured on; which
     * one is the newest tell its {@link LineDrawings}.
     */
    private void meetLines(Row river, UUID riverId) {
        List<RiverLine> here = RiverStore.lines(database, riverId);
        List<RiverLine> there = linesThere(river.id());
        List<RiverLine> all = new ArrayList<>(here);
        for (RiverLine line : there) {
            Optional<RiverLine> mine = same(line, all);
            int version = mine.map(RiverLine::version).orElse(Math.max(newestVersion(all) + 1, line.version()));
            lines.same(river.id(), line.version(), version);
            if (mine.isEmpty()) {
                all.add(numbered(line, version));
            }
        }
        boolean isNews = all.size() > here.size();
        known += here.size() + there.size() - all.size();
        LineDrawings drawings = new LineDrawings();
        drawings.add(here, this::drawnFrom);
        drawings.add(there.stream().map(line -> same(line, here).orElse(line)).toList(), this::drawnFrom);
        remember(drawings);
        List<LineDrawings.Drawing> newest = drawings.newest();
        if (!newest.isEmpty()) {
            RiverLine first = newest.get(0).line();
            if (!isSame(first, all.get(all.size() - 1))) {
                all.add(numbered(first, newestVersion(all) + 1));
            }
            boolean isMine = !here.isEmpty() && isSame(first, here.get(here.size() - 1));
            if (newest.size() > 1 && (isNews || !isMine)) {
                tally.notes.add(Message.of(
                        "merge.note.twoLines",
                        river.text("name"),
                        bundle.from(),
                        Message.of(
                                same(first, here).isPresent()
                                        ? "merge.note.twoLines.mine"
                                        : "merge.note.twoLines.theirs")));
            } else if (!isMine) {
                tally.notes.add(Message.of("merge.note.newLine", river.text("name"), newestVersion(all)));
            }
        }
        toAdd.addAll(all.subList(here.size(), all.size()));
    }

    /** {@return the drawings that were had when one was drawn, as both books tell} */
    private Set<Long> drawnFrom(UUID drawing) {
        Set<Long> before = new HashSet<>(memory.lineage().earlier(drawing));
        before.addAll(bundle.earlier(drawing));
        return before;
    }

    private static int newestVersion(List<RiverLine> lines) {
        return lines.stream().mapToInt(RiverLine::version).max().orElse(0);
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

    /** {@return of each drawing of a line, by its key, those that were had before} */
    Map<UUID, Set<Long>> drawnFrom() {
        return drawnFrom;
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
