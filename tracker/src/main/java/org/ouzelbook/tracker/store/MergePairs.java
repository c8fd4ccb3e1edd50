package org.ouzelbook.tracker.store;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Message;

/** Takes over what others decided: whether two sightings or visits are one, and whether two names are one person's. */
final class MergePairs {
    private final Merge merge;

    MergePairs(Merge merge) {
        this.merge = merge;
    }

    /** Takes every pair of the other book, and asks where it contradicts one here. */
    void run() {
        for (Row there : merge.bundle().rows(Together.PAIRS)) {
            if (there.text("table_name").equals(Together.PEOPLE)) {
                takeNames(there);
            } else {
                takeRecords(there, Schema.table(there.text("table_name")));
            }
        }
    }

    private void takeNames(Row there) {
        String one = there.text("one_name");
        String other = there.text("other_name");
        take(
                Together.people(one, other, there.yes("is_same"), there.text("decided_by"), there.date("decided_on")),
                Message.of("merge.ask.people", one, merge.bundle().from(), other));
    }

    private void takeRecords(Row there, Table table) {
        UUID one = merge.memory().key(there.key("one_id"), table);
        UUID other = merge.memory().key(there.key("other_id"), table);
        if (isHere(table, one) && isHere(table, other) && !one.equals(other)) {
            Row record = table.row(merge.here().database(), one).orElseThrow();
            take(
                    Together.pair(
                            table.name(),
                            one,
                            other,
                            there.yes("is_same"),
                            there.text("decided_by"),
                            there.date("decided_on")),
                    Message.of(
                            "merge.ask.pair",
                            Merge.words(record),
                            merge.bundle().from()));
        }
    }

    private boolean isHere(Table table, UUID key) {
        return merge.here().has(table, key);
    }

    private void take(Row pair, Message words) {
        Optional<Row> mine = pair.table().row(merge.here().database(), pair.id());
        if (mine.isEmpty()) {
            merge.here().ledger().add(pair);
        } else if (mine.get().yes("is_same") != pair.yes("is_same")) {
            ask(mine.get(), pair, words);
        }
    }

    private void ask(Row mine, Row pair, Message words) {
        long state = pair.yes("is_same") ? 1 : 0;
        if (merge.memory().lineage().earlier(pair.id()).contains(state)) {
            return;
        }
        merge.tally()
                .ask(
                        MergeQuestion.About.CONTRADICTION,
                        pair.id() + " " + state,
                        words,
                        List.of(),
                        List.of(MergeAnswer.MINE, MergeAnswer.THEIRS))
                .ifPresent(answer -> {
                    merge.memory().put(pair.table(), pair.id(), state, Optional.empty());
                    if (answer == MergeAnswer.THEIRS) {
                        merge.here().ledger().replace(pair);
                        merge.memory().put(pair.table(), pair.id(), mine.yes("is_same") ? 1 : 0, Optional.empty());
                    }
                });
    }
}
