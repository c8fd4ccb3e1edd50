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

    /** {@return the same, and every table is of this kind} */
    public ImportAnswers withKind(TableKind kind) {
        return new ImportAnswers(
                today,
                Optional.of(kind),
                dateOrder,
                serials,
                year,
                zone,
                decimals,
                species,
                river,
                rivers,
                offRiverMetres);
    }

    /** {@return the same, and this of day and month stands first} */
    public ImportAnswers withDateOrder(DateOrder dateOrder) {
        return new ImportAnswers(
                today,
                kind,
                Optional.of(dateOrder),
                serials,
                year,
                zone,
                decimals,
                species,
                river,
                rivers,
                offRiverMetres);
    }

    /** {@return the same, and bare numbers count days so} */
    public ImportAnswers withSerials(SerialDates serials) {
        return new ImportAnswers(
                today,
                kind,
                dateOrder,
                Optional.of(serials),
                year,
                zone,
                decimals,
                species,
                river,
                rivers,
                offRiverMetres);
    }

    /** {@return the same, and dates that name no year are of this one} */
    public ImportAnswers withYear(Year year) {
        return new ImportAnswers(
                today,
                kind,
                dateOrder,
                serials,
                Optional.of(year),
                zone,
                decimals,
                species,
                river,
                rivers,
                offRiverMetres);
    }

    /** {@return the same, and times in UTC were taken here} */
    public ImportAnswers withZone(ZoneId zone) {
        return new ImportAnswers(
                today,
                kind,
                dateOrder,
                serials,
                year,
                Optional.of(zone),
                decimals,
                species,
                river,
                rivers,
                offRiverMetres);
    }

    /** {@return the same, and this sign stands before decimals} */
    public ImportAnswers withDecimals(DecimalSign decimals) {
        return new ImportAnswers(
                today,
                kind,
                dateOrder,
                serials,
                year,
                zone,
                Optional.of(decimals),
                species,
                river,
                rivers,
                offRiverMetres);
    }

    /** {@return the same, and rows that name no species are of this one} */
    public ImportAnswers withSpecies(Species species) {
        return new ImportAnswers(
                today,
                kind,
                dateOrder,
                serials,
                year,
                zone,
                decimals,
                Optional.of(species),
                river,
                rivers,
                offRiverMetres);
    }

    /** {@return the same, and rows that name no river are on this one} */
    public ImportAnswers withRiver(String river) {
        return new ImportAnswers(
                today,
                kind,
                dateOrder,
                serials,
                year,
                zone,
                decimals,
                species,
                Optional.of(river),
                rivers,
                offRiverMetres);
    }

    /** {@return the same, and this is said of rivers in files} */
    public ImportAnswers withRivers(RiverAnswers rivers) {
        return new ImportAnswers(
                today, kind, dateOrder, serials, year, zone, decimals, species, river, rivers, offRiverMetres);
    }

    /** {@return the same, and coordinates so far from the river, in metres, are taken} */
    public ImportAnswers withOffRiver(double offRiverMetres) {
        return new ImportAnswers(
                today,
                kind,
                dateOrder,
                serials,
                year,
                zone,
                decimals,
                species,
                river,
                rivers,
                Optional.of(offRiverMetres));
    }

    DateChoices dates() {
        return new DateChoices(today, dateOrder, serials, year, zone);
    }
}
