package org.ouzelbook.stats.simulate.fieldwork;

import java.time.MonthDay;

/**
 * How a species is found and where its birds are met.
 *
 * @param found probability that a common pair is found by a common observer on a visit at the best time
 * @param betweenPairs standard deviation of the log-odds between sites
 * @param best date when pairs are most easily found
 * @param lossPerMonth log-odds lost for each month away from it
 * @param lossIncubating log-odds lost while eggs are warmed
 * @param focalShare share of meetings near the nest site; the others lie anywhere on the pair's water
 * @param focalSpreadMetres standard deviation of the distance from the nest site, in metres
 * @param repeats mean number of further meetings on the same visit
 * @param flushed probability that a bird is put up and driven along
 * @param quarrels probability that neighbours who were both found are seen at once at their border
 * @param placeErrorMetres standard deviation of the error of a place, in metres
 * @param straysPerKm strangers and passing birds met on one km of one visit
 * @param roamingYoung meetings with one independent young bird on one visit, on average
 */
public record Detection(
        double found,
        double betweenPairs,
        MonthDay best,
        double lossPerMonth,
        double lossIncubating,
        double focalShare,
        double focalSpreadMetres,
        double repeats,
        double flushed,
        double quarrels,
        double placeErrorMetres,
        double straysPerKm,
        double roamingYoung) {

    /**
     * {@return settings for dippers}
     *
     * <p>A pair was found on 63 to 94 % of visits, differently from site to site: D'Amico and Hémery (2003), Ibis 145:83–86.
     * The others are assumptions.
     */
    public static Detection dipper() {
        return new Detection(0.88, 0.4, MonthDay.of(3, 25), 0.3, 0.4, 0.55, 130, 0.35, 0.16, 0.12, 15, 0.02, 0.12);
    }
}
