package org.ouzelbook.stats.estimator.trend;

import org.apache.commons.math3.special.Gamma;
import org.ouzelbook.stats.estimator.trend.CountGrid.Row;

/** How the counts of one site vary about their means, and hang together. */
sealed interface Variation {
    /**
     * {@return the factor by which relative means must be multiplied to become the site's means: its effect, profiled out}
     *
     * @param relative relative mean of each season, counted or not
     */
    double level(Row row, double[] relative);

    /** {@return the working precision of the site's log means} */
    Precision precision(Row row, double[] means);

    /** {@return the log-likelihood of the site's counts} */
    double logLikelihood(Row row, double[] means);

    /** {@return the variance of a count with this mean} */
    double variance(double mean);

    /** Poisson counts. The site's effect is its total over the sum of its relative means. */
    record Poisson() implements Variation {
        @Override
        public double level(Row row, double[] relative) {
            double sum = 0;
            for (int j : row.countedSeasons()) {
                sum += relative[j];
            }
            return row.total() / sum;
        }

        @Override
        public Precision precision(Row row, double[] means) {
            double[] diagonal = new double[means.length];
            for (int j : row.countedSeasons()) {
                diagonal[j] = means[j];
            }
            return Precision.ofUnrelated(diagonal, row.countedSeasons());
        }

        @Override
        public double logLikelihood(Row row, double[] means) {
            double sum = 0;
            for (int j : row.countedSeasons()) {
                double count = row.count(j);
                sum += (count == 0 ? 0 : count * Math.log(means[j])) - means[j] - LogFactorial.of(row.count(j));
            }
            return sum;
        }

        @Override
        public double variance(double mean) {
            return mean;
        }
    }

    /**
     * Negative binomial counts with variance {@code μ + μ²/θ}.
     *
     * @param theta θ, above 0; the larger, the closer to Poisson
     */
    record NegativeBinomial(double theta) implements Variation {
        private static final int MOST_STEPS = 100;

        /** The root of a falling function of the log of the factor, by Newton's method from above or below, kept in a bracket. */
        @Override
        public double level(Row row, double[] relative) {
            double log = Math.log(new Poisson().level(row, relative));
            for (int step = 0; step < MOST_STEPS; step++) {
                double score = 0;
                double information = 0;
                for (int j : row.countedSeasons()) {
                    double mean = relative[j] * Math.exp(log);
                    double shrunk = theta / (theta + mean);
                    score += (row.count(j) - mean) * shrunk;
                    information += (row.count(j) + theta) * mean / theta * shrunk * shrunk;
                }
                double move = Math.max(-2, Math.min(2, score / information));
                log += move;
                if (Math.abs(move) < 1e-12) {
                    break;
                }
            }
            return Math.exp(log);
        }

        @Override
        public Precision precision(Row row, double[] means) {
            double[] diagonal = new double[means.length];
            for (int j : row.countedSeasons()) {
                diagonal[j] = means[j] * theta / (theta + means[j]);
            }
            return Precision.ofUnrelated(diagonal, row.countedSeasons());
        }

        @Override
        public double logLikelihood(Row row, double[] means) {
            double sum = 0;
            for (int j : row.countedSeasons()) {
                double count = row.count(j);
                sum += Gamma.logGamma(count + theta)
                        - Gamma.logGamma(theta)
                        - LogFactorial.of(row.count(j))
                        - theta * Math.log1p(means[j] / theta)
                        + (count == 0 ? 0 : count * (Math.log(means[j]) - Math.log(theta + means[j])));
            }
            return sum;
        }

        @Override
        public double variance(double mean) {
            return mean + mean * mean / theta;
        }
    }

    /**
     * Counts with the variance of Poisson counts, of which two a season apart are correlated, two {@code k} seasons apart by
     * that correlation to the power of {@code k}.
     *
     * @param correlation from 0, below 1
     * @param grid the counts, which know their years
     */
    record Serial(double correlation, CountGrid grid) implements Variation {
        /** With u the roots of the relative means, {@code u'R⁻¹(y/u) / u'R⁻¹u}. */
        @Override
        public double level(Row row, double[] relative) {
            double[] root = new double[relative.length];
            double[] scaled = new double[relative.length];
            for (int j : row.countedSeasons()) {
                root[j] = Math.sqrt(relative[j]);
                scaled[j] = row.count(j) / root[j];
            }
            double[] weights = inverse(row).times(root);
            double above = 0;
            double below = 0;
            for (int j : row.countedSeasons()) {
                above += weights[j] * scaled[j];
                below += weights[j] * root[j];
            }
            return above / below;
        }

        @Override
        public Precision precision(Row row, double[] means) {
            Precision inverse = inverse(row);
            int[] counted = row.countedSeasons();
            double[] diagonal = new double[means.length];
            double[] before = new double[means.length];
            for (int i = 0; i < counted.length; i++) {
                int j = counted[i];
                diagonal[j] = means[j] * inverse.diagonal(j);
                if (i > 0) {
                    before[j] = Math.sqrt(means[j] * means[counted[i - 1]]) * inverse.before(j);
                }
            }
            return new Precision(diagonal, before, counted);
        }

        /** The inverse of the correlations: between successive counts a gap of k seasons has correlation ρᵏ. */
        private Precision inverse(Row row) {
            int[] counted = row.countedSeasons();
            double[] diagonal = new double[grid.size()];
            double[] before = new double[grid.size()];
            for (int i = 0; i < counted.length; i++) {
                diagonal[counted[i]] += 1;
                if (i > 0) {
                    double alike = Math.pow(correlation, grid.year(counted[i]) - grid.year(counted[i - 1]));
                    double own = alike * alike / (1 - alike * alike);
                    diagonal[counted[i]] += own;
                    diagonal[counted[i - 1]] += own;
                    before[counted[i]] = -alike / (1 - alike * alike);
                }
            }
            return new Precision(diagonal, before, counted);
        }

        @Override
        public double logLikelihood(Row row, double[] means) {
            return new Poisson().logLikelihood(row, means);
        }

        @Override
        public double variance(double mean) {
            return mean;
        }
    }
}
