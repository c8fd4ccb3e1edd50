package org.ouzelbook.stats.survey;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.trend.RankTrend;
import org.ouzelbook.stats.survey.CountTrend.Counted;
import org.ouzelbook.stats.survey.CountTrend.LeastSquares;

/**
 * Territories per km in the seasons when every water was counted that was counted at any time; without those seasons that
 * missed one, because a sum over other waters is no part of the same series.
 *
 * @param bySeason territories per km
 */
record ComparableDensities(TreeMap<Integer, Double> bySeason) {

    static ComparableDensities of(List<Counted> counts) {
        Set<String> waters = counts.stream()
                .filter(counted -> counted.gap().isEmpty())
                .map(Counted::water)
                .collect(Collectors.toSet());
        Map<Integer, List<Counted>> counted =
                counts.stream().filter(one -> one.gap().isEmpty()).collect(Collectors.groupingBy(Counted::season));
        TreeMap<Integer, Double> bySeason = new TreeMap<>();
        counted.forEach((season, ofSeason) -> {
            if (ofSeason.size() == waters.size()) {
                double territories = ofSeason.stream()
                        .mapToLong(one -> one.count().orElseThrow())
                        .sum();
                double km = ofSeason.stream().mapToDouble(Counted::surveyedKm).sum();
                bySeason.put(season, territories / km);
            }
        });
        return new ComparableDensities(bySeason);
    }

    Answer<RankTrend> ranks(double level) {
        double[] years =
                bySeason.keySet().stream().mapToDouble(Integer::doubleValue).toArray();
        double[] values =
                bySeason.values().stream().mapToDouble(Double::doubleValue).toArray();
        return RankTrend.of(years, values, level, RankTrend.Ranks.INTERPOLATED);
    }

    /** The line of least squares; empty with fewer than three seasons or a season without any territory. */
    Optional<LeastSquares> leastSquares(double level) {
        if (bySeason.size() < 3 || bySeason.containsValue(0.0)) {
            return Optional.empty();
        }
        SimpleRegression line = new SimpleRegression();
        bySeason.forEach((season, density) -> line.addData(season - bySeason.firstKey(), Math.log(density)));
        double halfWidth = line.getSlopeConfidenceInterval(1 - level);
        return Optional.of(new LeastSquares(
                percent(line.getSlope()), percent(line.getSlope() - halfWidth), percent(line.getSlope() + halfWidth)));
    }

    private static double percent(double slope) {
        return 100 * Math.expm1(slope);
    }
}
