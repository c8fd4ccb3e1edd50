package org.ouzelbook.tracker.exchange.cell;

import java.time.Year;
import java.util.Optional;

/**
 * The rule for years of two digits: 00 to 49 are 2000 to 2049, 50 to 99 are 1950 to 1999. A day that lies in the future by
 * this rule is refused later, like any other. Common practice, no source.
 */
public final class ShortYear {
    private static final int FIRST_OF_THE_NINETEEN_HUNDREDS = 50;

    private ShortYear() {}

    /**
     * {@return the year; empty unless there are exactly two digits}
     *
     * @param digits the year as written
     */
    public static Optional<Year> of(String digits) {
        if (!digits.matches("[0-9]{2}")) {
            return Optional.empty();
        }
        int number = Integer.parseInt(digits);
        return Optional.of(Year.of(number < FIRST_OF_THE_NINETEEN_HUNDREDS ? 2000 + number : 1900 + number));
    }
}
