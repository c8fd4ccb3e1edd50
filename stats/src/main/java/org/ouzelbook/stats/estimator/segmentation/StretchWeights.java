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

    /** A bound on products below this is surely below {@link #LARGE}, however it was rounded. */
    private static final double SURELY_SMALL = 0.9 * LARGE;

    /** Sums beyond these are done again in logarithms. */
    private static final double TOO_LARGE = 1e250;

    private static final double TOO_SMALL = 1e-250;

    /** So many sums are made side by side. */
    private static final int SIDE_BY_SIDE = 6;

    private final Cells cells;
    private final List<FindingLaw> laws;

    /** How many natures there are. */
    private final int natures;

    private final NatureLanes of;
    private final StretchLanes stretch;
    private final NotedSets noted;
    private final StretchLogarithms logarithms;

    // Room to work in, for one stretch at a time; by lanes.
    private final double[][] product;
    private final double[][] found;

    /** What no product of a visit exceeds in any lane. */
    private final double[] bound;

    private final double[] missed;

    // What was found of the stretch that was looked at last; the sums of each nature side by side.
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
        stretch = new StretchLanes(cells, several);
        noted = new NotedSets(stretch);
        logarithms = new StretchLogarithms(stretch);
        of = stretch.of;
        product = new double[visits][of.lanes];
        found = new double[visits + 1][of.lanes + SIDE_BY_SIDE - 1];
        bound = new double[visits];
        missed = new double[natures];
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
        if (!stretch.goTo(from, to)) {
            return false;
        }
        Arrays.fill(logScale, 0);
        if (!stretch.tells()) {
            Arrays.fill(sum, 0, natures, 1);
            return true;
        }
        meet();
        find();
        average();
        for (int n = 0; n < natures; n++) {
            if (!isNumber(n)) {
                takeLogarithms(n);
            }
        }
        return true;
    }

    /** Whether anything but the finding of pairs matters to the stretch that was looked at last. */
    boolean tellsOfMeetings() {
        return stretch.tells();
    }

    /** The logarithm of the ratio for the stretch that was looked at last, by one of the natures. */
    double log(int nature) {
        return log(nature, laws.get(nature));
    }

    /** The same, if pairs are found by this law. */
    double log(int nature, FindingLaw by) {
        double[] probability = by.ofVisits(stretch.there);
        double total = 0;
        for (int i = 0; i <= stretch.told; i++) {
            total += probability[i] * sum[i * natures + nature];
        }
        if (total > 0) {
            return Math.log(total) + logScale[nature];
        }
        double log = Double.NEGATIVE_INFINITY;
        for (int i = 0; i <= stretch.told; i++) {
            log = LogSum.of(log, by.logOfVisits(stretch.there)[i] + Math.log(sum[i * natures + nature]));
        }
        return log + logScale[nature];
    }

    /** The products over what each visit met. */
    private void meet() {
        int lanes = stretch.size;
        double[] casual = found[0];
        double boundOfCasual = 1;
        Arrays.fill(casual, 0, lanes, 1);
        for (int t = 0; t < stretch.told; t++) {
            int v = stretch.telling[t];
            Arrays.fill(product[v], 0, lanes, 1);
            bound[v] = 1;
        }
        for (int i = stretch.first; i < stretch.last; i++) {
            int v = cells.visit[i];
            double most = stretch.largestWeight(i);
            if (cells.atOnce.concerns(i)) {
                noted.add(i, v < 0 ? casual : product[v]);
                most *= 1 + of.mostUnnoted;
            } else {
                meets(i, lanes);
            }
            if (v < 0) {
                boundOfCasual *= 1 + most;
            } else {
                bound[v] *= 1 + most;
            }
        }
        if (!(boundOfCasual < SURELY_SMALL)) {
            scale(casual, lanes);
        }
    }

    /** The sums over the sets of visits that found the pair. */
    private void find() {
        int lanes = stretch.size;
        for (int t = 0; t < stretch.told; t++) {
            int v = stretch.telling[t];
            double[] met = product[v];
            visits(v, met, lanes);
            boolean large = !(1 + bound[v] * of.mostPerFound < SURELY_SMALL) && scale(met, lanes);
            times(met, found[t], found[t + 1], lanes);
            for (int i = t; i >= 0; i--) {
                if (large) {
                    misses(found[i], lanes);
                }
                if (i > 0) {
                    timesMore(met, found[i - 1], found[i], lanes);
                }
            }
        }
    }

    private static void times(double[] met, double[] fewer, double[] more, int lanes) {
        for (int lane = 0; lane < lanes; lane++) {
            more[lane] = met[lane] * fewer[lane];
        }
    }

    private static void timesMore(double[] met, double[] fewer, double[] more, int lanes) {
        for (int lane = 0; lane < lanes; lane++) {
            more[lane] += met[lane] * fewer[lane];
        }
    }

    private void misses(double[] sums, int lanes) {
        for (int lane = 0; lane < lanes; lane++) {
            sums[lane] *= missed[lane % natures];
        }
    }

    /** A registration of which no note of birds seen at once speaks. */
    private void meets(int i, int lanes) {
        int v = cells.visit[i];
        if (v < 0) {
            times(found[0], of.chanceRatio, stretch.even, stretch.near(i), stretch.scale, lanes);
        } else if (stretch.full[v]) {
            timesAll(product[v], stretch.even, stretch.near(i), stretch.scale, lanes);
        } else {
            times(product[v], stretch.inverseShare[v], stretch.even, stretch.near(i), stretch.scale, lanes);
        }
    }

    private static void timesAll(double[] met, double[] even, double[] near, double[] scale, int lanes) {
        for (int lane = 0; lane < lanes; lane++) {
            met[lane] *= 1 + even[lane] + near[lane] * scale[lane];
        }
    }

    private static void times(double[] met, double[] ratio, double[] even, double[] near, double[] scale, int lanes) {
        for (int lane = 0; lane < lanes; lane++) {
            met[lane] *= 1 + (even[lane] + near[lane] * scale[lane]) * ratio[lane];
        }
    }

    /** How much better a pair explains a visit than strays alone, from the product over what the visit met; without the detection. */
    private void visits(int v, double[] met, int lanes) {
        if (stretch.full[v]) {
            for (int lane = 0; lane < lanes; lane++) {
                met[lane] = of.perFound[lane] * (met[lane] - 1);
            }
        } else {
            double[] seen = stretch.share[v];
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
    private void average() {
        int sums = stretch.told + 1;
        if (natures == 1) {
            for (int i = 0; i < sums; i += SIDE_BY_SIDE) {
                addRows(i, stretch.told);
            }
        } else {
            for (int i = 0; i < sums; i++) {
                for (int n = 0; n < natures; n += SIDE_BY_SIDE) {
                    addLanes(i, n);
                }
            }
        }
        for (int i = 0; i < sums * natures; i++) {
            sum[i] /= stretch.foci;
        }
    }

    /** Adds up a few rows of one nature, none above the last; side by side, as each sum waits for itself. */
    private void addRows(int row, int last) {
        double[] a = found[row];
        double[] b = found[Math.min(row + 1, last)];
        double[] c = found[Math.min(row + 2, last)];
        double[] d = found[Math.min(row + 3, last)];
        double[] e = found[Math.min(row + 4, last)];
        double[] f = found[Math.min(row + 5, last)];
        double ofA = 0;
        double ofB = 0;
        double ofC = 0;
        double ofD = 0;
        double ofE = 0;
        double ofF = 0;
        for (int lane = 0; lane < stretch.size; lane++) {
            ofA += a[lane];
            ofB += b[lane];
            ofC += c[lane];
            ofD += d[lane];
            ofE += e[lane];
            ofF += f[lane];
        }
        keep(row, last, ofA, ofB, ofC, ofD, ofE, ofF);
    }

    /** Adds up a few natures of one row. */
    private void addLanes(int row, int nature) {
        double[] values = found[row];
        double ofA = 0;
        double ofB = 0;
        double ofC = 0;
        double ofD = 0;
        double ofE = 0;
        double ofF = 0;
        for (int lane = nature; lane < stretch.size; lane += natures) {
            ofA += values[lane];
            ofB += values[lane + 1];
            ofC += values[lane + 2];
            ofD += values[lane + 3];
            ofE += values[lane + 4];
            ofF += values[lane + 5];
        }
        keep(row * natures + nature, (row + 1) * natures - 1, ofA, ofB, ofC, ofD, ofE, ofF);
    }

    private void keep(int first, int last, double... values) {
        System.arraycopy(values, 0, sum, first, Math.min(values.length, last - first + 1));
    }

    /** Whether the sums of a nature are neither too large nor too small for numbers. */
    private boolean isNumber(int n) {
        double largest = 0;
        for (int i = 0; i <= stretch.told; i++) {
            largest = Math.max(largest, sum[i * natures + n]);
        }
        return largest < TOO_LARGE && largest > TOO_SMALL;
    }

    private void takeLogarithms(int n) {
        double[] logs = logarithms.sums(n);
        logScale[n] = Arrays.stream(logs).max().orElseThrow();
        for (int i = 0; i < logs.length; i++) {
            sum[i * natures + n] = Math.exp(logs[i] - logScale[n]) / stretch.foci;
        }
    }
}
