package org.ouzelbook.stats.estimator.occupancy;

import org.apache.commons.math3.special.Beta;
import org.apache.commons.math3.util.CombinatoricsUtils;

/**
 * How many of the sites without a find were occupied: a beta-binomial law with a given mean and variance; binomial where the
 * variance is no larger than that, which makes limits rather too wide than too narrow.
 *
 * <p>Source: J. G. Skellam (1948), J. R. Stat. Soc. B 10:257–261 (from memory).
 */
final class UnseenSites {
    /** Against sums that stop just short of one. */
    private static final double ROUNDING = 1e-9;

    /** A variance nearer to the binomial one than this is taken for it. */
    private static final double ALIKE = 1e-6;

    private final int sites;
    private final double mean;
    private final double weight;

    /**
     * @param sites how many there are, 0 or more
     * @param mean expected number of occupied ones, from 0 to {@code sites}
     * @param variance of that number, 0 or more
     */
    UnseenSites(int sites, double mean, double variance) {
        this.sites = sites;
        this.mean = Math.min(Math.max(mean, 0), sites);
        double binomial = this.mean * (1 - this.mean / Math.max(sites, 1));
        double excess = binomial > 0 ? variance / binomial : 1;
        this.weight = excess <= 1 + ALIKE ? Double.POSITIVE_INFINITY : Math.max((sites - excess) / (excess - 1), ALIKE);
    }

    /** The smallest number that is not exceeded with at least this probability. */
    int quantile(double probability) {
        double share = sites == 0 ? 0 : mean / sites;
        if (share <= 0 || share >= 1) {
            return (int) Math.round(mean);
        }
        double sum = 0;
        for (int occupied = 0; occupied < sites; occupied++) {
            sum += Math.exp(logProbability(occupied, share));
            if (sum >= probability - ROUNDING) {
                return occupied;
            }
        }
        return sites;
    }

    private double logProbability(int occupied, double share) {
        int empty = sites - occupied;
        double ways = CombinatoricsUtils.factorialLog(sites)
                - CombinatoricsUtils.factorialLog(occupied)
                - CombinatoricsUtils.factorialLog(empty);
        if (Double.isInfinite(weight)) {
            return ways + occupied * Math.log(share) + empty * Math.log1p(-share);
        }
        double yes = share * weight;
        double no = (1 - share) * weight;
        return ways + Beta.logBeta(occupied + yes, empty + no) - Beta.logBeta(yes, no);
    }
}
