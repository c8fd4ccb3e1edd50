package org.ouzelbook.ui.app;

import java.nio.file.Path;
import java.util.List;
import org.ouzelbook.tracker.store.MergeAnswers;

/**
 * What to put together, and how.
 *
 * @param book the book that takes the others in
 * @param bundles the others; none, to decide only what is proposed already
 * @param answers what a person answered
 * @param mode whether it is a rehearsal, and what open questions mean
 * @param who who does it
 */
public record MergeRequest(Path book, List<Path> bundles, MergeAnswers answers, ImportRequest.Mode mode, String who) {
    /** Copies the list. */
    public MergeRequest {
        bundles = List.copyOf(bundles);
    }
}
