package org.ouzelbook.tracker.store;

import java.util.UUID;
import org.ouzelbook.tracker.domain.Message;

/**
 * Two records of different people that may be of one bird, or of one visit.
 *
 * @param code a few letters by which a person answers; the same two have the same code every time
 * @param table {@code sighting} or {@code visit}
 * @param one key of the one
 * @param other key of the other
 * @param told the two in words
 * @param oneOwner whose book the one came from; blank for this book's own
 * @param otherOwner whose book the other came from; blank for this book's own
 */
public record SamePair(
        String code, String table, UUID one, UUID other, Message told, String oneOwner, String otherOwner) {}
