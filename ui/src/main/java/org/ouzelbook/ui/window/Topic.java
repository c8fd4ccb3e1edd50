package org.ouzelbook.ui.window;

import java.util.Locale;
import org.ouzelbook.ui.app.Texts;

/** What can be asked of the records, in the order of a reader's questions. */
enum Topic {
    DENSITY,
    TREND,
    OCCUPANCY,
    NESTS,
    SURVIVAL,
    PREY;

    /** {@return the question} */
    String question() {
        return Texts.of("window.findings.ask." + name().toLowerCase(Locale.ROOT));
    }

    /** {@return the trade's name for it} */
    String term() {
        return Texts.of("window.findings.term." + name().toLowerCase(Locale.ROOT));
    }

    /** {@return whether it rests on counts of territories, which the model makes surer} */
    boolean isOfCounts() {
        return this == DENSITY || this == TREND;
    }

    /** {@return whether its table names nests or ringed birds, which are private} */
    boolean isPrivate() {
        return this == NESTS || this == SURVIVAL;
    }
}
