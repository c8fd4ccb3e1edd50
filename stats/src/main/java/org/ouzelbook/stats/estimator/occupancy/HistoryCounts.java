package org.ouzelbook.stats.estimator.occupancy;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.ouzelbook.stats.estimator.likelihood.Design;
import org.ouzelbook.stats.estimator.likelihood.Logit;
import org.ouzelbook.stats.estimator.likelihood.Parts;

/**
 * How often each detection history was seen, beside how often a model expects it.
 *
 * <p>Sites visited on the same occasions of a season make a cohort. In each, {@code X² = Σ (O − E)²/E} over all histories that
 * could be seen; those that were not seen add their E. Seasons are compared one by one and added up.
 *
 * <p>Source: D. I. MacKenzie and L. L. Bailey (2004), J. Agric. Biol. Environ. Stat. 9:300–318, for one season.
 */
final class HistoryCounts {
    private final Parts parts;
    private final List<Map<List<Integer>, List<int[]>>> cohortsBySeason = new ArrayList<>();
    private final boolean[] detected;
    private final int seasons;

    HistoryCounts(SiteVisits visits, Parts parts) {
        this.parts = parts;
        this.seasons = visits.seasons();
        this.detected = new boolean[visits.visits().size()];
        for (int row = 0; row < detected.length; row++) {
            detected[row] = visits.visits().get(row).detected();
        }
        List<List<List<Integer>>> rows = visits.rows();
        for (int season = 0; season < seasons; season++) {
            Map<List<Integer>, List<int[]>> cohorts = new LinkedHashMap<>();
            for (int site = 0; site < visits.sites(); site++) {
                List<Integer> made = new ArrayList<>(rows.get(site).get(season));
                if (made.isEmpty()) {
                    continue;
                }
                made.sort((a, b) -> Integer.compare(
                        visits.visits().get(a).occasion(),
                        visits.visits().get(b).occasion()));
                List<Integer> occasions = made.stream()
                        .map(row -> visits.visits().get(row).occasion())
                        .toList();
                int[] siteAndRows = new int[made.size() + 1];
                siteAndRows[0] = site;
                for (int i = 0; i < made.size(); i++) {
                    siteAndRows[i + 1] = made.get(i);
                }
                cohorts.computeIfAbsent(occasions, key -> new ArrayList<>()).add(siteAndRows);
            }
            cohortsBySeason.add(cohorts);
        }
    }

    double chiSquare(double[][] predictors) {
        Design detection = parts.list().get(parts.list().size() - 1).design();
        double[] ofDetection = predictors[predictors.length - 1];
        double[] logDetected = new double[ofDetection.length];
        double[] logMissed = new double[ofDetection.length];
        for (int i = 0; i < ofDetection.length; i++) {
            logDetected[i] = Logit.logProbability(ofDetection[i]);
            logMissed[i] = Logit.logProbability(-ofDetection[i]);
        }
        double[][] courses = IntStream.range(0, parts.list().get(0).design().rows())
                .mapToObj(site -> course(predictors, site))
                .toArray(double[][]::new);
        double sum = 0;
        for (int season = 0; season < seasons; season++) {
            for (List<int[]> cohort : cohortsBySeason.get(season).values()) {
                double[] occupied = new double[cohort.size()];
                for (int i = 0; i < occupied.length; i++) {
                    occupied[i] = courses[cohort.get(i)[0]][season];
                }
                sum += ofCohort(cohort, occupied, detection, logDetected, logMissed);
            }
        }
        return sum;
    }

    private double ofCohort(
            List<int[]> cohort, double[] occupied, Design detection, double[] logDetected, double[] logMissed) {
        Map<String, Integer> observed = new LinkedHashMap<>();
        cohort.forEach(site -> observed.merge(history(site), 1, Integer::sum));
        double sum = 0;
        double expectedOfSeen = 0;
        for (Map.Entry<String, Integer> seen : observed.entrySet()) {
            String history = seen.getKey();
            double expected = 0;
            for (int i = 0; i < occupied.length; i++) {
                int[] site = cohort.get(i);
                double log = 0;
                for (int visit = 0; visit < history.length(); visit++) {
                    int pattern = detection.pattern(site[visit + 1]);
                    log += history.charAt(visit) == '1' ? logDetected[pattern] : logMissed[pattern];
                }
                expected += occupied[i] * Math.exp(log) + (history.indexOf('1') < 0 ? 1 - occupied[i] : 0);
            }
            double excess = seen.getValue() - expected;
            sum += excess * excess / expected;
            expectedOfSeen += expected;
        }
        return sum + Math.max(0, cohort.size() - expectedOfSeen);
    }

    private String history(int[] site) {
        StringBuilder history = new StringBuilder(site.length);
        for (int visit = 1; visit < site.length; visit++) {
            history.append(detected[site[visit]] ? '1' : '0');
        }
        return history.toString();
    }

    /** Probability that a site is occupied, by season, before any visit. */
    private double[] course(double[][] predictors, int site) {
        double[] occupied = new double[seasons];
        occupied[0] =
                Logit.probability(predictors[0][parts.list().get(0).design().pattern(site)]);
        for (int season = 1; season < seasons; season++) {
            int row = site * (seasons - 1) + season - 1;
            double gamma =
                    Logit.probability(predictors[1][parts.list().get(1).design().pattern(row)]);
            double epsilon =
                    Logit.probability(predictors[2][parts.list().get(2).design().pattern(row)]);
            occupied[season] = occupied[season - 1] * (1 - epsilon) + (1 - occupied[season - 1]) * gamma;
        }
        return occupied;
    }
}
