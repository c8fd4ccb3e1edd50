package org.ouzelbook.ui.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.store.BookView;
import org.ouzelbook.tracker.store.TouchedRecord;

/** Finds the sighting or visit that a person means: {@code last}, a label, or a key. */
final class RecordName {
    private static final Pattern KEY = Pattern.compile("[0-9a-fA-F]{8}(-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12}");

    /** How many steps back the last record is looked for, and how many changes they may have had. */
    private static final int LATEST = 200;

    private RecordName() {}

    static UUID find(BookView view, String name) {
        String wanted = name.strip();
        if (wanted.equalsIgnoreCase("last")) {
            return last(view).orElseThrow(() -> new WrongRequest(Message.of("correct.noLast")));
        }
        if (KEY.matcher(wanted).matches()) {
            return UUID.fromString(wanted);
        }
        Optional<Visit> visit = view.visit(wanted);
        if (visit.isPresent()) {
            return visit.get().id();
        }
        List<Sighting> sightings = view.sightings(wanted);
        if (sightings.size() > 1) {
            throw new WrongRequest(Message.of("correct.several", sightings.size(), wanted));
        }
        return sightings.stream()
                .map(Sighting::id)
                .findFirst()
                .orElseThrow(() -> new WrongRequest(Message.of("correct.notFound", wanted)));
    }

    /** The sighting or visit that was added or changed last and is still there. */
    private static Optional<UUID> last(BookView view) {
        long newest = view.lastStep();
        for (long step = newest; step > Math.max(0, newest - LATEST); step--) {
            Set<TouchedRecord> touched = view.touchedAfter(step - 1, LATEST).orElse(Set.of());
            List<TouchedRecord> there = new ArrayList<>(touched);
            there.removeIf(
                    one -> !one.type().equals(Sighting.class) && !one.type().equals(Visit.class));
            there.removeIf(one -> view.record(one).isEmpty());
            if (!there.isEmpty()) {
                return Optional.of(there.get(there.size() - 1).id());
            }
        }
        return Optional.empty();
    }
}
