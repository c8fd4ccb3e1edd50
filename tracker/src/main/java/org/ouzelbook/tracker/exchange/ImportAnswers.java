package org.ouzelbook.tracker.exchange;

import java.time.LocalDate;
import java.time.Year;
import java.time.ZoneId;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.exchange.cell.DateChoices;
import org.ouzelbook.tracker.exchange.cell.DateOrder;
import org.ouzelbook.tracker.exchange.cell.DecimalSign;
import org.ouzelbook.tracker.exchange.cell.SerialDates;
import org.ouzelbook.tracker.river.RiverAnswers;

/**
 * What the surveyor says of the files beforehand, so that it need not be asked. Nothing here overrules what a row says itself.
 *
 * @param today days after this one are refused
 * @param kind the kind of every table
 * @param dateOrder which of day and month stands first
 * @param serials how bare numbers in columns of dates count days
 * @param year the year of dates that name none
 * @param zone where times in UTC were taken
 * @param decimals the sign before decimals
 * @param species the species where a row names none
 * @param river the name of the river where a row names none
 * @param rivers what is said of rivers in files
 * @param offRiverMetres coordinates up to this far from the river are taken, in metres; empty for the usual limit
 */
public record ImportAnswers(
        LocalDate today,
        Optional<TableKind> kind,
        Optional<DateOrder> dateOrder,
        Optional<SerialDates> serials,
        Optional<Year> year,
        Optional<ZoneId> zone,
        Optional<DecimalSign> decimals,
        Optional<Species> species,
        Optional<String> river,
        RiverAnswers rivers,
        Optional<Double> offRiverMetres) {
    /**
     * {@return no answers at all}
     *
     * @param today days after this one are refused
     */
    public static ImportAnswers none(LocalDate today) {
        return new ImportAnswers(
                today,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                RiverAnswers.NONE,
                Optional.empty());
    }

    DateChoices dates() {
        return new DateChoices(today, dateOrder, serials, year, zone);
    }
}
