package org.ouzelbook.ui.app;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.ouzelbook.tracker.domain.DecisionKind;
import org.ouzelbook.tracker.domain.Message;

/**
 * A decision about territories in plain words: {@code boundary at otter stone because a pair sang on either side}, {@code one
 * territory from 14.0 to 15.2}, {@code no territory from 3 to 4.5}, {@code note at 12.6: ringed pair}.
 *
 * @param kind what was decided
 * @param places one place or two, as written
 * @param note the reason, as written
 */
public record DecisionLine(DecisionKind kind, List<String> places, Optional<String> note) {
    private static final Pattern REASON =
            Pattern.compile("^(.*?)(?:\\s*:\\s*|\\s+because(?:\\s+|$))(.*)$", Pattern.CASE_INSENSITIVE);
    private static final Pattern BOUNDARY = pattern("boundary\\s+(?:at\\s+)?(.+)");
    private static final Pattern ONE_TERRITORY = pattern("one[\\s-]territory\\s+(?:from\\s+)?(.+?)\\s+to\\s+(.+)");
    private static final Pattern NO_TERRITORY = pattern("no[\\s-]territory\\s+(?:from\\s+)?(.+?)\\s+to\\s+(.+)");
    private static final Pattern NOTE = pattern("note\\s+(?:at\\s+|from\\s+)?(.+?)(?:\\s+to\\s+(.+))?");

    private static final Pattern AND = Pattern.compile(
            "\\s+and\\s+(?=boundary\\s+at\\s|(?:one|no)[\\s-]territory\\s+from\\s)", Pattern.CASE_INSENSITIVE);

    /** Copies the places. */
    public DecisionLine {
        places = List.copyOf(places);
    }

    private static Pattern pattern(String words) {
        return Pattern.compile("^" + words + "$", Pattern.CASE_INSENSITIVE);
    }

    /**
     * {@return whether a line begins like a decision, be it finished or not}
     *
     * @param line what was typed so far
     */
    public static boolean begins(String line) {
        return line.strip().toLowerCase(Locale.ROOT).matches("(?s)(boundary|(one|no)[\\s-]territory|note)(\\s.*)?");
    }

    /**
     * {@return what a line says that may join decisions by “and”, which then have one reason: {@code boundary at 8.7 and one territory
     * from 8.2 to 8.66 because a ringed pair fed there}}
     *
     * @param line a line as somebody wrote it
     * @throws WrongRequest if a part of it is none of the four forms
     */
    public static List<DecisionLine> readAll(String line) {
        Matcher reason = REASON.matcher(line.strip());
        String decided = reason.matches() ? reason.group(1).strip() : line.strip();
        String[] parts = AND.split(decided);
        if (parts.length == 1) {
            return List.of(read(line));
        }
        Optional<String> note = reason.matches()
                ? Optional.of(reason.group(2).strip()).filter(text -> !text.isEmpty())
                : Optional.empty();
        return Stream.of(parts).map(part -> read(part).because(note)).toList();
    }

    /**
     * {@return what the line says}
     *
     * @param line a line as somebody wrote it
     * @throws WrongRequest if it is none of the four forms
     */
    public static DecisionLine read(String line) {
        Matcher reason = REASON.matcher(line.strip());
        String decided = reason.matches() ? reason.group(1).strip() : line.strip();
        Optional<String> note = reason.matches()
                ? Optional.of(reason.group(2).strip()).filter(text -> !text.isEmpty())
                : Optional.empty();
        return as(DecisionKind.BOUNDARY, BOUNDARY, decided, note)
                .or(() -> as(DecisionKind.TOGETHER, ONE_TERRITORY, decided, note))
                .or(() -> as(DecisionKind.NO_TERRITORY, NO_TERRITORY, decided, note))
                .or(() -> as(DecisionKind.NOTE, NOTE, decided, note))
                .orElseThrow(() -> new WrongRequest(Message.of("decide.notUnderstood", line.strip())));
    }

    private static Optional<DecisionLine> as(DecisionKind kind, Pattern form, String decided, Optional<String> note) {
        Matcher matcher = form.matcher(decided);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        boolean two = matcher.groupCount() == 2 && matcher.group(2) != null;
        return Optional.of(new DecisionLine(
                kind, two ? List.of(matcher.group(1), matcher.group(2)) : List.of(matcher.group(1)), note));
    }

    /**
     * {@return the same with a reason}
     *
     * @param reason the reason; empty for none
     */
    public DecisionLine because(Optional<String> reason) {
        return new DecisionLine(kind, places, reason);
    }
}
