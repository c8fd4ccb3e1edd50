package org.ouzelbook.stats.estimator.power;

/**
 * A survey that counts territories on the same water every season.
 *
 * @param territories how many there are at the start; above 0
 * @param seasons how many seasons are counted; 3 or more
 * @param detection probability that one visit finds a territory that is there; above 0, at most 1
 * @param visits visits a season; 1 or more
 * @param findings visits that must find a territory before it counts; 1 or more
 * @param yearNoise standard deviation of good and bad years on the log scale; 0 or more
 * @param level of the trend's interval, between 0 and 1
 */
public record CountPlan(
        double territories, int seasons, double detection, int visits, int findings, double yearNoise, double level) {
    /**
     * Checks the numbers.
     *
     * @throws IllegalArgumentException if one is out of its range
     */
    public CountPlan {
        boolean numbers = territories > 0 && territories < 1e6 && yearNoise >= 0 && yearNoise < 10;
        boolean shares = detection > 0 && detection <= 1 && level > 0 && level < 1;
        if (!numbers || !shares || seasons < 3 || visits < 1 || findings < 1) {
            throw new IllegalArgumentException("Not a plan: " + territories + " territories, " + seasons + " seasons, "
                    + detection + " found a visit, " + visits + " visits, " + findings + " findings, " + yearNoise);
        }
    }

    /** {@return the share of territories that are found on as many visits as they must be: the upper tail of a binomial law} */
    public double shareCounted() {
        double missed = 0;
        double term = Math.pow(1 - detection, visits);
        double odds = detection / (1 - detection);
        for (int found = 0; found < Math.min(findings, visits + 1); found++) {
            missed += term;
            term *= odds * (visits - found) / (found + 1);
        }
        if (detection == 1) {
            return visits >= findings ? 1 : 0;
        }
        return Math.max(0, Math.min(1, 1 - missed));
    }

    /** {@return the plan with another number of seasons} */
    public CountPlan withSeasons(int other) {
        return new CountPlan(territories, other, detection, visits, findings, yearNoise, level);
    }

    /** {@return the plan with another number of visits a season} */
    public CountPlan withVisits(int other) {
        return new CountPlan(territories, seasons, detection, other, findings, yearNoise, level);
    }

    /** {@return the plan over as much more water as this factor says} */
    public CountPlan withWater(double factor) {
        return new CountPlan(territories * factor, seasons, detection, visits, findings, yearNoise, level);
    }
}
