package org.ouzelbook.tracker.exchange.cell;

import java.time.LocalDate;

/**
 * The two ways in which spreadsheets count days.
 *
 * <p>Source: ECMA-376 part 1, 18.17.4.1 (date systems): serial 1 is 1 January 1900 in the one, serial 0 is 1 January 1904 in
 * the other. The 1900 system takes 1900 for a leap year, so its numbers from 61 on, the only ones read here, count from 30 December
 * 1899.
 */
public enum SerialDates {
    /** Day 1 is 1 January 1900. */
    EXCEL_1900(LocalDate.of(1899, 12, 30)),
    /** Day 0 is 1 January 1904. */
    EXCEL_1904(LocalDate.of(1904, 1, 1));

    private final LocalDate dayZero;

    SerialDates(LocalDate dayZero) {
        this.dayZero = dayZero;
    }

    /**
     * {@return the date with this number}
     *
     * @param number whole days
     */
    public LocalDate date(int number) {
        return dayZero.plusDays(number);
    }
}
