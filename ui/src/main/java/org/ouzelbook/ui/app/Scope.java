package org.ouzelbook.ui.app;

import java.time.LocalDate;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Species;

/**
 * The part of a book that a question is about.
 *
 * @param species the species
 * @param season the calendar year; empty for all, or for the last where the answer is about one
 * @param from no record before this day
 * @param to no record after this day
 * @param river name of the only river; empty for all
 * @param reach name of the only reach; empty for all water
 * @param level confidence level of the intervals, between 0 and 1
 */
public record Scope(
        Species species,
        Optional<Integer> season,
        Optional<LocalDate> from,
        Optional<LocalDate> to,
        Optional<String> river,
        Optional<String> reach,
        double level) {
    /**
     * Checks what can be checked alone.
     *
     * @throws IllegalArgumentException if the level is not between 0 and 1
     */
    public Scope {
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("A confidence level lies between 0 and 1, but was " + level);
        }
    }

    /** {@return the dipper in all seasons on all water, with 95 % intervals} */
    public static Scope everything() {
        return new Scope(
                Species.DIPPER,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                0.95);
    }

    /** {@return the same with only the records of the season's year, if one is asked about} */
    Scope inItsYear() {
        return season.map(year -> new Scope(
                        species,
                        season,
                        Optional.of(LocalDate.of(year, 1, 1)),
                        Optional.of(LocalDate.of(year, 12, 31)),
                        river,
                        reach,
                        level))
                .orElse(this);
    }

    /** {@return the same for one season only} */
    public Scope in(int year) {
        return new Scope(species, Optional.of(year), from, to, river, reach, level);
    }

    /**
     * {@return the same of another species}
     *
     * @param other the species
     */
    public Scope of(Species other) {
        return new Scope(other, season, from, to, river, reach, level);
    }
}
