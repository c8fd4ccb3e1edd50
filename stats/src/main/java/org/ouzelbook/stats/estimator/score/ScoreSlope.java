package org.ouzelbook.stats.estimator.score;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.Reason;

/**
 * How a count goes with a score within sites: the log-linear Poisson model {@code log μᵢⱼ = αᵢ + log kmᵢⱼ + β·sᵢⱼ} with an
 * effect {@code αᵢ} of each site, so that sites that are always rich and always full say nothing.
 *
 * <p>Given a site's total, its counts are multinomial with shares {@code ∝ kmᵢⱼ exp(β·sᵢⱼ)}, which frees β from the site
 * effects; that likelihood is concave, and Newton's method climbs it. The interval is Wald's. Sites without a count above 0,
 * with one season, or with one score throughout take no part.
 *
 * <p>Source: P. McCullagh and J. A. Nelder (1989), Generalized Linear Models, 2nd edition, sections 6.4 and 7.2.
 */
public final class ScoreSlope {
    private static final int MOST_STEPS = 100;
    private static final double NEAR = 1e-12;
    private static final double LONGEST_STEP = 1;

    private ScoreSlope() {}

    /**
     * One site in one season.
     *
     * @param site its name
     * @param count how many were counted; not negative
     * @param km km looked at; positive
     * @param score the score; finite
     */
    public record Cell(String site, long count, double km, double score) {
        /**
         * Checks the numbers.
         *
         * @throws IllegalArgumentException if one is out of its range
         */
        public Cell {
            if (count < 0 || !(km > 0 && km < Double.POSITIVE_INFINITY) || !Double.isFinite(score)) {
                throw new IllegalArgumentException("Not a cell: " + count + " on " + km + " km, score " + score);
            }
        }
    }

    /**
     * {@return β: the change of the log density with one more of the score}
     *
     * @param cells sites in seasons
     * @param level level of the interval, between 0 and 1
     */
    public static Answer<Estimate> of(List<Cell> cells, double level) {
        List<List<Cell>> sites = telling(cells);
        long n = sites.stream().mapToLong(List::size).sum();
        if (sites.isEmpty()) {
            return Answer.notEstimable(Reason.NO_SITE_IN_TWO_SEASONS);
        }
        if (sites.stream().allMatch(site -> allStandAt(site, true))
                || sites.stream().allMatch(site -> allStandAt(site, false))) {
            return Answer.notEstimable(Reason.NOT_CONVERGED);
        }
        double beta = 0;
        for (int step = 0; step < MOST_STEPS; step++) {
            double[] slope = slope(sites, beta);
            double move = Math.max(
                    -LONGEST_STEP / spread(sites), Math.min(LONGEST_STEP / spread(sites), slope[0] / slope[1]));
            beta += move;
            if (Math.abs(move) <= NEAR * Math.max(1, Math.abs(beta))) {
                double error = 1 / Math.sqrt(slope(sites, beta)[1]);
                double z = new NormalDistribution(null, 0, 1).inverseCumulativeProbability(1 - Estimate.tail(level));
                return Answer.of(new Estimate(
                        beta,
                        OptionalDouble.of(error),
                        beta - z * error,
                        beta + z * error,
                        level,
                        n,
                        Method.LOG_LINEAR_POISSON,
                        List.of()));
            }
        }
        return Answer.notEstimable(Reason.NOT_CONVERGED);
    }

    private static List<List<Cell>> telling(List<Cell> cells) {
        Map<String, List<Cell>> sites = new LinkedHashMap<>();
        cells.forEach(cell ->
                sites.computeIfAbsent(cell.site(), key -> new ArrayList<>()).add(cell));
        return sites.values().stream()
                .filter(site -> site.stream().anyMatch(cell -> cell.count() > 0))
                .filter(site ->
                        site.stream().mapToDouble(Cell::score).distinct().count() > 1)
                .toList();
    }

    /** Whether all that was counted stands at the highest score of its site, or the lowest, so that β has no maximum. */
    private static boolean allStandAt(List<Cell> site, boolean highest) {
        double end = highest
                ? site.stream().mapToDouble(Cell::score).max().orElseThrow()
                : site.stream().mapToDouble(Cell::score).min().orElseThrow();
        return site.stream().allMatch(cell -> cell.count() == 0 || cell.score() == end);
    }

    private static double spread(List<List<Cell>> sites) {
        return sites.stream()
                .mapToDouble(
                        site -> site.stream().mapToDouble(Cell::score).max().orElseThrow()
                                - site.stream().mapToDouble(Cell::score).min().orElseThrow())
                .max()
                .orElseThrow();
    }

    /** First derivative of the log-likelihood, and the negative second. */
    private static double[] slope(List<List<Cell>> sites, double beta) {
        double first = 0;
        double information = 0;
        for (List<Cell> site : sites) {
            double top =
                    site.stream().mapToDouble(cell -> beta * cell.score()).max().orElseThrow();
            double weights = 0;
            double mean = 0;
            double square = 0;
            double total = 0;
            for (Cell cell : site) {
                double weight = cell.km() * Math.exp(beta * cell.score() - top);
                weights += weight;
                mean += weight * cell.score();
                square += weight * cell.score() * cell.score();
                total += cell.count();
                first += cell.count() * cell.score();
            }
            mean /= weights;
            first -= total * mean;
            information += total * (square / weights - mean * mean);
        }
        return new double[] {first, information};
    }
}
