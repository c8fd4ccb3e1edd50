package org.ouzelbook.tracker.exchange.darwin;

import java.time.LocalDate;
import java.util.List;
import org.ouzelbook.tracker.exchange.export.Audience;

/**
 * How records are published, and the words that go with them.
 *
 * @param audience who may read them
 * @param withNames whether the people named in them agreed to be named
 * @param licence what others may do with them
 * @param published the day that the records were last changed
 * @param title what the data set is called
 * @param group whose records they are; a group or an office, or a person who wants to be named
 * @param email where questions go; blank if nowhere
 * @param about what the data set holds, a paragraph each
 * @param method how the records were made
 * @param words what rows say of themselves
 */
public record Publication(
        Audience audience,
        boolean withNames,
        Licence licence,
        LocalDate published,
        String title,
        String group,
        String email,
        List<String> about,
        String method,
        Words words) {
    /**
     * Copies the paragraphs.
     *
     * @throws IllegalArgumentException if the title or the group is blank, or nothing is said about the data set
     */
    public Publication {
        about = List.copyOf(about);
        if (title.isBlank() || group.isBlank() || about.isEmpty()) {
            throw new IllegalArgumentException("A publication needs a title, a group and a description");
        }
    }

    /** {@return whether everybody may read them} */
    boolean isPublic() {
        return audience == Audience.PUBLIC;
    }

    /**
     * What rows say of themselves, in words.
     *
     * @param generalised how places of birds are generalised
     * @param generalisedNest how places of nests are
     * @param withheld what of birds is withheld
     * @param withheldNest what of nests is
     * @param withheldVisit what of visits is
     * @param protocol the name of the way of recording along a river
     * @param kickSample the name of the way of sampling the river bed
     */
    public record Words(
            String generalised,
            String generalisedNest,
            String withheld,
            String withheldNest,
            String withheldVisit,
            String protocol,
            String kickSample) {}
}
