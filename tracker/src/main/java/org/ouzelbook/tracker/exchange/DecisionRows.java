package org.ouzelbook.tracker.exchange;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.DecisionKind;
import org.ouzelbook.tracker.domain.Keys;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.exchange.cell.Words;

/** Takes what surveyors decided about territories. One that the book has already, whoever made it, is a duplicate. */
final class DecisionRows implements KindRows {
    private final TableTally tally;
    private final List<Decision> known;

    DecisionRows(BookIndex book, TableTally tally) {
        this.tally = tally;
        this.known = new ArrayList<>(book.edit().decisions());
    }

    @Override
    public void take(RowReader row) {
        Optional<Decision> made = decision(row);
        if (made.isEmpty() || !row.isReady()) {
            tally.leaveOut(row);
        } else if (known.stream().anyMatch(other -> isSame(other, made.get()))) {
            tally.settle(row, Outcome.DUPLICATE);
        } else {
            known.add(made.get());
            tally.add(made.get(), row.number());
            tally.settle(row, Outcome.ADDED);
        }
    }

    private static boolean isSame(Decision one, Decision other) {
        return one.species().equals(other.species())
                && one.season() == other.season()
                && one.riverId().equals(other.riverId())
                && one.kind() == other.kind()
                && one.stretch().lower().distanceTo(other.stretch().lower()) < 1
                && one.stretch().upper().distanceTo(other.stretch().upper()) < 1
                && one.note().equals(other.note());
    }

    private static Optional<Decision> decision(RowReader row) {
        Optional<Species> species = row.species();
        Optional<Integer> season = season(row);
        Optional<River> river = RowPlace.neededRiver(row);
        Optional<DecisionKind> kind = kind(row);
        Optional<Chainage> from = RowPlace.kmOnRiver(row, Column.FROM_KM, river);
        Optional<Chainage> to = RowPlace.kmOnRiver(row, Column.TO_KM, river);
        Optional<String> note = Optional.of(row.text(Column.NOTE)).filter(text -> !text.isEmpty());
        LocalDate on = row.date(Column.DATE).orElse(row.table().answers().today());
        for (Column end : List.of(Column.FROM_KM, Column.TO_KM)) {
            if (row.known(end).isEmpty()) {
                row.problem(end, Message.of("import.decision.noPlace"));
            }
        }
        if (species.isEmpty() || season.isEmpty() || kind.isEmpty() || from.isEmpty() || to.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(new Decision(
                    Keys.next(),
                    species.get(),
                    season.get(),
                    river.orElseThrow().id(),
                    kind.get(),
                    Stretch.between(from.get(), to.get()),
                    note,
                    row.text(Column.OBSERVER),
                    on));
        } catch (IllegalArgumentException e) {
            row.problem(Column.KIND, Message.of("import.decision.noSense"));
            return Optional.empty();
        }
    }

    private static Optional<Integer> season(RowReader row) {
        Optional<String> text = row.known(Column.SEASON);
        Optional<Integer> year =
                text.filter(digits -> digits.matches("(1[89]|20)\\d{2}")).map(Integer::valueOf);
        if (year.isEmpty()) {
            row.problem(Column.SEASON, Message.of("import.decision.noSeason"));
        }
        return year;
    }

    private static Optional<DecisionKind> kind(RowReader row) {
        Optional<DecisionKind> kind = Words.DECISION_KINDS.term(row.text(Column.KIND));
        if (kind.isEmpty()) {
            row.problem(
                    Column.KIND, Message.of("import.word.unknown", List.copyOf(Words.DECISION_KINDS.suggestions())));
        }
        return kind;
    }
}
