package org.ouzelbook.stats.estimator.segmentation;

import java.util.Arrays;
import org.apache.commons.math3.special.Erf;

/**
 * How much better a stretch is explained by one territory than by strays alone: the logarithm of the ratio of the probabilities
 * of what all visits met there.
 *
 * <p>A visit that covered a share {@code q} of the pair's use of the stretch finds it with probability {@code p q}, and then
 * meets it {@code k ≥ 1} times by a zero-truncated Poisson law with parameter {@code r}. A meeting lies anywhere in the stretch
 * with probability {@code e}, else normally about one focal place, which can be any. With strays of rate {@code s} per metre
 * the {@code n} registrations of a visit with densities {@code f} have the ratio
 *
 * <pre>{@code 1 − p q + p q / (e^r − 1) · (∏(1 + r f / (s q)) − 1) = (1 − p) + p g}</pre>
 *
 * <p>with {@code g ≥ 0}, which is multiplied over the visits and averaged over {@code p}: the products are sorted by how many
 * factors {@code p} they hold, so the mean is a sum of moments ({@link FindingLaw}), each times an elementary symmetric
 * polynomial of the {@code g}; all terms are positive. It is then averaged over focal places a fixed distance apart. A bird met
 * by chance, on no visit, multiplies it by {@code 1 + c f}: with no effort behind it, it says where birds are, but nothing of
 * how often they are found.
 */
final class StretchWeights {
    /** Distance of the focal places that are tried, in metres. */
    private static final double FOCAL_STEP = 100;

    /**
     * Birds met by chance: how often one of a territory is met, for one without a territory on each metre. Common practice, no
     * source.
     */
    private static final double BY_CHANCE = 10_000;

    /** Products of one visit beyond this are taken by their logarithm. */
    private static final double LARGE = 1e30;

    /** Sums beyond these are done again in logarithms. */
    private static final double TOO_LARGE = 1e250;

    private static final double TOO_SMALL = 1e-250;

    private static final double SQRT_2 = Math.sqrt(2);

    private final Cells cells;
    private final FindingLaw law;
    private final double evenUse;
    private final double perFound;
    private final double strayRatio;
    private final double chanceRatio;

    /** How much more a set with two neighbours weighs that were not noted as seen at once. */
    private final double unnoted;

    private final int step;
    private final double[][] near;
    private final int[] nearFrom;
    private final double[] below;
    private final double spread;

    // Room to work in, for one stretch at a time; the last index runs over focal places, so that the inner loops are
    // plain.
    private final int[] metBy;
    private final int[] telling;
    private final double[] scale;
    private final boolean[] full;
    private final double[][] share;
    private final double[][] inverseShare;
    private final double[][] product;
    private final double[][] found;

    /** Of the sets of registrations that a pair can have given: the sum over those whose uppermost is a certain one. */
    private final double[][] withLast;

    // What was found of the stretch that was looked at last.
    private int there;
    private int told;
    private boolean anyMet;
    private final double[] sum;
    private double logScale;

    StretchWeights(Cells cells, Nature nature) {
        this.cells = cells;
        int visits = cells.covered.length;
        law = FindingLaw.of(nature, visits);
        evenUse = nature.evenUse();
        spread = nature.focalSpread();
        perFound = 1 / Math.expm1(nature.repeats());
        strayRatio = nature.repeats() / (nature.strays() / 1000);
        chanceRatio = BY_CHANCE / strayRatio;
        step = (int) Math.max(1, Math.min(cells.shortest, Math.round(FOCAL_STEP / cells.width)));
        below = new double[2 * (cells.longest + step) + 1];
        for (int i = 0; i < below.length; i++) {
            double metres = (i - cells.longest - step - step / 2.0) * cells.width;
            below[i] = 0.5 * Erf.erfc(-metres / (spread * SQRT_2));
        }
        near = new double[cells.position.length][];
        nearFrom = new int[cells.position.length];
        for (int i = 0; i < near.length; i++) {
            int at = (int) (cells.position[i] / cells.width);
            nearFrom[i] = Math.max(0, (at - cells.longest) / step - 1);
            near[i] = new double[(at + cells.longest) / step + 2 - nearFrom[i]];
            for (int j = 0; j < near[i].length; j++) {
                double z = (cells.position[i] - (nearFrom[i] + j + 0.5) * step * cells.width) / spread;
                near[i][j] = strayRatio * (1 - evenUse) * Math.exp(-z * z / 2) / (spread * SQRT_2 * Math.sqrt(Math.PI));
            }
        }
        unnoted = nature.noting() / (1 - nature.noting());
        int foci = cells.longest / step + 2;
        withLast = new double[near.length][];
        for (int i = 0; i < near.length; i++) {
            withLast[i] = new double[cells.atOnce.concerns(i) ? foci : 0];
        }
        metBy = new int[visits];
        telling = new int[visits];
        scale = new double[foci];
        full = new boolean[visits];
        share = new double[visits][foci];
        inverseShare = new double[visits][foci];
        product = new double[visits][foci];
        found = new double[visits + 1][foci];
        sum = new double[visits + 1];
    }

    /** The logarithm of the ratio for a territory from one border to another; minus infinity where none can be. */
    double log(int from, int to) {
        return look(from, to) ? log(law) : Double.NEGATIVE_INFINITY;
    }

    /**
     * Looks at a stretch; false where no territory can be.
     *
     * @param from its lower border
     * @param to its upper border
     */
    boolean look(int from, int to) {
        if (cells.barred[to] > cells.barred[from]) {
            return false;
        }
        Arrays.fill(metBy, 0);
        for (int i = cells.below[from]; i < cells.below[to]; i++) {
            if (cells.visit[i] >= 0) {
                metBy[cells.visit[i]]++;
            }
        }
        there = 0;
        told = 0;
        for (int v = 0; v < metBy.length; v++) {
            int seen = cells.covered[v][to] - cells.covered[v][from];
            if (seen > 0) {
                there++;
                if (metBy[v] > 0 || seen < to - from) {
                    telling[told++] = v;
                }
            }
        }
        anyMet = cells.below[from] < cells.below[to];
        if (told == 0 && !anyMet) {
            sum[0] = 1;
            logScale = 0;
            return true;
        }
        int lowest = Math.floorDiv(2 * from + step - 1, 2 * step);
        int foci = Math.floorDiv(2 * to + step - 1, 2 * step) - lowest;
        prepare(from, to, lowest, foci);
        if (!adds(from, to, lowest, foci)) {
            addsInLogarithms(from, to, lowest, foci);
        }
        return true;
    }

    /** The logarithm of the ratio for the stretch that was looked at last, if pairs are found by this law. */
    double log(FindingLaw by) {
        double[] probability = by.ofVisits(there);
        double total = 0;
        for (int i = 0; i <= told; i++) {
            total += probability[i] * sum[i];
        }
        if (total > 0) {
            return Math.log(total) + logScale;
        }
        double log = Double.NEGATIVE_INFINITY;
        for (int i = 0; i <= told; i++) {
            log = LogSum.of(log, by.logOfVisits(there)[i] + Math.log(sum[i]));
        }
        return log + logScale;
    }

    /** For each focal place: what of the normal law lies in the stretch, and the share of the use that each visit covered. */
    private void prepare(int from, int to, int lowest, int foci) {
        for (int j = 0; j < foci; j++) {
            int zero = cells.longest + step - (lowest + j) * step;
            scale[j] = 1 / (below[to + zero] - below[from + zero]);
        }
        for (int t = 0; t < told; t++) {
            int v = telling[t];
            full[v] = cells.covered[v][to] - cells.covered[v][from] == to - from;
            for (int j = 0; j < foci && !full[v]; j++) {
                share[v][j] = shareSeen(v, from, to, lowest + j, scale[j]);
                inverseShare[v][j] = 1 / share[v][j];
            }
        }
    }

    /** Adds up over focal places; false if the sums are too large for numbers. */
    private boolean adds(int from, int to, int lowest, int foci) {
        double even = strayRatio * evenUse / ((to - from) * cells.width);
        double[] casual = found[0];
        Arrays.fill(casual, 0, foci, 1);
        for (int t = 0; t < told; t++) {
            Arrays.fill(product[telling[t]], 0, foci, 1);
        }
        for (int i = cells.below[from]; i < cells.below[to]; i++) {
            int v = cells.visit[i];
            double[] nearOf = near[i];
            int shift = lowest - nearFrom[i];
            if (cells.atOnce.concerns(i)) {
                addsNoted(i, cells.below[from], even, lowest, foci);
            } else if (v < 0) {
                for (int j = 0; j < foci; j++) {
                    casual[j] *= 1 + chanceRatio * (even + nearOf[j + shift] * scale[j]);
                }
            } else if (full[v]) {
                double[] met = product[v];
                for (int j = 0; j < foci; j++) {
                    met[j] *= 1 + even + nearOf[j + shift] * scale[j];
                }
            } else {
                double[] met = product[v];
                double[] inverse = inverseShare[v];
                for (int j = 0; j < foci; j++) {
                    met[j] *= 1 + (even + nearOf[j + shift] * scale[j]) * inverse[j];
                }
            }
        }
        logScale = scaled(casual, foci);
        for (int t = 0; t < told; t++) {
            double[] seen = share[telling[t]];
            double[] met = product[telling[t]];
            if (full[telling[t]]) {
                for (int j = 0; j < foci; j++) {
                    met[j] = perFound * (met[j] - 1);
                }
            } else {
                for (int j = 0; j < foci; j++) {
                    met[j] = 1 - seen[j] + seen[j] * perFound * (met[j] - 1);
                }
            }
            double log = scaled(met, foci);
            double missed = Math.exp(-log);
            logScale += log;
            Arrays.fill(found[t + 1], 0, foci, 0);
            for (int i = t; i >= 0; i--) {
                double[] fewer = found[i];
                double[] more = found[i + 1];
                for (int j = 0; j < foci; j++) {
                    more[j] += met[j] * fewer[j];
                }
                for (int j = 0; j < foci && log > 0; j++) {
                    fewer[j] *= missed;
                }
            }
        }
        double largest = 0;
        for (int i = 0; i <= told; i++) {
            double total = 0;
            for (int j = 0; j < foci; j++) {
                total += found[i][j];
            }
            sum[i] = total / foci;
            largest = Math.max(largest, sum[i]);
        }
        return largest < TOO_LARGE && largest > TOO_SMALL;
    }

    /** Makes large numbers small by one factor; its logarithm. */
    private static double scaled(double[] values, int size) {
        double largest = 0;
        for (int j = 0; j < size; j++) {
            largest = Math.max(largest, values[j]);
        }
        if (largest < LARGE) {
            return 0;
        }
        for (int j = 0; j < size; j++) {
            values[j] /= largest;
        }
        return Math.log(largest);
    }

    /** How much better the pair explains a registration than a stray, for one focal place. */
    private double weight(int i, double even, int lowest, int focus) {
        double density = even + near[i][lowest + focus - nearFrom[i]] * scale[focus];
        return cells.visit[i] < 0 ? chanceRatio * density : density / seen(cells.visit[i], focus);
    }

    /**
     * A registration of which notes of birds seen at once speak. The product {@code ∏(1 + w)} is the sum over all sets of
     * registrations that the pair can have given, each the product of its weights; here sets that hold two birds seen at once are
     * left out, and those with two neighbours that were not noted so weigh more.
     */
    private void addsNoted(int i, int first, double even, int lowest, int foci) {
        double[] sets = cells.visit[i] < 0 ? found[0] : product[cells.visit[i]];
        for (int j = 0; j < foci; j++) {
            double others = sets[j];
            for (int below : cells.atOnce.notedBelow(i)) {
                others -= below >= first ? withLast[below][j] : 0;
            }
            for (int below : cells.atOnce.unnotedBelow(i)) {
                others += below >= first ? unnoted * withLast[below][j] : 0;
            }
            withLast[i][j] = weight(i, even, lowest, j) * Math.max(1, others);
            sets[j] += withLast[i][j];
        }
    }

    /** The same in logarithms, for one focal place: to the logarithm of the sum over sets below, that of the sum with this one. */
    private double addsNotedInLogarithms(int i, int first, double logSets, double weight, double[] logWithLast) {
        double others = logSets;
        for (int below : cells.atOnce.notedBelow(i)) {
            if (below >= first) {
                others = Math.max(0, others + Math.log1p(-Math.min(1, Math.exp(logWithLast[below] - others))));
            }
        }
        for (int below : cells.atOnce.unnotedBelow(i)) {
            others = below >= first ? LogSum.of(others, Math.log(unnoted) + logWithLast[below]) : others;
        }
        logWithLast[i] = Math.log(weight) + others;
        return LogSum.of(logSets, logWithLast[i]);
    }

    private void addsInLogarithms(int from, int to, int lowest, int foci) {
        double even = strayRatio * evenUse / ((to - from) * cells.width);
        double[] all = new double[told + 1];
        Arrays.fill(all, Double.NEGATIVE_INFINITY);
        double[] logMet = new double[metBy.length];
        double[] logWithLast = new double[near.length];
        for (int j = 0; j < foci; j++) {
            Arrays.fill(logMet, 0);
            double[] log = new double[told + 1];
            Arrays.fill(log, Double.NEGATIVE_INFINITY);
            log[0] = 0;
            for (int i = cells.below[from]; i < cells.below[to]; i++) {
                int v = cells.visit[i];
                double weight = weight(i, even, lowest, j);
                double before = v < 0 ? log[0] : logMet[v];
                double sets = cells.atOnce.concerns(i)
                        ? addsNotedInLogarithms(i, cells.below[from], before, weight, logWithLast)
                        : before + Math.log1p(weight);
                if (v < 0) {
                    log[0] = sets;
                } else {
                    logMet[v] = sets;
                }
            }
            for (int t = 0; t < told; t++) {
                int v = telling[t];
                double met = logMet[v] > 30 ? logMet[v] : Math.log(Math.expm1(logMet[v]));
                double one = LogSum.of(Math.log1p(-seen(v, j)), Math.log(seen(v, j) * perFound) + met);
                for (int i = t; i >= 0; i--) {
                    log[i + 1] = LogSum.of(log[i + 1], one + log[i]);
                }
            }
            for (int i = 0; i <= told; i++) {
                all[i] = LogSum.of(all[i], log[i]);
            }
        }
        logScale = Arrays.stream(all).max().orElseThrow();
        for (int i = 0; i <= told; i++) {
            sum[i] = Math.exp(all[i] - logScale) / foci;
        }
    }

    private double seen(int v, int focus) {
        return full[v] ? 1 : share[v][focus];
    }

    /** Whether anything but the finding of pairs matters to the stretch that was looked at last. */
    boolean tellsOfMeetings() {
        return told > 0 || anyMet;
    }

    /** The share of a pair's use of a stretch that a visit covered, if its focal place is this one. */
    private double shareSeen(int v, int from, int to, int focus, double scale) {
        int zero = cells.longest + step - focus * step;
        int even = 0;
        double near = 0;
        int[] walked = cells.walked[v];
        for (int i = 0; i < walked.length; i += 2) {
            int start = Math.max(from, walked[i]);
            int end = Math.min(to, walked[i + 1]);
            if (start < end) {
                even += end - start;
                near += below[end + zero] - below[start + zero];
            }
        }
        double seen = evenUse * even / (to - from) + (1 - evenUse) * near * scale;
        return Math.max(1e-9, Math.min(1, seen));
    }
}
