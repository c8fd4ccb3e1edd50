package org.ouzelbook.tracker.exchange;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.ouzelbook.tracker.domain.Entry;
import org.ouzelbook.tracker.domain.Message;

/** The rule for records that are known by a label: the same again is a duplicate, another of the same label a problem. */
final class Labelled {
    private Labelled() {}

    /**
     * Settles a row that made a record.
     *
     * @param row the row
     * @param label the column of its label
     * @param made the record; empty if the row told too little, which is then noted
     * @param known what the book has under that label
     * @param tally counts the row
     * @param added hears of the record if it was added
     */
    static <T extends Record & Entry> void settle(
            RowReader row, Column label, Optional<T> made, Optional<T> known, TableTally tally, Consumer<T> added) {
        if (made.isPresent() && row.isReady() && known.isPresent()) {
            List<String> differences = Differences.between(known.get(), made.get());
            if (!differences.isEmpty()) {
                row.problem(label, Message.of("import.label.other", differences));
            }
        }
        if (made.isEmpty() || !row.isReady()) {
            tally.leaveOut(row);
        } else if (known.isPresent()) {
            tally.settle(row, Outcome.DUPLICATE);
        } else {
            tally.add(made.get(), row.number());
            added.accept(made.get());
            tally.settle(row, Outcome.ADDED);
        }
    }
}
