package org.ouzelbook.tracker.exchange.darwin;

import java.nio.charset.StandardCharsets;
import java.util.UUID;

/**
 * The identifier under which a record is published: always the same for the same record, so that a later archive updates an earlier
 * one; and not the record's own key, since keys rise in the order in which records were made, and the order of a walk with its
 * times would tell places.
 *
 * <p>A name-based UUID, version 3 of RFC 9562 (2024), section 5.3, of the key, of which 62 bits are random and stay in the book.
 */
public final class PublishedId {
    private PublishedId() {}

    /**
     * {@return the identifier}
     *
     * @param key the key of a record
     * @param part what is published of the record: a record may make several rows
     */
    public static String of(UUID key, String part) {
        return UUID.nameUUIDFromBytes(("ouzelbook:" + part + ":" + key).getBytes(StandardCharsets.UTF_8))
                .toString();
    }

    /**
     * {@return the identifier of a visit, a sighting, a nest, a check or a kick sample itself}
     *
     * @param key its key
     */
    public static String of(UUID key) {
        return of(key, "record");
    }
}
