package org.ouzelbook.stats.estimator.imputation;

import java.util.List;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.ReferenceLaw;

/**
 * One estimate from m sets of data in which what is not known was drawn, each from what is known of it.
 *
 * <p>With {@code Q̄} the mean of the m estimates, {@code Ū} the mean of their variances and {@code B} the variance of the
 * estimates among the sets, the variance of {@code Q̄} is {@code T = Ū + (1 + 1/m) B}. Its interval comes from Student's t with
 * {@code ν = 1/(1/νₘ + 1/ν̂)} degrees of freedom, where {@code γ = (1 + 1/m) B/T}, {@code νₘ = (m − 1)/γ²}, {@code ν̂ = ν₀ (ν₀ +
 * 1)/(ν₀ + 3) · (1 − γ)}, and {@code ν₀} are the degrees of freedom that a complete set has; without those, with {@code νₘ}.
 *
 * <p>It assumes that estimates of complete data are close to normal, so give it logarithms of ratios and logits of shares; and
 * that the sets were drawn knowing all that the estimate asks about: counts drawn season by season pull a trend towards none.
 *
 * <p>Source: D. B. Rubin (1987), Multiple Imputation for Nonresponse in Surveys, chapter 3; degrees of freedom: J. Barnard and
 * D. B. Rubin (1999), Biometrika 86:948–955.
 *
 * @param imputations m, how many sets there are
 * @param value {@code Q̄}
 * @param within {@code Ū}
 * @param between {@code B}
 * @param law what {@code Q̄} less its true value, over its standard error, is taken to follow
 */
public record PooledEstimate(int imputations, double value, double within, double between, ReferenceLaw law) {
    /** With fewer sets nothing is known of the variance among them. */
    public static final int FEWEST = 2;

    /**
     * One set's estimate.
     *
     * @param value finite
     * @param variance finite and 0 or more
     */
    public record Part(double value, double variance) {
        /**
         * Checks the numbers.
         *
         * @throws IllegalArgumentException if one is out of its range
         */
        public Part {
            if (!(Double.isFinite(value) && variance >= 0 && variance < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException(
                        "A value must be finite, its variance finite and 0 or more, but were " + value + " and "
                                + variance);
            }
        }
    }

    /**
     * {@return the pooled estimate, or that there are too few sets}
     *
     * @param parts one estimate a set
     * @param completeDegreesOfFreedom ν₀, above 0; infinite where the complete sets' estimates follow the normal law
     * @throws IllegalArgumentException if the degrees of freedom are not above 0
     */
    public static Answer<PooledEstimate> of(List<Part> parts, double completeDegreesOfFreedom) {
        if (!(completeDegreesOfFreedom > 0)) {
            throw new IllegalArgumentException(
                    "Degrees of freedom must be above 0, but were " + completeDegreesOfFreedom);
        }
        int m = parts.size();
        if (m < FEWEST) {
            return Answer.notEstimable(Reason.TOO_FEW_VALUES, m, FEWEST);
        }
        double value = parts.stream().mapToDouble(Part::value).average().orElseThrow();
        double within = parts.stream().mapToDouble(Part::variance).average().orElseThrow();
        double squares = parts.stream()
                .mapToDouble(part -> (part.value() - value) * (part.value() - value))
                .sum();
        double between = squares / (m - 1);
        return Answer.of(new PooledEstimate(
                m, value, within, between, law(m, within, (1 + 1.0 / m) * between, completeDegreesOfFreedom)));
    }

    private static ReferenceLaw law(int m, double within, double added, double complete) {
        double share = added == 0 ? 0 : added / (within + added);
        double perDegree = share * share / (m - 1);
        if (within > 0 && !Double.isInfinite(complete)) {
            double observed = complete * (complete + 1) / (complete + 3) * (1 - share);
            perDegree += 1 / observed;
        }
        return ReferenceLaw.student(1 / perDegree);
    }

    /** {@return T, the variance of the value} */
    public double variance() {
        return within + (1 + 1.0 / imputations) * between;
    }

    /** {@return γ, the share of the variance that comes from what was drawn, 0 to 1} */
    public double shareDrawn() {
        return variance() == 0 ? 0 : (variance() - within) / variance();
    }

    /**
     * {@return the value with its interval}
     *
     * @param level the interval's level, between 0 and 1
     * @param n how many observations a complete set has
     * @param warnings what else to know
     */
    public Estimate estimate(double level, long n, List<Caution> warnings) {
        return Estimate.symmetric(value, Math.sqrt(variance()), law, level, n, Method.MULTIPLE_IMPUTATION, warnings);
    }
}
