package org.ouzelbook.tracker.store;

import java.util.UUID;
import org.ouzelbook.tracker.domain.Message;

/**
 * Two records of different people that may be of one bird, or of one visit; or two names of observers that may be one person's.
 *
 * @param code a few letters by which a person answers; the same two have the same code every time
 * @param table {@code sighting}, {@code visit} or, for names, {@code person}
 * @param one key of the one; of a name, a key that is made of it
 * @param other key of the other
 * @param told the two in words
 * @param oneOwner whose book the one came from; blank for this book's own. A name may stand in records of several, then
 *     with commas between them
 * @param otherOwner whose book the other came from; blank for this book's own
 */
public record SamePair(
        String code, String table, UUID one, UUID other, Message told, String oneOwner, String otherOwner) {
    /** {@return whether they are names} */
    public boolean ofPeople() {
        return table.equals(Together.PEOPLE);
    }
}
