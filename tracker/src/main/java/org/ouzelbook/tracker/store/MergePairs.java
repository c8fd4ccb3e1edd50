package org.ouzelbook.tracker.store;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Message;

/** Takes over what others decided of two sightings or visits: whether they are one. */
final class MergePairs {
    private final Merge merge;

    MergePairs(Merge merge) {
        this.merge = merge;
    }

    /** Takes every pair of the other book, and asks where it contradicts one here. */
    void run() {
        for (Row there : merge.bundle().rows(Together.PAIRS)) {
            Table table = Schema.table(there.text("table_name"));
            Row pair = Together.pair(
                    table,
                    merge.keyHere(there.key("one_id"), table),
                    merge.keyHere(there.key("other_id"), table),
                    there.yes("is_same"),
                    there.text("decided_by"),
                    there.date("decided_on"));
            boolean bothHere = isHere(table, pair.key("one_id"))
                    && isHere(table, pair.key("other_id"))
                    && !pair.key("one_id").equals(pair.key("other_id"));
            Optional<Row> mine = pair.table().row(merge.database(), pair.id());
            if (mine.isEmpty() && bothHere) {
                merge.ledger().add(pair);
            } else if (mine.isPresent() && mine.get().yes("is_same") != pair.yes("is_same")) {
                askPair(mine.get(), pair, table);
            }
        }
    }

    private void askPair(Row mine, Row pair, Table table) {
        long state = pair.yes("is_same") ? 1 : 0;
        if (merge.lineage().earlier(pair.id()).contains(state)) {
            return;
        }
        merge.tally()
                .ask(
                        MergeQuestion.About.CONTRADICTION,
                        pair.id() + " " + state,
                        Message.of(
                                "merge.ask.pair",
                                Merge.words(table.row(merge.database(), pair.key("one_id"))
                                        .orElseThrow()),
                                merge.bundle().from()),
                        List.of(),
                        List.of(MergeAnswer.MINE, MergeAnswer.THEIRS))
                .ifPresent(answer -> {
                    merge.put(pair.table(), pair.id(), state, Optional.empty());
                    if (answer == MergeAnswer.THEIRS) {
                        merge.ledger().replace(pair);
                        merge.put(pair.table(), pair.id(), mine.yes("is_same") ? 1 : 0, Optional.empty());
                    }
                });
    }

    private boolean isHere(Table table, UUID key) {
        return merge.stateHere(table, key).isPresent();
    }
}
