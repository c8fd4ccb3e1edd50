package org.ouzelbook.tracker.store;

import java.util.UUID;
import org.ouzelbook.tracker.domain.Entry;

/**
 * A record that steps of the history added, changed or removed.
 *
 * @param type what kind of record it is
 * @param id its key
 */
public record TouchedRecord(Class<? extends Entry> type, UUID id) {}
