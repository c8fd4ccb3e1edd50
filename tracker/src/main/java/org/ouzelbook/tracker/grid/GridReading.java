package org.ouzelbook.tracker.grid;

import org.ouzelbook.tracker.domain.Message;

/** What became of a grid reference as somebody wrote it. */
public sealed interface GridReading {
    /**
     * It names a square.
     *
     * @param square the square
     */
    record Read(GridSquare square) implements GridReading {}

    /**
     * It names none.
     *
     * @param why the reason, and what to do
     */
    record Refused(Message why) implements GridReading {
        static Refused of(String key, Object... facts) {
            return new Refused(Message.of(key, facts));
        }
    }
}
