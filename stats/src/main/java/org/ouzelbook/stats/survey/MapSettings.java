package org.ouzelbook.stats.survey;

import java.time.MonthDay;
import java.util.Optional;
import java.util.Set;
import org.ouzelbook.tracker.domain.Species;

/**
 * Every threshold of the mapping rules, by name; printed with each map that they made.
 *
 * @param seasonFrom first day of the season
 * @param seasonTo last day of the season
 * @param minimumRegistrations registrations on different days that make a territory; empty for 2 with up to eight effective
 *     visits and 3 with more
 * @param minimumSpreadDays days between the first and the last of them
 * @param maximumLengthMetres no territory is longer, along the water
 * @param territorialSpreadDays days between two territorial records at one place that make breeding code 4
 * @param doubtfulGapMetres a territory that could stand as two on either side of a gap this wide is in doubt
 * @param decisiveCodes breeding codes that make a territory with one record: dependent young and nests in use
 * @param edgeShareInside an edge territory counts if more than this share of its registrations lies on surveyed water
 */
public record MapSettings(
        MonthDay seasonFrom,
        MonthDay seasonTo,
        Optional<Integer> minimumRegistrations,
        int minimumSpreadDays,
        double maximumLengthMetres,
        int territorialSpreadDays,
        double doubtfulGapMetres,
        Set<Integer> decisiveCodes,
        double edgeShareInside) {

    /**
     * {@return the usual settings for a species}
     *
     * <p>Registrations and spread: International Bird Census Committee (1969), Bird Study 16:249–255, and Marchant (1983), as
     * cited from memory. Code 4: second European Breeding Bird Atlas, atlas codes. Length, gap and share: common practice, no
     * source.
     *
     * @param species a species
     */
    public static MapSettings usualFor(Species species) {
        return new MapSettings(
                species.seasonFrom(),
                species.seasonTo(),
                Optional.empty(),
                10,
                1500,
                7,
                500,
                Set.of(12, 13, 15, 16),
                0.5);
    }
}
