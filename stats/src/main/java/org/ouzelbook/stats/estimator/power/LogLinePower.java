package org.ouzelbook.stats.estimator.power;

import org.apache.commons.math3.special.Gamma;
import org.ouzelbook.stats.estimator.ReferenceLaw;

/**
 * The power to find a trend in one series of yearly numbers by a straight line, in closed form.
 *
 * <p>With r the yearly rate of change, n yearly numbers of coefficient of variation CV₁ in the first year, and F what the later
 * years' variances add:
 *
 * <pre>{@code
 * linear:       r² n(n − 1)(n + 1) ≥ 12 CV₁² (z(α) + z(β))² F
 * exponential:  ln²(1 + r) n(n − 1)(n + 1) ≥ 12 ln(CV₁² + 1) (z(α) + z(β))²
 * }</pre>
 *
 * <p>They take the variance as known. Where it is estimated from the series itself, least squares on the logs has the power that
 * the noncentral t law gives.
 *
 * <p>Source: T. Gerrodette (1987), Ecology 68:1364–1372 (formulas from memory).
 *
 * @param rate r, the change a year as a share: −0.05 is a fall by 5 %; above −1 and not 0
 * @param years n; 3 or more
 * @param variation CV₁, above 0
 * @param alpha of the test, between 0 and 1
 * @param tails 1 or 2
 */
public record LogLinePower(double rate, int years, double variation, double alpha, int tails) {
    private static final int STEPS = 4000;
    private static final double REACH = 12;

    /** How the coefficient of variation changes with the number A. */
    public enum Precision {
        /** As 1/√A: so counts of birds vary. */
        ONE_OVER_ROOT,
        /** Not at all. */
        CONSTANT,
        /** As √A. */
        ROOT
    }

    /**
     * Checks the numbers.
     *
     * @throws IllegalArgumentException if one is out of its range
     */
    public LogLinePower {
        if (!(rate > -1 && rate != 0 && Double.isFinite(rate))
                || years < 3
                || !(variation > 0 && variation < Double.POSITIVE_INFINITY)
                || !(alpha > 0 && alpha < 1)
                || (tails != 1 && tails != 2)) {
            throw new IllegalArgumentException("Not a plan: rate " + rate + ", years " + years + ", variation "
                    + variation + ", alpha " + alpha + ", tails " + tails);
        }
    }

    /**
     * {@return the power to find a change by the same number every year, with the variance known}
     *
     * @param precision how the coefficient of variation changes; a fall must not reach 0 within the years
     */
    public double linear(Precision precision) {
        double n = years;
        double span = rate * (n - 1);
        double added = switch (precision) {
            case ONE_OVER_ROOT -> 1 + span / 2;
            case CONSTANT -> 1 + span * (1 + rate * (2 * n - 1) / 6);
            case ROOT -> 1 + 1.5 * span * (1 + rate * (2 * n - 1) / 3 + rate * rate * n * (n - 1) / 6);
        };
        return normalPower(rate * rate / (12 * variation * variation * Math.max(added, Double.MIN_NORMAL)));
    }

    /** {@return the power to find a change by the same percentage every year, with a constant and known variation} */
    public double exponential() {
        double log = Math.log1p(rate);
        return normalPower(log * log / (12 * logVariance()));
    }

    private double normalPower(double signal) {
        double n = years;
        double found = Math.sqrt(signal * n * (n - 1) * (n + 1));
        return ReferenceLaw.NORMAL.cumulative(found + ReferenceLaw.NORMAL.quantile(alpha / tails));
    }

    private double logVariance() {
        return Math.log1p(variation * variation);
    }

    /** {@return the power of least squares on the logs, with the variance estimated: by the noncentral t law} */
    public double leastSquares() {
        double n = years;
        double squares = n * (n - 1) * (n + 1) / 12;
        double shift = Math.abs(Math.log1p(rate)) * Math.sqrt(squares / logVariance());
        double critical = -ReferenceLaw.student(n - 2).quantile(alpha / tails);
        double above = 1 - noncentral(critical, n - 2, shift);
        return tails == 1 ? above : above + noncentral(-critical, n - 2, shift);
    }

    /** The probability of t or less: over the law of the estimated standard deviation, by Simpson's rule. */
    private static double noncentral(double t, double freedom, double shift) {
        double from = Math.max(0, Math.sqrt(freedom) - REACH);
        double to = Math.sqrt(freedom) + REACH;
        double width = (to - from) / STEPS;
        double norm = (1 - freedom / 2) * Math.log(2) - Gamma.logGamma(freedom / 2);
        double sum = 0;
        for (int i = 0; i <= STEPS; i++) {
            double chi = from + i * width;
            double density = chi == 0
                    ? (freedom == 1 ? Math.exp(norm) : 0)
                    : Math.exp(norm + (freedom - 1) * Math.log(chi) - chi * chi / 2);
            double weight = i == 0 || i == STEPS ? 1 : i % 2 == 1 ? 4 : 2;
            sum += weight * density * ReferenceLaw.NORMAL.cumulative(t * chi / Math.sqrt(freedom) - shift);
        }
        return sum * width / 3;
    }
}
