package org.ouzelbook.stats.estimator.segmentation;

import java.util.Arrays;
import java.util.List;

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
 *
 * <p>Several natures are looked at together: what was met and walked is the same for all of them, and one long loop over focal
 * places and natures takes a third of the time of many short ones. Each nature has the same answer, to the last bit, as by itself.
 */
final class StretchWeights {
    /** Products of one visit beyond this are taken by their logarithm. */
    private static final double LARGE = 1e30;

    /** Sums beyond these are done again in logarithms. */
    private static final double TOO_LARGE = 1e250;

    private static final double TOO_SMALL = 1e-250;

    private final Cells cells;
    private final List<FindingLaw> laws;

    /** How many natures there are. */
    private final int natures;

    private final int step;
    private final NatureLanes of;

    // Room to work in, for one stretch at a time; all by lanes, so that the inner loops are plain.
    private final int[] metBy;
    private final int[] telling;
    private final double[] scale;
    private final double[] even;
    private final boolean[] full;
    private final double[][] share;
    private final double[][] inverseShare;

    /** The lowest visit that covered the same water: its shares are those of all of them. */
    private final int[] twin;

    private final double[][] product;
    private final double[][] found;
    private final double[] missed;
    private final double[] weight;

    /** Of the sets of registrations that a pair can have given: the sum over those whose uppermost is a certain one. */
    private final double[][] withLast;

    // What was found of the stretch that was looked at last; the sums of each nature side by side.
    private int there;
    private int told;
    private boolean anyMet;
    private final double[] sum;
    private final double[] logScale;

    StretchWeights(Cells cells, Nature nature) {
        this(cells, List.of(nature));
    }

    /**
     * The weights of several natures.
     *
     * @param cells the line
     * @param several the natures; the answers are known by their places in it
     */
    StretchWeights(Cells cells, List<Nature> several) {
        this.cells = cells;
        int visits = cells.covered.length;
        laws = several.stream().map(nature -> FindingLaw.of(nature, visits)).toList();
        natures = several.size();
        of = new NatureLanes(cells, several);
        step = of.step;
        int lanes = of.lanes;
        withLast = new double[cells.position.length][];
        for (int i = 0; i < withLast.length; i++) {
            withLast[i] = new double[cells.atOnce.concerns(i) ? lanes : 0];
        }
        metBy = new int[visits];
        telling = new int[visits];
        scale = new double[lanes];
        even = new double[lanes];
        full = new boolean[visits];
        twin = new int[visits];
        share = new double[visits][];
        inverseShare = new double[visits][];
        for (int v = 0; v < visits; v++) {
            while (!Arrays.equals(cells.walked[twin[v]], cells.walked[v])) {
                twin[v]++;
            }
            share[v] = twin[v] < v ? share[twin[v]] : new double[lanes];
            inverseShare[v] = twin[v] < v ? inverseShare[twin[v]] : new double[lanes];
        }
        product = new double[visits][lanes];
        found = new double[visits + 1][lanes];
        missed = new double[natures];
        weight = new double[lanes];
        sum = new double[(visits + 1) * natures];
        logScale = new double[natures];
    }

    /** The logarithm of the ratio for a territory from one border to another; minus infinity where none can be. */
    double log(int from, int to) {
        return look(from, to) ? log(0) : Double.NEGATIVE_INFINITY;
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
            Arrays.fill(sum, 0, natures, 1);
            Arrays.fill(logScale, 0);
            return true;
        }
        int lowest = Math.floorDiv(2 * from + step - 1, 2 * step);
        int foci = Math.floorDiv(2 * to + step - 1, 2 * step) - lowest;
        prepare(from, to, lowest, foci * natures);
        adds(from, to, lowest, foci * natures);
        average(foci);
        for (int n = 0; n < natures; n++) {
            if (!isNumber(n)) {
                addsInLogarithms(n, from, to, lowest, foci);
            }
        }
        return true;
    }

    /** The logarithm of the ratio for the stretch that was looked at last, by one of the natures. */
    double log(int nature) {
        return log(nature, laws.get(nature));
    }

    /** The same, if pairs are found by this law. */
    double log(int nature, FindingLaw by) {
        double[] probability = by.ofVisits(there);
        double total = 0;
        for (int i = 0; i <= told; i++) {
            total += probability[i] * sum[i * natures + nature];
        }
        if (total > 0) {
            return Math.log(total) + logScale[nature];
        }
        double log = Double.NEGATIVE_INFINITY;
        for (int i = 0; i <= told; i++) {
            log = LogSum.of(log, by.logOfVisits(there)[i] + Math.log(sum[i * natures + nature]));
        }
        return log + logScale[nature];
    }

    /** For each focal place: what of the normal law lies in the stretch, and the share of the use that each visit covered. */
    private void prepare(int from, int to, int lowest, int lanes) {
        double metres = (to - from) * cells.width;
        for (int lane = 0; lane < lanes; lane++) {
            even[lane] = of.evenStrays[lane] / metres;
        }
        Arrays.fill(scale, 0, lanes, 0);
        of.addBetween(from, to, lowest, lanes, scale);
        for (int lane = 0; lane < lanes; lane++) {
            scale[lane] = 1 / scale[lane];
        }
        for (int t = 0; t < told; t++) {
            int v = telling[t];
            full[v] = cells.covered[v][to] - cells.covered[v][from] == to - from;
            // A twin that was there is telling, too, and was looked at before.
            if (!full[v] && twin[v] == v) {
                share(v, from, to, lowest, lanes);
            }
        }
    }

    /** The share of a pair's use of a stretch that a visit covered. */
    private void share(int v, int from, int to, int lowest, int lanes) {
        double[] seen = share[v];
        double[] inverse = inverseShare[v];
        int covered = 0;
        Arrays.fill(seen, 0, lanes, 0);
        int[] walked = cells.walked[v];
        for (int i = 0; i < walked.length; i += 2) {
            int start = Math.max(from, walked[i]);
            int end = Math.min(to, walked[i + 1]);
            if (start < end) {
                covered += end - start;
                of.addBetween(start, end, lowest, lanes, seen);
            }
        }
        int length = to - from;
        for (int lane = 0; lane < lanes; lane++) {
            double all = of.evenUse[lane] * covered / length + of.nearUse[lane] * seen[lane] * scale[lane];
            seen[lane] = Math.max(1e-9, Math.min(1, all));
            inverse[lane] = 1 / seen[lane];
        }
    }

    /** The products over what was met, and the sums over the sets of visits that found the pair. */
    private void adds(int from, int to, int lowest, int lanes) {
        double[] casual = found[0];
        Arrays.fill(casual, 0, lanes, 1);
        for (int t = 0; t < told; t++) {
            Arrays.fill(product[telling[t]], 0, lanes, 1);
        }
        for (int i = cells.below[from]; i < cells.below[to]; i++) {
            if (cells.atOnce.concerns(i)) {
                addsNoted(i, cells.below[from], lowest, lanes);
            } else {
                meets(i, lowest, lanes);
            }
        }
        Arrays.fill(logScale, 0);
        scale(casual, lanes);
        for (int t = 0; t < told; t++) {
            double[] met = product[telling[t]];
            visits(telling[t], met, lanes);
            boolean large = scale(met, lanes);
            Arrays.fill(found[t + 1], 0, lanes, 0);
            for (int i = t; i >= 0; i--) {
                double[] fewer = found[i];
                double[] more = found[i + 1];
                for (int lane = 0; lane < lanes; lane++) {
                    more[lane] += met[lane] * fewer[lane];
                }
                for (int lane = 0; lane < lanes && large; lane++) {
                    fewer[lane] *= missed[lane % natures];
                }
            }
        }
    }

    /** A registration of which no note of birds seen at once speaks. */
    private void meets(int i, int lowest, int lanes) {
        int v = cells.visit[i];
        double[] nearOf = of.near[i];
        int shift = (lowest - of.nearFrom[i]) * natures;
        double[] met = v < 0 ? found[0] : product[v];
        if (v < 0) {
            for (int lane = 0; lane < lanes; lane++) {
                met[lane] *= 1 + of.chanceRatio[lane] * (even[lane] + nearOf[lane + shift] * scale[lane]);
            }
        } else if (full[v]) {
            for (int lane = 0; lane < lanes; lane++) {
                met[lane] *= 1 + even[lane] + nearOf[lane + shift] * scale[lane];
            }
        } else {
            double[] inverse = inverseShare[v];
            for (int lane = 0; lane < lanes; lane++) {
                met[lane] *= 1 + (even[lane] + nearOf[lane + shift] * scale[lane]) * inverse[lane];
            }
        }
    }

    /** How much better a pair explains a visit than strays alone, from the product over what the visit met; without the detection. */
    private void visits(int v, double[] met, int lanes) {
        if (full[v]) {
            for (int lane = 0; lane < lanes; lane++) {
                met[lane] = of.perFound[lane] * (met[lane] - 1);
            }
        } else {
            double[] seen = share[v];
            for (int lane = 0; lane < lanes; lane++) {
                met[lane] = 1 - seen[lane] + seen[lane] * of.perFound[lane] * (met[lane] - 1);
            }
        }
    }

    /** Makes large numbers small by one factor for each nature, and keeps its logarithm; whether there were any. */
    private boolean scale(double[] values, int lanes) {
        boolean small = true;
        for (int lane = 0; lane < lanes; lane++) {
            small &= values[lane] < LARGE;
        }
        if (small) {
            return false;
        }
        for (int n = 0; n < natures; n++) {
            double one = 0;
            for (int lane = n; lane < lanes; lane += natures) {
                one = Math.max(one, values[lane]);
            }
            double log = one < LARGE ? 0 : Math.log(one);
            for (int lane = n; lane < lanes && !(one < LARGE); lane += natures) {
                values[lane] /= one;
            }
            logScale[n] += log;
            missed[n] = Math.exp(-log);
        }
        return true;
    }

    /** The mean over focal places. */
    private void average(int foci) {
        Arrays.fill(sum, 0, (told + 1) * natures, 0);
        for (int i = 0; i <= told; i++) {
            double[] sums = found[i];
            int at = i * natures;
            for (int j = 0; j < foci; j++) {
                int lane = j * natures;
                for (int n = 0; n < natures; n++) {
                    sum[at + n] += sums[lane + n];
                }
            }
        }
        for (int i = 0; i < (told + 1) * natures; i++) {
            sum[i] /= foci;
        }
    }

    /** Whether the sums of a nature are neither too large nor too small for numbers. */
    private boolean isNumber(int n) {
        double largest = 0;
        for (int i = 0; i <= told; i++) {
            largest = Math.max(largest, sum[i * natures + n]);
        }
        return largest < TOO_LARGE && largest > TOO_SMALL;
    }

    /**
     * A registration of which notes of birds seen at once speak. The product {@code ∏(1 + w)} is the sum over all sets of
     * registrations that the pair can have given, each the product of its weights; here sets that hold two birds seen at once are
     * left out, and those with two neighbours that were not noted so weigh more.
     */
    private void addsNoted(int i, int first, int lowest, int lanes) {
        int v = cells.visit[i];
        double[] sets = v < 0 ? found[0] : product[v];
        double[] with = withLast[i];
        System.arraycopy(sets, 0, with, 0, lanes);
        for (int other : cells.atOnce.notedBelow(i)) {
            double[] both = withLast[other];
            for (int lane = 0; lane < lanes && other >= first; lane++) {
                with[lane] -= both[lane];
            }
        }
        for (int other : cells.atOnce.unnotedBelow(i)) {
            double[] both = withLast[other];
            for (int lane = 0; lane < lanes && other >= first; lane++) {
                with[lane] += of.unnoted[lane] * both[lane];
            }
        }
        weigh(i, lowest, lanes);
        for (int lane = 0; lane < lanes; lane++) {
            double others = with[lane] > 1 ? with[lane] : 1;
            with[lane] = weight[lane] * others;
            sets[lane] += with[lane];
        }
    }

    /** How much better the pair explains a registration than a stray. */
    private void weigh(int i, int lowest, int lanes) {
        int v = cells.visit[i];
        double[] nearOf = of.near[i];
        int shift = (lowest - of.nearFrom[i]) * natures;
        for (int lane = 0; lane < lanes; lane++) {
            weight[lane] = even[lane] + nearOf[lane + shift] * scale[lane];
        }
        if (v < 0) {
            for (int lane = 0; lane < lanes; lane++) {
                weight[lane] *= of.chanceRatio[lane];
            }
        } else if (!full[v]) {
            double[] seen = share[v];
            for (int lane = 0; lane < lanes; lane++) {
                weight[lane] /= seen[lane];
            }
        }
    }

    /** The same for one lane. */
    private double weight(int i, int lowest, int lane) {
        double density = even[lane] + of.near[i][lane + (lowest - of.nearFrom[i]) * natures] * scale[lane];
        return cells.visit[i] < 0 ? of.chanceRatio[lane] * density : density / seen(cells.visit[i], lane);
    }

    /** The same in logarithms, for one focal place: to the logarithm of the sum over sets below, that of the sum with this one. */
    private double addsNotedInLogarithms(
            int i, int first, double logSets, double weight, double logUnnoted, double[] logWithLast) {
        double others = logSets;
        for (int other : cells.atOnce.notedBelow(i)) {
            if (other >= first) {
                others = Math.max(0, others + Math.log1p(-Math.min(1, Math.exp(logWithLast[other] - others))));
            }
        }
        for (int other : cells.atOnce.unnotedBelow(i)) {
            others = other >= first ? LogSum.of(others, logUnnoted + logWithLast[other]) : others;
        }
        logWithLast[i] = Math.log(weight) + others;
        return LogSum.of(logSets, logWithLast[i]);
    }

    /** The sums of one nature, in logarithms. */
    private void addsInLogarithms(int n, int from, int to, int lowest, int foci) {
        double logUnnoted = Math.log(of.unnoted[n]);
        double[] all = new double[told + 1];
        Arrays.fill(all, Double.NEGATIVE_INFINITY);
        double[] logMet = new double[metBy.length];
        double[] logWithLast = new double[cells.position.length];
        for (int lane = n; lane < foci * natures; lane += natures) {
            Arrays.fill(logMet, 0);
            double[] log = new double[told + 1];
            Arrays.fill(log, Double.NEGATIVE_INFINITY);
            log[0] = 0;
            for (int i = cells.below[from]; i < cells.below[to]; i++) {
                int v = cells.visit[i];
                double weight = weight(i, lowest, lane);
                double before = v < 0 ? log[0] : logMet[v];
                double sets = cells.atOnce.concerns(i)
                        ? addsNotedInLogarithms(i, cells.below[from], before, weight, logUnnoted, logWithLast)
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
                double one = LogSum.of(Math.log1p(-seen(v, lane)), Math.log(seen(v, lane) * of.perFound[lane]) + met);
                for (int i = t; i >= 0; i--) {
                    log[i + 1] = LogSum.of(log[i + 1], one + log[i]);
                }
            }
            for (int i = 0; i <= told; i++) {
                all[i] = LogSum.of(all[i], log[i]);
            }
        }
        logScale[n] = Arrays.stream(all).max().orElseThrow();
        for (int i = 0; i <= told; i++) {
            sum[i * natures + n] = Math.exp(all[i] - logScale[n]) / foci;
        }
    }

    private double seen(int v, int lane) {
        return full[v] ? 1 : share[v][lane];
    }

    /** Whether anything but the finding of pairs matters to the stretch that was looked at last. */
    boolean tellsOfMeetings() {
        return told > 0 || anyMet;
    }
}
