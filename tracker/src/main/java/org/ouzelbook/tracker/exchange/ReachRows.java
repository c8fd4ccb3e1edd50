package org.ouzelbook.tracker.exchange;

import java.util.Optional;
import org.ouzelbook.tracker.domain.Keys;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Stretch;

/** Takes reaches. */
record ReachRows(BookIndex book, TableTally tally) implements KindRows {
    @Override
    public void take(RowReader row) {
        Optional<String> name = row.label(Column.REACH);
        Optional<River> river = RowPlace.neededRiver(row);
        Optional<Stretch> stretch = RowPlace.stretch(row, river);
        if (stretch.isEmpty() && river.isPresent() && row.isReady()) {
            row.problem(Column.FROM_KM, Message.of("import.stretch.missing"));
        }
        Optional<Reach> made = name.isEmpty() || river.isEmpty() || stretch.isEmpty()
                ? Optional.empty()
                : Optional.of(new Reach(Keys.next(), name.get(), river.get().id(), stretch.get()));
        Labelled.settle(row, Column.REACH, made, name.flatMap(book::reach), tally, book::know);
    }
}
