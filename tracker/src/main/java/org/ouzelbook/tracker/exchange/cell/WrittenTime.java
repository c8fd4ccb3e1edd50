package org.ouzelbook.tracker.exchange.cell;

import java.time.LocalTime;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.Message;

/** What one cell says of a time of day. */
public sealed interface WrittenTime {
    /**
     * A time of day, to the minute.
     *
     * @param time the local time
     */
    record Read(LocalTime time) implements WrittenTime {}

    /**
     * No time.
     *
     * @param why the reason, to be shown beside the cell
     */
    record Refused(Message why) implements WrittenTime {}

    /** 07:12, 7.12, 7,12, 7h12 and 07:12:30, each also with am or pm, Z or an hour of difference behind it. */
    Pattern PARTS = Pattern.compile(
            "(\\d{1,2})[:.,h](\\d{2})(?::\\d{2}(?:[.,]\\d+)?)?h? ?([ap]\\.?m\\.?)?(?:z|[+-]\\d{2}:?\\d{2})?");

    /** 0712 and 712. */
    Pattern JOINED = Pattern.compile("(\\d{1,2})(\\d{2})h? ?([ap]\\.?m\\.?)?");

    /** 7 pm. */
    Pattern HOUR = Pattern.compile("(\\d{1,2})() ?([ap]\\.?m\\.?)");

    /**
     * {@return what the cell says}
     *
     * @param text the cell; not blank
     */
    static WrittenTime of(String text) {
        String plain = Blank.plainSpaces(text).toLowerCase(Locale.ROOT).replace('−', '-');
        for (Pattern form : new Pattern[] {PARTS, JOINED, HOUR}) {
            Matcher parts = form.matcher(plain);
            if (parts.matches()) {
                int minute = parts.group(2).isEmpty() ? 0 : Integer.parseInt(parts.group(2));
                return ofParts(Integer.parseInt(parts.group(1)), minute, Optional.ofNullable(parts.group(3)));
            }
        }
        boolean fraction = plain.matches("0?[.,]\\d{3,}");
        return new Refused(Message.of(fraction ? "import.time.fraction" : "import.time.unknownForm"));
    }

    private static WrittenTime ofParts(int hour, int minute, Optional<String> half) {
        boolean twelveHours = half.isPresent();
        if (minute > 59 || hour > (twelveHours ? 12 : 23) || (twelveHours && hour == 0)) {
            return new Refused(Message.of("import.time.notOnClock"));
        }
        int shift = twelveHours && half.get().startsWith("p") ? 12 : 0;
        return new Read(LocalTime.of(twelveHours ? hour % 12 + shift : hour, minute));
    }
}
