package org.ouzelbook.tracker.exchange.cell;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Message;

/** What one cell says of a date, before anything else of its file is known. */
public sealed interface WrittenDate {
    /**
     * Says what a cell says.
     *
     * @param text the cell; not blank
     * @return a day, something that is open until more is known, or a refusal with its reason
     */
    static WrittenDate of(String text) {
        return new DateParser(text).read();
    }

    /**
     * One certain day.
     *
     * @param date the day
     * @param shows which order the cell shows, where it is made of numbers of which only one can be the month
     * @param shortYear whether the year was written with two digits
     */
    record Day(LocalDate date, Optional<DateOrder> shows, boolean shortYear) implements WrittenDate {}

    /**
     * Two numbers that may each be the month.
     *
     * @param dayFirst the day if the day stands first
     * @param monthFirst the day if the month stands first
     * @param shortYear whether the year was written with two digits
     */
    record EitherOrder(LocalDate dayFirst, LocalDate monthFirst, boolean shortYear) implements WrittenDate {}

    /**
     * A day and a month without a year.
     *
     * @param monthDay the day of some year
     */
    record NoYear(MonthDay monthDay) implements WrittenDate {}

    /**
     * A bare number that a spreadsheet may have made of a date.
     *
     * @param number whole days
     */
    record Serial(int number) implements WrittenDate {}

    /**
     * No date.
     *
     * @param why the reason, to be shown beside the cell
     */
    record Refused(Message why) implements WrittenDate {}
}
