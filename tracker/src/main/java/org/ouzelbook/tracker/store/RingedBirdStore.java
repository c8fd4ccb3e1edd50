package org.ouzelbook.tracker.store;

import static org.ouzelbook.tracker.store.Table.date;
import static org.ouzelbook.tracker.store.Table.text;
import static org.ouzelbook.tracker.store.Table.whole;

import java.time.Year;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.Sex;

/** Keeps birds with colour rings. */
final class RingedBirdStore {
    static final EntryTable<RingedBird> BIRDS = new EntryTable<>(
            RingedBird.class,
            Table.ofRecords(
                    "ringed_bird",
                    text("label"),
                    text("left_upper"),
                    text("left_lower"),
                    text("right_upper"),
                    text("right_lower"),
                    text("ring"),
                    text("sex"),
                    whole("hatched_in"),
                    date("ringed_on"),
                    text("note")),
            (bird, row) -> row.set("label", bird.label())
                    .set("left_upper", bird.leftUpper())
                    .set("left_lower", bird.leftLower())
                    .set("right_upper", bird.rightUpper())
                    .set("right_lower", bird.rightLower())
                    .set("ring", bird.ring())
                    .set("sex", bird.sex())
                    .set("hatched_in", bird.hatched().map(Year::getValue))
                    .set("ringed_on", bird.ringed())
                    .set("note", bird.note()),
            row -> new RingedBird(
                    row.id(),
                    row.text("label"),
                    row.text("left_upper"),
                    row.text("left_lower"),
                    row.text("right_upper"),
                    row.text("right_lower"),
                    row.text("ring"),
                    row.constant("sex", Sex.class),
                    row.optional("hatched_in", Integer.class).map(Year::of),
                    row.optionalDate("ringed_on"),
                    row.text("note")));

    private RingedBirdStore() {}

    static List<RingedBird> birds(Database database) {
        return BIRDS.all(database, "label");
    }

    static Optional<RingedBird> labelled(Database database, String label) {
        return BIRDS.where(database, "WHERE label = ?", label).stream().findFirst();
    }
}
