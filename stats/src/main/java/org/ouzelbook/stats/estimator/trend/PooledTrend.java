package org.ouzelbook.stats.estimator.trend;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.ReferenceLaw;
import org.ouzelbook.stats.estimator.imputation.PooledEstimate;
import org.ouzelbook.stats.estimator.imputation.PooledEstimate.Part;

/**
 * The straight line through counts that are not known for certain: fitted to several drawn sets of them, and made one.
 *
 * <p>The slope, and the log of each season's total, are pooled as {@link PooledEstimate} says. So the limits hold both what a
 * {@link LineTrend} allows for and the uncertainty of the counts themselves.
 *
 * @param slope β, on the log scale, a year
 * @param law the law of its limits
 * @param totals the seasons that were counted; what was counted is the mean of the sets, rounded
 * @param errorWithoutTrend the standard error that the slope would have if it were 0
 * @param sets how many sets of counts
 * @param shareDrawn share of the slope's variance that comes from the uncertainty of the counts, 0 to 1
 */
public record PooledTrend(
        Estimate slope,
        ReferenceLaw law,
        List<SeasonTotal> totals,
        double errorWithoutTrend,
        int sets,
        double shareDrawn)
        implements YearlyTrend {
    /** Copies the list. */
    public PooledTrend {
        totals = List.copyOf(totals);
    }

    /**
     * {@return the pooled trend, or why these counts show none: too few sets, or sets that show none}
     *
     * @param sets drawn counts of the same sites and seasons, each as {@link LineTrend} takes them
     * @param settings how to judge
     * @throws IllegalArgumentException if a site has two counts in a season
     */
    public static Answer<PooledTrend> of(List<List<SeasonCount>> sets, TrendSettings settings) {
        List<LineTrend> lines = new ArrayList<>();
        for (List<SeasonCount> counts : sets) {
            LineTrend.of(counts, settings).found().ifPresent(lines::add);
        }
        if (lines.size() < sets.size()) {
            return Answer.notEstimable(Reason.DRAWN_SETS_WITHOUT_ANSWER, sets.size() - lines.size(), sets.size());
        }
        double complete = lines.stream()
                .flatMap(line -> line.law().degreesOfFreedom().stream().boxed())
                .mapToDouble(Double::doubleValue)
                .min()
                .orElse(Double.POSITIVE_INFINITY);
        return PooledEstimate.of(
                        lines.stream()
                                .map(LineTrend::slope)
                                .map(PooledTrend::part)
                                .toList(),
                        complete)
                .map(slope -> of(lines, slope, complete, settings.level()));
    }

    private static PooledTrend of(List<LineTrend> lines, PooledEstimate slope, double complete, double level) {
        LineTrend first = lines.get(0);
        List<Caution> cautions = lines.stream()
                .flatMap(line -> line.slope().warnings().stream())
                .filter(caution -> caution.reason() == Reason.SEASONS_NOT_COUNTED)
                .distinct()
                .toList();
        List<SeasonTotal> totals = new ArrayList<>();
        for (int t = 0; t < first.totals().size(); t++) {
            int season = t;
            totals.add(
                    total(lines.stream().map(line -> line.totals().get(season)).toList(), complete, level));
        }
        double within = mean(lines, line -> line.errorWithoutTrend() * line.errorWithoutTrend());
        return new PooledTrend(
                slope.estimate(level, first.fit().counts(), cautions),
                slope.law(),
                totals,
                Math.sqrt(within / (1 - slope.shareDrawn())),
                lines.size(),
                slope.shareDrawn());
    }

    private static SeasonTotal total(List<SeasonTotal> drawn, double complete, double level) {
        Estimate log = PooledEstimate.of(
                        drawn.stream()
                                .map(SeasonTotal::expected)
                                .map(total -> new Part(
                                        Math.log(total.value()),
                                        square(total.standardError().orElseThrow() / total.value())))
                                .toList(),
                        complete)
                .found()
                .orElseThrow()
                .estimate(level, drawn.get(0).counted(), List.of());
        double value = Math.exp(log.value());
        Estimate expected = new Estimate(
                value,
                OptionalDouble.of(value * log.standardError().orElseThrow()),
                Math.exp(log.lower()),
                Math.exp(log.upper()),
                level,
                log.n(),
                log.method(),
                log.warnings());
        SeasonTotal first = drawn.get(0);
        return new SeasonTotal(
                first.season(),
                Math.round(mean(drawn, total -> (double) total.observed())),
                first.counted(),
                first.missing(),
                mean(drawn, SeasonTotal::filled),
                expected);
    }

    private static Part part(Estimate slope) {
        return new Part(slope.value(), square(slope.standardError().orElseThrow()));
    }

    private static double square(double number) {
        return number * number;
    }

    private static <T> double mean(List<T> all, Function<T, Double> number) {
        return all.stream().mapToDouble(number::apply).average().orElseThrow();
    }
}
