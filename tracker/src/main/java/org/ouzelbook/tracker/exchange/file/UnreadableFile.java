package org.ouzelbook.tracker.exchange.file;

import java.io.IOException;
import org.ouzelbook.tracker.domain.Message;

/** A file that cannot be read as a table, and why. */
public final class UnreadableFile extends IOException {
    private static final long serialVersionUID = 1;

    private final transient Message why;

    /**
     * Makes the failure.
     *
     * @param why the reason, and what to do
     */
    public UnreadableFile(Message why) {
        super(why.key());
        this.why = why;
    }

    /** {@return the reason, and what to do} */
    public Message why() {
        return why;
    }
}
