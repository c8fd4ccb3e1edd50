package org.ouzelbook.tracker.store;

import java.util.List;
import java.util.Map;
import org.ouzelbook.tracker.domain.Message;

/**
 * What putting a bundle into a book did.
 *
 * @param file the bundle
 * @param from whose book it is
 * @param read records in it
 * @param added records that are new here, by their table
 * @param changed what was changed since, and is now here as it is there
 * @param removed what was removed there, and now is here
 * @param known records that both books had alike
 * @param older records whose newer state is the one here
 * @param duplicates records that say exactly what another of this book says, and were matched with it
 * @param matched rivers, landmarks and files that both books have, each with a key of its own
 * @param leftOut records that could not come in, because what they belong to is open, or was removed here
 * @param notes what else to know
 * @param questions what waits for a person
 * @param asked the whole codes of all questions, answered or not
 */
public record MergeResult(
        String file,
        String from,
        long read,
        Map<String, Long> added,
        List<Message> changed,
        List<Message> removed,
        long known,
        long older,
        long duplicates,
        long matched,
        long leftOut,
        List<Message> notes,
        List<MergeQuestion> questions,
        List<String> asked) {
    /** Copies the lists. */
    public MergeResult {
        changed = List.copyOf(changed);
        removed = List.copyOf(removed);
        notes = List.copyOf(notes);
        questions = List.copyOf(questions);
        asked = List.copyOf(asked);
    }

    /** {@return how many records are new} */
    public long addedInAll() {
        return added.values().stream().mapToLong(Long::longValue).sum();
    }
}
