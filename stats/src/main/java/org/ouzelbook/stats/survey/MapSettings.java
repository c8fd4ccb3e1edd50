package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.Collections;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Species;

/**
 * Every threshold of the mapping rules, by name; printed with each map that they made.
 *
 * @param seasonFrom first day of the season
 * @param seasonTo last day of the season
 * @param minimumRegistrations days with a registration that make a territory, whatever the number of visits; empty to ask
 *     for more where there were more visits
 * @param registrationsWithFewVisits days asked for where fewer than {@code manyVisits} effective visits covered the cluster
 * @param registrationsWithManyVisits days asked for where as many or more did
 * @param manyVisits how many effective visits are many
 * @param minimumSpreadDays days between the first and the last registration
 * @param maximumLengthMetres no territory is longer, along the water
 * @param territorialSpreadDays days between two territorial records in one territory that make breeding code 4
 * @param doubtfulGapMetres a territory that could stand as two on either side of a gap this wide is in doubt
 * @param decisiveCodes breeding codes that make a territory with one record: dependent young and nests in use
 * @param edgeShareInside an edge territory counts if more than this share of its registrations lies on surveyed water
 * @param youngFrom from this day on a single bird of unknown age may be a young of the year
 * @param independentFrom from this day on a juvenile of unknown dependence may be on its own, and takes no part
 */
public record MapSettings(
        MonthDay seasonFrom,
        MonthDay seasonTo,
        Optional<Integer> minimumRegistrations,
        int registrationsWithFewVisits,
        int registrationsWithManyVisits,
        int manyVisits,
        int minimumSpreadDays,
        double maximumLengthMetres,
        int territorialSpreadDays,
        double doubtfulGapMetres,
        Set<Integer> decisiveCodes,
        double edgeShareInside,
        MonthDay youngFrom,
        MonthDay independentFrom) {
    /**
     * Sorts the codes and checks the thresholds.
     *
     * @throws IllegalArgumentException if a threshold is out of its range
     */
    public MapSettings {
        decisiveCodes = Collections.unmodifiableSet(new TreeSet<>(decisiveCodes));
        if (minimumRegistrations.orElse(1) < 1 || registrationsWithFewVisits < 1 || minimumSpreadDays < 0) {
            throw new IllegalArgumentException("A territory needs at least one registration and no negative spread");
        }
        if (!(maximumLengthMetres > 0) || !(doubtfulGapMetres > 0)) {
            throw new IllegalArgumentException("The longest territory and the doubtful gap must be longer than 0 m");
        }
        if (seasonFrom.isAfter(seasonTo)) {
            throw new IllegalArgumentException("The season must end after it starts, in one calendar year");
        }
    }

    /**
     * {@return the usual settings for a species}
     *
     * <p>Registrations and spread: International Bird Census Committee (1969), Bird Study 16:249–255, and Marchant (1983), as
     * cited from memory. Code 4: second European Breeding Bird Atlas, atlas codes. Length, gap and the days when young are
     * about: common practice, no source.
     *
     * @param species a species
     */
    public static MapSettings usualFor(Species species) {
        int weeksAfterDipper = species.equals(Species.COMMON_SANDPIPER) ? 5 : species.equals(Species.DIPPER) ? 0 : 2;
        LocalDate young = LocalDate.of(2001, 5, 1).plusWeeks(weeksAfterDipper);
        LocalDate independent = LocalDate.of(2001, 5, 15).plusWeeks(weeksAfterDipper);
        return new MapSettings(
                species.seasonFrom(),
                species.seasonTo(),
                Optional.empty(),
                2,
                3,
                9,
                10,
                1500,
                7,
                500,
                Set.of(12, 13, 15, 16),
                0.5,
                MonthDay.from(young),
                MonthDay.from(independent));
    }

    /**
     * {@return these settings with another season}
     *
     * @param from its first day
     * @param to its last day; not before the first
     */
    public MapSettings withSeason(MonthDay from, MonthDay to) {
        return with(from, to, minimumRegistrations, minimumSpreadDays, maximumLengthMetres);
    }

    /**
     * {@return these settings with another minimum of registrations, whatever the number of visits}
     *
     * @param registrations days with a registration; 1 or more
     */
    public MapSettings withMinimumRegistrations(int registrations) {
        return with(seasonFrom, seasonTo, Optional.of(registrations), minimumSpreadDays, maximumLengthMetres);
    }

    /**
     * {@return these settings with another spread and another longest territory}
     *
     * @param spreadDays days between the first and the last registration; not negative
     * @param lengthMetres longest territory along the water, in metres; positive
     */
    public MapSettings withSpreadAndLength(int spreadDays, double lengthMetres) {
        return with(seasonFrom, seasonTo, minimumRegistrations, spreadDays, lengthMetres);
    }

    private MapSettings with(
            MonthDay from, MonthDay to, Optional<Integer> registrations, int spreadDays, double lengthMetres) {
        return new MapSettings(
                from,
                to,
                registrations,
                registrationsWithFewVisits,
                registrationsWithManyVisits,
                manyVisits,
                spreadDays,
                lengthMetres,
                territorialSpreadDays,
                doubtfulGapMetres,
                decisiveCodes,
                edgeShareInside,
                youngFrom,
                independentFrom);
    }

    /**
     * {@return whether the day lies in the season}
     *
     * @param day a date of any year
     */
    public boolean inSeason(LocalDate day) {
        MonthDay monthDay = MonthDay.from(day);
        return !monthDay.isBefore(seasonFrom) && !monthDay.isAfter(seasonTo);
    }

    boolean isDecisive(BreedingCode code) {
        return decisiveCodes.contains(code.number());
    }

    boolean youngAbout(LocalDate day) {
        return !MonthDay.from(day).isBefore(youngFrom);
    }

    boolean juvenilesOnTheirOwn(LocalDate day) {
        return !MonthDay.from(day).isBefore(independentFrom);
    }
}
