package org.ouzelbook.stats.estimator.occupancy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.ouzelbook.stats.estimator.likelihood.Design;
import org.ouzelbook.stats.estimator.likelihood.Parts;

/**
 * Sites that are alike, counted once. Two sites are alike if they have the same covariates and the same result in every season; two
 * site-seasons if they have as many visits of each kind with a detection, and without.
 */
final class SiteClasses {
    private static final int[] NO_PATTERNS = {};

    private final List<SiteClass> classes = new ArrayList<>();
    private final List<Cell> cells = new ArrayList<>();
    private final int[] classOfSite;

    /** What the visits of one site-season showed: how often detected and how often not, by pattern of detection. */
    static final class Cell {
        private final int[] patterns;
        private final int[] detected;
        private final int[] missed;

        private Cell(int[] patterns, int[] detected, int[] missed) {
            this.patterns = patterns;
            this.detected = detected;
            this.missed = missed;
        }

        boolean anyDetected() {
            return Arrays.stream(detected).anyMatch(count -> count > 0);
        }

        /** Probability of these results where the site is occupied, as a logarithm. */
        double logGivenOccupied(double[] logDetected, double[] logMissed) {
            double sum = 0;
            for (int i = 0; i < patterns.length; i++) {
                sum += detected[i] * logDetected[patterns[i]] + missed[i] * logMissed[patterns[i]];
            }
            return sum;
        }

        /** Adds the derivatives by the predictors of detection. */
        void addSlopes(double occupied, double[] detection, double[] slopes) {
            for (int i = 0; i < patterns.length; i++) {
                double p = detection[patterns[i]];
                slopes[patterns[i]] += occupied * (detected[i] * (1 - p) - missed[i] * p);
            }
        }
    }

    /** Sites that are alike. */
    static final class SiteClass {
        private final int occupancy;
        private final int[] cells;
        private final int[] colonisation;
        private final int[] extinction;
        private int sites;

        private SiteClass(int occupancy, int[] cells, int[] colonisation, int[] extinction) {
            this.occupancy = occupancy;
            this.cells = cells;
            this.colonisation = colonisation;
            this.extinction = extinction;
        }

        int occupancy() {
            return occupancy;
        }

        int cell(int season) {
            return cells[season];
        }

        int colonisation(int season) {
            return colonisation[season];
        }

        int extinction(int season) {
            return extinction[season];
        }

        /** How many there are. */
        int sites() {
            return sites;
        }
    }

    SiteClasses(SiteVisits visits, Parts parts) {
        int seasons = visits.seasons();
        Design occupancy = parts.list().get(0).design();
        Design detection = parts.list().get(parts.list().size() - 1).design();
        Map<List<Integer>, Integer> knownCells = new HashMap<>();
        Map<List<Integer>, Integer> knownClasses = new HashMap<>();
        List<List<List<Integer>>> rows = visits.rows();
        classOfSite = new int[visits.sites()];
        for (int site = 0; site < visits.sites(); site++) {
            int[] cellOf = new int[seasons];
            for (int season = 0; season < seasons; season++) {
                List<Integer> key = results(rows.get(site).get(season), visits, detection);
                cellOf[season] = known(knownCells, key);
                if (cellOf[season] == cells.size()) {
                    cells.add(cell(key));
                }
            }
            int[] colonisation = patterns(parts, 1, site, seasons);
            int[] extinction = patterns(parts, 2, site, seasons);
            List<Integer> key = key(occupancy.pattern(site), cellOf, colonisation, extinction);
            classOfSite[site] = known(knownClasses, key);
            if (classOfSite[site] == classes.size()) {
                classes.add(new SiteClass(occupancy.pattern(site), cellOf, colonisation, extinction));
            }
            classes.get(classOfSite[site]).sites++;
        }
    }

    private static int known(Map<List<Integer>, Integer> known, List<Integer> key) {
        Integer before = known.putIfAbsent(key, known.size());
        return before == null ? known.size() - 1 : before;
    }

    private static int[] patterns(Parts parts, int part, int site, int seasons) {
        if (seasons == 1) {
            return NO_PATTERNS;
        }
        int[] patterns = new int[seasons - 1];
        for (int season = 0; season < patterns.length; season++) {
            patterns[season] = parts.list().get(part).design().pattern(site * patterns.length + season);
        }
        return patterns;
    }

    /** The pattern of each visit, doubled, and one more where nothing was detected; sorted. */
    private static List<Integer> results(List<Integer> rows, SiteVisits visits, Design detection) {
        List<Integer> results = new ArrayList<>(rows.size());
        for (int row : rows) {
            results.add(2 * detection.pattern(row) + (visits.visits().get(row).detected() ? 0 : 1));
        }
        results.sort(null);
        return results;
    }

    private static Cell cell(List<Integer> results) {
        int[] patterns =
                results.stream().mapToInt(result -> result / 2).distinct().toArray();
        int[] detected = new int[patterns.length];
        int[] missed = new int[patterns.length];
        for (int result : results) {
            int place = Arrays.binarySearch(patterns, result / 2);
            detected[place] += 1 - result % 2;
            missed[place] += result % 2;
        }
        return new Cell(patterns, detected, missed);
    }

    private static List<Integer> key(int first, int[]... others) {
        List<Integer> key = new ArrayList<>();
        key.add(first);
        for (int[] numbers : others) {
            for (int number : numbers) {
                key.add(number);
            }
        }
        return key;
    }

    List<SiteClass> classes() {
        return classes;
    }

    /** Sites with the same covariates, whatever was found there; their classes have no cells. */
    List<SiteClass> whateverFound() {
        Map<List<Integer>, SiteClass> merged = new LinkedHashMap<>();
        for (SiteClass one : classes) {
            List<Integer> key = key(one.occupancy, one.colonisation, one.extinction);
            merged.computeIfAbsent(
                            key, first -> new SiteClass(one.occupancy, NO_PATTERNS, one.colonisation, one.extinction))
                    .sites += one.sites;
        }
        return List.copyOf(merged.values());
    }

    List<Cell> cells() {
        return cells;
    }

    SiteClass ofSite(int site) {
        return classes.get(classOfSite[site]);
    }
}
