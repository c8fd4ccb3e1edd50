package org.ouzelbook.tracker.notebook;

import java.time.LocalTime;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Direction;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.place.PlaceReading;
import org.ouzelbook.tracker.place.Places;

/**
 * Reads the line that closes a visit: {@code end 0935}, or {@code end 0935 at 9.1} where it turned back before the end of its
 * stretch, so that it shows nothing of the water beyond.
 */
public final class VisitEnd {
    private static final Pattern LINE =
            Pattern.compile("(?i)\\s*end(?:\\s+(?:at\\s+)?(\\d{1,2}):?(\\d{2})(?=\\s|$))?(?:\\s+at\\s+(.+?))?\\s*");

    private VisitEnd() {}

    /**
     * The visit as it ended, or what to ask.
     *
     * @param visit the visit, closed
     * @param question what is unclear
     */
    public record Reading(Optional<Visit> visit, Optional<Message> question) {
        private static Reading ask(String key, Object... facts) {
            return new Reading(Optional.empty(), Optional.of(Message.of(key, facts)));
        }
    }

    /**
     * {@return whether a line closes a visit}
     *
     * @param line a line
     */
    public static boolean closes(String line) {
        return line.strip().toLowerCase(Locale.ROOT).matches("(?s)end(\\s.*)?");
    }

    /**
     * {@return the visit as the line closes it}
     *
     * @param line the line, {@code end} first
     * @param visit the visit
     * @param places the rivers and landmarks of the book
     */
    public static Reading read(String line, Visit visit, Places places) {
        Matcher told = LINE.matcher(line);
        if (!told.matches()) {
            return Reading.ask("visit.endForm", line.strip());
        }
        if (told.group(1) == null) {
            return Reading.ask("visit.endWhen");
        }
        int hour = Integer.parseInt(told.group(1));
        int minute = Integer.parseInt(told.group(2));
        if (hour > 23 || minute > 59) {
            return Reading.ask("log.noTime", told.group(1) + told.group(2));
        }
        LocalTime end = LocalTime.of(hour, minute);
        if (visit.start().filter(end::isBefore).isPresent()) {
            return Reading.ask("visit.endsBeforeStart", visit.start().get(), end);
        }
        if (told.group(3) == null) {
            return new Reading(Optional.of(visit.ended(end, visit.walked())), Optional.empty());
        }
        PlaceReading reading = places.read(told.group(3), Optional.of(visit.riverId()));
        if (reading instanceof PlaceReading.Unclear unclear) {
            return new Reading(Optional.empty(), Optional.of(unclear.question()));
        }
        return cut(visit, end, ((PlaceReading.Found) reading).place());
    }

    private static Reading cut(Visit visit, LocalTime end, Place turn) {
        if (visit.walked().isEmpty() || visit.direction().isEmpty()) {
            return Reading.ask("visit.endNoStretch");
        }
        Stretch walked = visit.walked().get();
        Chainage at = turn.chainage();
        if (!walked.contains(at)) {
            return Reading.ask("visit.endOutside", at, walked);
        }
        Chainage start = visit.direction().get() == Direction.UPSTREAM ? walked.lower() : walked.upper();
        return new Reading(Optional.of(visit.ended(end, Optional.of(Stretch.between(start, at)))), Optional.empty());
    }
}
