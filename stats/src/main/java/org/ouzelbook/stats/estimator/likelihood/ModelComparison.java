package org.ouzelbook.stats.estimator.likelihood;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Models of the same data side by side, the best first: by AICc where all have it, otherwise by AIC.
 *
 * <p>Source: K. P. Burnham and D. R. Anderson (2002), Model Selection and Multimodel Inference, 2nd ed., chapter 2 (cited from
 * memory).
 *
 * @param <M> what says which model it is
 * @param rows the models
 * @param smallSample whether they were ordered by AICc
 */
public record ModelComparison<M>(List<Row<M>> rows, boolean smallSample) {
    /** Copies the list. */
    public ModelComparison {
        rows = List.copyOf(rows);
    }

    /**
     * One model.
     *
     * @param <M> what says which model it is
     * @param model the model
     * @param parameters how many the data tell
     * @param logLikelihood the highest
     * @param aic Akaike's criterion
     * @param aicc the same for small samples
     * @param delta how far its criterion lies above the best
     * @param weight its Akaike weight; the weights add up to 1
     */
    public record Row<M>(
            M model,
            int parameters,
            double logLikelihood,
            double aic,
            OptionalDouble aicc,
            double delta,
            double weight) {}

    /**
     * A model to compare.
     *
     * @param <M> what says which model it is
     * @param model the model
     * @param fit the fitted model
     */
    public record Candidate<M>(M model, LikelihoodFit fit) {}

    /**
     * {@return the comparison}
     *
     * @param <M> what says which model it is
     * @param candidates fits to the same data
     */
    public static <M> ModelComparison<M> of(List<Candidate<M>> candidates) {
        boolean smallSample = candidates.stream().allMatch(one -> one.fit.aicc().isPresent());
        double best = candidates.stream()
                .mapToDouble(one -> criterion(one.fit, smallSample))
                .min()
                .orElse(0);
        double sum = candidates.stream()
                .mapToDouble(one -> Math.exp((best - criterion(one.fit, smallSample)) / 2))
                .sum();
        List<Row<M>> rows = new ArrayList<>();
        for (Candidate<M> one : candidates) {
            double delta = criterion(one.fit, smallSample) - best;
            rows.add(new Row<>(
                    one.model,
                    one.fit.parameters(),
                    one.fit.logLikelihood(),
                    one.fit.aic(),
                    one.fit.aicc(),
                    delta,
                    Math.exp(-delta / 2) / sum));
        }
        rows.sort(Comparator.comparingDouble(Row::delta));
        return new ModelComparison<>(rows, smallSample);
    }

    private static double criterion(LikelihoodFit fit, boolean smallSample) {
        return smallSample ? fit.aicc().orElseThrow() : fit.aic();
    }
}
