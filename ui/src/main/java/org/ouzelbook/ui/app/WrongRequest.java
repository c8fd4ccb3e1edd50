package org.ouzelbook.ui.app;

import org.ouzelbook.tracker.domain.Message;

/** Somebody asked for what cannot be given: a river the book has not, a season without end. Nothing was changed. */
public final class WrongRequest extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final transient Message message;

    /**
     * Says what was wrong with the request, and what to do.
     *
     * @param message what to tell the person
     */
    public WrongRequest(Message message) {
        super(message.toString());
        this.message = message;
    }

    /** {@return what to tell the person} */
    public Message message() {
        return message;
    }
}
