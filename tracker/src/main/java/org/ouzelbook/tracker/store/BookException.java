package org.ouzelbook.tracker.store;

import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Message;

/** Something that the book cannot do, told in words for the person who asked for it. */
public final class BookException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient Message told;

    BookException(Message told, @Nullable Throwable cause) {
        super(told.key() + " " + told.facts(), cause);
        this.told = told;
    }

    static BookException of(String key, Object... facts) {
        return new BookException(Message.of(key, facts), null);
    }

    /** {@return what to tell the person} */
    public Message told() {
        return told;
    }
}
