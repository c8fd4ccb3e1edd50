package org.ouzelbook.tracker.store;

import java.util.Optional;
import org.ouzelbook.tracker.domain.Entry;

/**
 * A record that is not what it was after some step of the history; at least one of both is there.
 *
 * @param before what it was; empty if it was added since
 * @param now what it is; empty if it was removed since
 */
public record ChangedRecord(Optional<Entry> before, Optional<Entry> now) {
    /** {@return the record, as it is now or, if it is gone, as it was} */
    public Entry either() {
        return now.or(() -> before).orElseThrow();
    }
}
