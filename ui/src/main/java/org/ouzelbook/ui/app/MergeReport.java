package org.ouzelbook.ui.app;

import java.util.List;
import org.ouzelbook.tracker.store.MergeQuestion;
import org.ouzelbook.tracker.store.MergeResult;
import org.ouzelbook.tracker.store.SamePair;

/**
 * What putting books together did or would do; the names of its parts are those of the JSON that scripts read.
 *
 * @param merged whether anything was written into the book
 * @param rehearsal whether this was only a rehearsal
 * @param bundles what became of each bundle, in the order in which they were given
 * @param questions what only a person can tell; nothing is merged while one is open, unless that is accepted
 * @param decided how many pairs were decided to be one or two
 * @param pairs names that may be one person's, and records of two people that may be of one bird or one visit; they keep nothing
 *     from being merged
 */
public record MergeReport(
        boolean merged,
        boolean rehearsal,
        List<MergeResult> bundles,
        List<MergeQuestion> questions,
        int decided,
        List<SamePair> pairs) {
    /** Copies the lists. */
    public MergeReport {
        bundles = List.copyOf(bundles);
        questions = List.copyOf(questions);
        pairs = List.copyOf(pairs);
    }

    /** {@return how many records are new} */
    public long added() {
        return bundles.stream().mapToLong(MergeResult::addedInAll).sum();
    }

    /** {@return how many records were changed or removed} */
    public long changed() {
        return bundles.stream()
                .mapToLong(bundle -> bundle.changed().size() + bundle.removed().size())
                .sum();
    }
}
