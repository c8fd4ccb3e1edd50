package org.ouzelbook.stats.estimator.occupancy;

/**
 * One visit to one site, and whether anything was detected. A visit that was not made has no record.
 *
 * @param site from 0
 * @param season from 0, in the order of time
 * @param occasion which visit of the season, from 0; the same on all sites
 * @param detected whether the species was detected
 */
public record SiteVisit(int site, int season, int occasion, boolean detected) {
    /**
     * Checks the numbers.
     *
     * @throws IllegalArgumentException if one is negative
     */
    public SiteVisit {
        if (site < 0 || season < 0 || occasion < 0) {
            throw new IllegalArgumentException("Sites, seasons and occasions count from 0");
        }
    }
}
