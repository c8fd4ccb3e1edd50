package org.ouzelbook.tracker.rings;

/**
 * One ring as it was read.
 *
 * @param letter its letter in the project's alphabet, capital and small letters being different; {@code ?} if unread, {@code @}
 *     if lost
 * @param certainty how sure that is
 */
public record Ring(char letter, Certainty certainty) {
    static final char UNREAD = '?';
    static final char LOST = '@';

    /** How sure the reading of a ring is. */
    public enum Certainty {
        /** Read without doubt. */
        CERTAIN,
        /** Read, but with doubt: it may be any colour. */
        UNSURE,
        /** There was a ring, and its colour was not made out. */
        UNREAD,
        /** The ring that was there is lost. */
        LOST
    }

    static Ring certain(char letter) {
        return new Ring(letter, Certainty.CERTAIN);
    }

    /** Whether a bird that was given this letter here may have been read so. */
    boolean mayBe(char given) {
        return certainty != Certainty.CERTAIN || letter == given;
    }

    @Override
    public String toString() {
        return certainty == Certainty.UNSURE ? "(" + letter + ")" : String.valueOf(letter);
    }
}
