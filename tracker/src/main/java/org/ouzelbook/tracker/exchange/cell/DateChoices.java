package org.ouzelbook.tracker.exchange.cell;

import java.time.LocalDate;
import java.time.Year;
import java.time.ZoneId;
import java.util.Optional;

/**
 * What is known of the dates of one file, from the file or from the surveyor.
 *
 * @param today dates after this day are refused
 * @param order which of day and month stands first; empty if nothing shows it
 * @param serials how bare numbers count days; empty if the surveyor did not say that they are dates
 * @param year the year of dates that name none
 * @param zone where times in UTC were taken; a fixed offset of 0 leaves them as they are
 */
public record DateChoices(
        LocalDate today,
        Optional<DateOrder> order,
        Optional<SerialDates> serials,
        Optional<Year> year,
        Optional<ZoneId> zone) {
    /**
     * {@return the same choices with this order}
     *
     * @param shown the order that the file shows
     */
    public DateChoices withOrder(Optional<DateOrder> shown) {
        return new DateChoices(today, shown, serials, year, zone);
    }
}
