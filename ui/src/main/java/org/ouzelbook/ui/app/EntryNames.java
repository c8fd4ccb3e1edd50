package org.ouzelbook.ui.app;

import java.time.Year;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.Entry;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;

/** How a person would name a record of the field, in a few words. */
final class EntryNames {
    private EntryNames() {}

    static Message of(Entry entry) {
        if (entry instanceof Sighting sighting) {
            return Message.of(
                    "book.entry.sighting",
                    sighting.species(),
                    sighting.date(),
                    sighting.place().chainage());
        }
        if (entry instanceof Visit visit) {
            return Message.of("book.entry.visit", visit.label(), visit.date());
        }
        if (entry instanceof Decision decision) {
            boolean place = !(decision.stretch().length() > 0);
            return Message.of(
                    "book.entry.decision",
                    decision.kind(),
                    place ? decision.stretch().lower() : decision.stretch(),
                    decision.species(),
                    Year.of(decision.season()));
        }
        if (entry instanceof NestCheck check) {
            return Message.of("book.entry.nestCheck", check.date());
        }
        if (entry instanceof RingedBird bird) {
            return Message.of("book.entry.bird", bird.label());
        }
        return Message.of("book.entry.line", ((RiverLine) entry).version());
    }
}
