package org.ouzelbook.stats.estimator.markresight;

import java.util.List;
import org.ouzelbook.stats.estimator.likelihood.Design;
import org.ouzelbook.stats.estimator.likelihood.Logit;
import org.ouzelbook.stats.estimator.likelihood.PredictorLikelihood;

/**
 * The log-likelihood of some groups' m-arrays, without the multinomial coefficients.
 *
 * <p>With φ the survival over the interval after an occasion and p the resighting on it, an animal released on i is next seen
 * on j with probability φ_i (1−p_{i+1}) φ_{i+1} … φ_{j−1} p_j, and never with χ_i = 1 − φ_i (1 − (1−p_{i+1}) χ_{i+1}). Row g·(T−1)
 * + t of both designs is the interval t of group g, and the occasion t + 1 that ends it.
 */
final class ResightingLikelihood implements PredictorLikelihood {
    private final List<Tally> tallies;
    private final Design survival;
    private final Design resighting;
    private final List<Boolean> looked;

    /**
     * @param groups their m-arrays
     * @param survival rows as above
     * @param resighting rows as above
     * @param looked whether anybody looked, by occasion; without that, resighting is 0
     */
    ResightingLikelihood(List<MArray> groups, Design survival, Design resighting, List<Boolean> looked) {
        this.tallies = groups.stream().map(Tally::of).toList();
        this.survival = survival;
        this.resighting = resighting;
        this.looked = looked;
    }

    /** How often each probability enters, by interval. */
    private static final class Tally {
        /** Animals known to have survived it. */
        private final long[] survived;
        /** Animals seen again at its end. */
        private final long[] seen;
        /** Animals known to have been alive at its end, and missed. */
        private final long[] missed;
        /** Animals released at its beginning and never seen again. */
        private final long[] never;

        private Tally(int intervals) {
            survived = new long[intervals];
            seen = new long[intervals];
            missed = new long[intervals];
            never = new long[intervals];
        }

        static Tally of(MArray array) {
            int intervals = array.occasions() - 1;
            Tally tally = new Tally(intervals);
            for (int release = 0; release < intervals; release++) {
                tally.never[release] = array.never(release);
                for (int next = release + 1; next < array.occasions(); next++) {
                    long number = array.seenNext(release, next);
                    tally.seen[next - 1] += number;
                    for (int interval = release; interval < next; interval++) {
                        tally.survived[interval] += number;
                        if (interval < next - 1) {
                            tally.missed[interval] += number;
                        }
                    }
                }
            }
            return tally;
        }
    }

    @Override
    public double at(double[][] predictors, double[][] slopes) {
        double sum = 0;
        for (int group = 0; group < tallies.size(); group++) {
            sum += group(group, predictors, slopes);
        }
        return sum;
    }

    private double group(int group, double[][] predictors, double[][] slopes) {
        Tally tally = tallies.get(group);
        int intervals = tally.never.length;
        double[] neverAgain = new double[intervals + 1];
        neverAgain[intervals] = 1;
        double sum = 0;
        for (int t = intervals - 1; t >= 0; t--) {
            double alive = predictors[0][survival.pattern(group * intervals + t)];
            double met = predictors[1][resighting.pattern(group * intervals + t)];
            neverAgain[t] = Logit.probability(-alive) + Logit.probability(alive) * missing(t, met) * neverAgain[t + 1];
            sum += times(tally.survived[t], Logit.logProbability(alive))
                    + times(tally.never[t], Math.log(neverAgain[t]));
            if (looked.get(t + 1)) {
                sum += times(tally.seen[t], Logit.logProbability(met))
                        + times(tally.missed[t], Logit.logProbability(-met));
            }
        }
        double weight = 0;
        for (int t = 0; t < intervals; t++) {
            int survivalPattern = survival.pattern(group * intervals + t);
            int resightingPattern = resighting.pattern(group * intervals + t);
            double alive = predictors[0][survivalPattern];
            double met = predictors[1][resightingPattern];
            double phi = Logit.probability(alive);
            double dead = Logit.probability(-alive);
            double missed = missing(t, met);
            weight += tally.never[t] == 0 ? 0 : tally.never[t] / neverAgain[t];
            slopes[0][survivalPattern] +=
                    tally.survived[t] * dead - weight * (1 - missed * neverAgain[t + 1]) * phi * dead;
            if (looked.get(t + 1)) {
                double p = Logit.probability(met);
                slopes[1][resightingPattern] +=
                        tally.seen[t] * missed - tally.missed[t] * p - weight * phi * neverAgain[t + 1] * p * missed;
            }
            weight *= phi * missed;
        }
        return sum;
    }

    private double missing(int interval, double met) {
        return looked.get(interval + 1) ? Logit.probability(-met) : 1;
    }

    /** A count times a logarithm; 0 for the count 0 even where the logarithm is infinite. */
    private static double times(long count, double logarithm) {
        return count == 0 ? 0 : count * logarithm;
    }
}
