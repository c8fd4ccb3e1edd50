package org.ouzelbook.stats.survey;

import java.util.Map;
import org.ouzelbook.tracker.domain.Species;

/**
 * How long a breeding attempt takes: one egg a day, incubation from the last egg, then days in the nest.
 *
 * @param clutchFrom the smallest usual clutch
 * @param clutch the most usual clutch
 * @param clutchTo the largest usual clutch
 * @param incubationFrom the shortest usual incubation, in days
 * @param incubationTo the longest
 * @param nestlingFrom the shortest usual time of young in the nest, in days
 * @param nestlingTo the longest
 */
public record BreedingPace(
        int clutchFrom,
        int clutch,
        int clutchTo,
        int incubationFrom,
        int incubationTo,
        int nestlingFrom,
        int nestlingTo) {
    /**
     * Dipper: 4–5 eggs, one a day; about 16 days from the last egg; 20–24 days in the nest. Source: Royal Society for the Protection
     * of Birds, page on dipper nesting and breeding. The range of clutches: common practice, no source.
     */
    private static final BreedingPace DIPPER = new BreedingPace(3, 5, 6, 16, 16, 20, 24);

    /** The others from handbooks, from memory; young of the common sandpiper leave the nest at once. */
    private static final Map<Species, BreedingPace> OTHERS = Map.of(
            Species.GREY_WAGTAIL, new BreedingPace(3, 5, 7, 11, 14, 11, 17),
            Species.KINGFISHER, new BreedingPace(5, 7, 8, 19, 21, 23, 27),
            Species.COMMON_SANDPIPER, new BreedingPace(3, 4, 5, 20, 23, 1, 2));

    /**
     * Checks the order.
     *
     * @throws IllegalArgumentException if a range runs backwards, or there is a day or egg too few
     */
    public BreedingPace {
        boolean ordered = 1 <= clutchFrom
                && clutchFrom <= clutch
                && clutch <= clutchTo
                && 1 <= incubationFrom
                && incubationFrom <= incubationTo
                && 1 <= nestlingFrom
                && nestlingFrom <= nestlingTo;
        if (!ordered) {
            throw new IllegalArgumentException("Not a breeding pace: clutch " + clutchFrom + "–" + clutch + "–"
                    + clutchTo
                    + ", incubation " + incubationFrom + "–" + incubationTo + ", nestlings " + nestlingFrom + "–"
                    + nestlingTo);
        }
    }

    /**
     * {@return the usual pace of a species}
     *
     * @param species a species of the book
     */
    public static BreedingPace usualFor(Species species) {
        return OTHERS.getOrDefault(species, DIPPER);
    }

    /** {@return this pace with another incubation} */
    public BreedingPace withIncubation(int from, int to) {
        return new BreedingPace(clutchFrom, clutch, clutchTo, from, to, nestlingFrom, nestlingTo);
    }

    /** {@return this pace with another time in the nest} */
    public BreedingPace withNestlings(int from, int to) {
        return new BreedingPace(clutchFrom, clutch, clutchTo, incubationFrom, incubationTo, from, to);
    }

    /** What is still possible: a dipper's incubation of 12 to 22 and 15 to 30 days in the nest. Judgement, no source. */
    BreedingPace possible() {
        return new BreedingPace(
                1,
                clutch,
                clutchTo + 2,
                Math.max(1, incubationFrom - 4),
                incubationTo + 6,
                Math.max(1, nestlingFrom - 5),
                nestlingTo + 6);
    }

    /** {@return days from the first egg to hatching, for the usual clutch and the middle of the incubation} */
    public double eggDays() {
        return clutch - 1 + (incubationFrom + incubationTo) / 2.0;
    }

    /** {@return days from hatching to leaving the nest, the middle of the usual range} */
    public double youngDays() {
        return (nestlingFrom + nestlingTo) / 2.0;
    }

    /** The fewest days from the first egg to hatching. */
    int shortestToHatching(int smallestClutch) {
        return smallestClutch - 1 + incubationFrom;
    }

    /** The most days from the first egg to hatching. */
    int longestToHatching(int largestClutch) {
        return largestClutch - 1 + incubationTo;
    }
}
