package org.ouzelbook.tracker.store;

import java.time.Year;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.Entry;
import org.ouzelbook.tracker.domain.ImportedFile;
import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.domain.Seal;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;

/** How a person would name a record, for messages about it. */
final class EntryWords {
    private EntryWords() {}

    static Message of(Entry entry) {
        if (entry instanceof ImportedFile file) {
            return Message.of("book.entry.file", file.name());
        }
        if (entry instanceof River river) {
            return Message.of("book.entry.river", river.name());
        }
        if (entry instanceof RiverLine line) {
            return Message.of("book.entry.line", line.version());
        }
        if (entry instanceof Landmark landmark) {
            return Message.of("book.entry.landmark", landmark.name());
        }
        if (entry instanceof Reach reach) {
            return Message.of("book.entry.reach", reach.name());
        }
        if (entry instanceof Visit visit) {
            return Message.of("book.entry.visit", visit.label(), visit.date());
        }
        if (entry instanceof Nest nest) {
            return Message.of("book.entry.nest", nest.label());
        }
        if (entry instanceof NestCheck check) {
            return Message.of("book.entry.nestCheck", check.date());
        }
        if (entry instanceof RingedBird bird) {
            return Message.of("book.entry.bird", bird.label());
        }
        if (entry instanceof KickSample sample) {
            return Message.of("book.entry.sample", sample.label());
        }
        if (entry instanceof Decision decision) {
            return decision(decision);
        }
        if (entry instanceof Seal seal) {
            return Message.of("book.entry.seal", Year.of(seal.season()), seal.species());
        }
        Sighting sighting = (Sighting) entry;
        return Message.of(
                "book.entry.sighting",
                sighting.species(),
                sighting.date(),
                sighting.place().chainage());
    }

    private static Message decision(Decision decision) {
        Stretch stretch = decision.stretch();
        return Message.of(
                "book.entry.decision",
                decision.kind(),
                stretch.length() > 0 ? stretch : stretch.lower(),
                decision.species(),
                Year.of(decision.season()));
    }
}
