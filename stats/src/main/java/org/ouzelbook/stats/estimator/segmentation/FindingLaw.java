package org.ouzelbook.stats.estimator.segmentation;

/**
 * The beta law of the chance {@code p} that a visit finds a pair, by its moments: the mean of {@code pⁱ (1 − p)ⁿ⁻ⁱ}, the
 * probability that {@code i} given visits out of {@code n} find the pair and the others do not.
 *
 * <p>With parameters α and β it is {@code B(α + i, β + n − i) / B(α, β)}, exactly. Source: J. G. Skellam (1948), J. R. Stat. Soc. B
 * 10:257–261; from memory.
 */
final class FindingLaw {
    /** Of so many visits, the logarithm of the probability that given ones found the pair, by how many these are. */
    private final double[][] log;

    /** The same, not as a logarithm; 0 where it is too small for a number. */
    private final double[][] plain;

    private FindingLaw(double[][] log) {
        this.log = log;
        plain = new double[log.length][];
        for (int n = 0; n < log.length; n++) {
            plain[n] = new double[n + 1];
            for (int i = 0; i <= n; i++) {
                plain[n][i] = Math.exp(log[n][i]);
            }
        }
    }

    /**
     * The law of a nature.
     *
     * @param nature its mean is α / (α + β), its concentration α + β
     * @param visits the most visits that are asked about
     */
    static FindingLaw of(Nature nature, int visits) {
        double found = nature.detection() * nature.concentration();
        double missed = (1 - nature.detection()) * nature.concentration();
        double[][] log = new double[visits + 1][];
        log[0] = new double[1];
        for (int n = 1; n <= visits; n++) {
            log[n] = new double[n + 1];
            double both = Math.log(nature.concentration() + n - 1);
            for (int i = 0; i < n; i++) {
                log[n][i] = log[n - 1][i] + Math.log(missed + n - 1 - i) - both;
            }
            log[n][n] = log[n - 1][n - 1] + Math.log(found + n - 1) - both;
        }
        return new FindingLaw(log);
    }

    /** The probabilities that given visits, 0 to all, found the pair and the other visits did not. */
    double[] ofVisits(int visits) {
        return plain[visits];
    }

    /** Their logarithms. */
    double[] logOfVisits(int visits) {
        return log[visits];
    }
}
