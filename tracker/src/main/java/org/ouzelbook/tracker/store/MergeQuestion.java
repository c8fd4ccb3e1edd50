package org.ouzelbook.tracker.store;

import java.util.List;
import org.ouzelbook.tracker.domain.Message;

/**
 * Something that only a person can tell when books are put together.
 *
 * @param code a few letters by which it is answered; the same question has the same code every time
 * @param about what kind of question it is
 * @param from whose book raises it
 * @param told the question in words
 * @param details what differs, line by line
 * @param answers what can be answered
 */
public record MergeQuestion(
        String code, About about, String from, Message told, List<Message> details, List<MergeAnswer> answers) {
    /** Copies the lists. */
    public MergeQuestion {
        details = List.copyOf(details);
        answers = List.copyOf(answers);
    }

    /** {@return the same question under a longer or shorter code} */
    MergeQuestion coded(String other) {
        return new MergeQuestion(other, about, from, told, details, answers);
    }

    /** The kinds of question. */
    public enum About {
        /** Both books changed the same record. */
        CHANGED_IN_BOTH,
        /** The other book removed a record. */
        REMOVED_THERE,
        /** This book removed a record that the other changed. */
        REMOVED_HERE,
        /** Two books describe what seems to be one thing. */
        ONE_THING,
        /** Two rivers have one name and different lines. */
        ONE_RIVER,
        /** Two decisions about territories contradict each other. */
        CONTRADICTION
    }
}
