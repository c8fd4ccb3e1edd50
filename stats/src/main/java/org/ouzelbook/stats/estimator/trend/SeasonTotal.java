package org.ouzelbook.stats.estimator.trend;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.trend.CountGrid.Row;

/**
 * All sites of one season together.
 *
 * @param season the calendar year
 * @param observed what was counted
 * @param counted how many sites were counted
 * @param missing how many sites were not, of those that ever had birds
 * @param filled what was counted, and the model's expectation where nobody did
 * @param expected the model's expectation at every site, with limits symmetric on the log scale; the upper one is infinite if it
 *     lies more than a hundredfold away
 */
public record SeasonTotal(int season, long observed, int counted, int missing, double filled, Estimate expected) {
    static List<SeasonTotal> of(SiteEffectsFit fit, TrendFit quality, double level) {
        CountGrid grid = fit.grid();
        int seasons = grid.size();
        double[] expected = new double[seasons];
        double[] filled = new double[seasons];
        int[] missing = new int[seasons];
        for (Row row : grid.rows()) {
            double[] means = fit.means(row);
            for (int t = 0; t < seasons; t++) {
                expected[t] += means[t];
                filled[t] += row.counted(t) ? row.count(t) : means[t];
                missing[t] += row.counted(t) ? 0 : 1;
            }
        }
        double[] variances = fit.totalVariances();
        double halfWidth = quality.law().halfWidth(level);
        List<SeasonTotal> totals = new ArrayList<>();
        for (int t = 0; t < seasons; t++) {
            double error = Math.sqrt(quality.scale() * variances[t]);
            double logWidth = halfWidth * error / expected[t];
            double factor = Math.exp(logWidth);
            Estimate total = new Estimate(
                    expected[t],
                    OptionalDouble.of(error),
                    expected[t] / factor,
                    logWidth > PercentChange.LOOSE ? Double.POSITIVE_INFINITY : expected[t] * factor,
                    level,
                    grid.counted(t),
                    quality.method(),
                    quality.cautions());
            totals.add(new SeasonTotal(grid.year(t), grid.observed(t), grid.counted(t), missing[t], filled[t], total));
        }
        return List.copyOf(totals);
    }
}
