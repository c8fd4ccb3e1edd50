package org.ouzelbook.ui.app.export;

import java.util.Optional;
import org.ouzelbook.tracker.exchange.darwin.Licence;

/**
 * What the keeper of a book says about records that are published.
 *
 * @param licence what others may do with them; empty if it was not said
 * @param withNames whether the people named in them agreed to be named
 * @param title what the data set is called; blank for a title made of the rivers and years
 * @param group whose records they are; blank for "the keepers of the book"
 * @param email where questions go; blank for nowhere
 */
public record Publishing(Optional<Licence> licence, boolean withNames, String title, String group, String email) {
    /** Nothing was said. */
    public static final Publishing UNSAID = new Publishing(Optional.empty(), false, "", "", "");
}
