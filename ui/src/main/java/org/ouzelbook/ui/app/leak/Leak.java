package org.ouzelbook.ui.app.leak;

import org.ouzelbook.tracker.domain.Message;

/**
 * Something in a file that tells what must stay private. It is told so that it can be found, and not so that it can be read here.
 *
 * @param file the file
 * @param part the part of it, such as a file in a zip; blank for the file itself
 * @param line the line of the part, or the number of the feature; 0 where there are none
 * @param kind what kind of leak it is
 * @param what what it tells, with the secret itself shortened
 */
public record Leak(String file, String part, int line, Kind kind, Message what) {
    /** The ways in which a file can tell too much. */
    public enum Kind {
        /** Coordinates near a nest, finer than the public grid. */
        COORDINATES,
        /** The river km of a nest. */
        RIVER_KM,
        /** A label, ring, or name. */
        NAME,
        /** What somebody wrote in a note. */
        NOTE,
        /** The key of a private record. */
        KEY,
        /** A landmark beside a word for a nest. */
        LANDMARK,
        /** Birds told by a stretch that is smaller than a public cell. */
        SMALL_STRETCH,
        /** What two files tell together. */
        DIFFERENCE
    }

    /** {@return file, part and line, as they are written before a colon} */
    public String place() {
        String within = part.isEmpty() ? file : file + "!" + part;
        return line > 0 ? within + ":" + line : within;
    }
}
