package org.ouzelbook.stats.survey;

import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.tracker.domain.Message;

/** What an estimator cautions about, as a message that has words. */
public final class CautionMessage {
    private CautionMessage() {}

    /**
     * {@return the message}
     *
     * @param caution a caution
     */
    public static Message of(Caution caution) {
        return new Message("term.Reason." + caution.reason().name(), caution.facts());
    }
}
