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
 * <pre>{@code 1 − p q + p q / (e^r − 1) · (∏(1 + r f / (s q)) − 1)}</pre>
 *
 * <p>which is multiplied over the visits, then averaged over {@code p} by Gauss–Jacobi nodes (exact for up to nine visits) and
 * over focal places a fixed distance apart. A bird met by chance, on no visit, multiplies it by {@code 1 + c f}: with no effort
 * behind it, it says where birds are, but nothing of how often they are found.
 */
final class StretchWeights {
    /** Distance of the focal places that are tried, in metres. */
    private static final double FOCAL_STEP = 100;

    /**
     * Birds met by chance: how often one of a territory is met, for one without a territory on each metre. Common practice, no
     * source.
     */
    private static final double BY_CHANCE = 10_000;

    private static final double SQRT_2 = Math.sqrt(2);

    private final Cells cells;
    private final double evenUse;
    private final double perFound;
    private final double strayRatio;
    private final double chanceRatio;
    private final double[] node;
    private final double[] nodeWeight;
    private final double[][] missed;
    private final double[] nothingMet;
    private final int step;
    private final double[][] near;
    private final int[] nearFrom;
    private final double[] below;
    private final double spread;

    // Room to work in, for one stretch at a time; the last index runs over focal places, so that the inner loops are
    // plain.
    private final int[] full;
    private final int[] partial;
    private final int[] metBy;
    private final double[] scale;
    private final double[][] share;
    private final double[][] product;
    private final double[] casual;
    private final double[] all;
    private final double[] sum;

    StretchWeights(Cells cells, Nature nature) {
        this.cells = cells;
        evenUse = nature.evenUse();
        spread = nature.focalSpread();
        perFound = 1 / Math.expm1(nature.repeats());
        strayRatio = nature.repeats() / (nature.strays() / 1000);
        chanceRatio = BY_CHANCE / strayRatio;
        BetaNodes nodes = BetaNodes.of(nature.detection(), nature.concentration());
        node = nodes.value;
        nodeWeight = nodes.weight;
        int visits = cells.covered.length;
        missed = new double[node.length][visits + 1];
        nothingMet = new double[visits + 1];
        for (int k = 0; k < node.length; k++) {
            missed[k][0] = 1;
            for (int v = 1; v <= visits; v++) {
                missed[k][v] = missed[k][v - 1] * (1 - node[k]);
            }
        }
        for (int v = 0; v <= visits; v++) {
            double sum = 0;
            for (int k = 0; k < node.length; k++) {
                sum += nodeWeight[k] * missed[k][v];
            }
            nothingMet[v] = Math.log(sum);
        }
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
        int foci = cells.longest / step + 2;
        full = new int[visits];
        partial = new int[visits];
        metBy = new int[visits];
        scale = new double[foci];
        share = new double[visits][foci];
        product = new double[visits][foci];
        casual = new double[foci];
        all = new double[foci];
        sum = new double[foci];
    }

    /** The logarithm of the ratio for a territory from one border to another; minus infinity where none can be. */
    double log(int from, int to) {
        if (cells.barred[to] > cells.barred[from]) {
            return Double.NEGATIVE_INFINITY;
        }
        int first = cells.below[from];
        int last = cells.below[to];
        Arrays.fill(metBy, 0);
        for (int i = first; i < last; i++) {
            if (cells.visit[i] >= 0) {
                metBy[cells.visit[i]]++;
            }
        }
        int nothing = 0;
        int fulls = 0;
        int partials = 0;
        for (int v = 0; v < metBy.length; v++) {
            int seen = cells.covered[v][to] - cells.covered[v][from];
            if (seen == to - from) {
                if (metBy[v] == 0) {
                    nothing++;
                } else {
                    full[fulls++] = v;
                }
            } else if (seen > 0) {
                partial[partials++] = v;
            }
        }
        if (first == last && partials == 0) {
            return nothingMet[nothing];
        }
        int lowest = Math.floorDiv(2 * from + step - 1, 2 * step);
        int foci = Math.floorDiv(2 * to + step - 1, 2 * step) - lowest;
        prepare(from, to, lowest, foci, fulls, partials);
        double ratio = ratio(from, to, lowest, foci, nothing, fulls, partials);
        return ratio > 0 && ratio < Double.MAX_VALUE
                ? Math.log(ratio / foci)
                : logRatio(from, to, lowest, foci, nothing, fulls, partials) - Math.log(foci);
    }

    /** For each focal place: what of the normal law lies in the stretch, and the share of the use that each visit covered. */
    private void prepare(int from, int to, int lowest, int foci, int fulls, int partials) {
        for (int j = 0; j < foci; j++) {
            int zero = cells.longest + step - (lowest + j) * step;
            scale[j] = 1 / (below[to + zero] - below[from + zero]);
        }
        for (int i = 0; i < fulls; i++) {
            Arrays.fill(share[full[i]], 0, foci, 1);
        }
        for (int i = 0; i < partials; i++) {
            int v = partial[i];
            for (int j = 0; j < foci; j++) {
                share[v][j] = shareSeen(v, from, to, lowest + j, scale[j]);
            }
        }
    }

    private double ratio(int from, int to, int lowest, int foci, int nothing, int fulls, int partials) {
        double even = strayRatio * evenUse / ((to - from) * cells.width);
        Arrays.fill(casual, 0, foci, 1);
        for (int i = 0; i < fulls; i++) {
            Arrays.fill(product[full[i]], 0, foci, 1);
        }
        for (int i = 0; i < partials; i++) {
            Arrays.fill(product[partial[i]], 0, foci, 1);
        }
        for (int i = cells.below[from]; i < cells.below[to]; i++) {
            int v = cells.visit[i];
            double[] nearOf = near[i];
            int shift = lowest - nearFrom[i];
            if (v < 0) {
                for (int j = 0; j < foci; j++) {
                    casual[j] *= 1 + chanceRatio * (even + nearOf[j + shift] * scale[j]);
                }
            } else {
                double[] met = product[v];
                double[] seen = share[v];
                for (int j = 0; j < foci; j++) {
                    met[j] *= 1 + (even + nearOf[j + shift] * scale[j]) / seen[j];
                }
            }
        }
        Arrays.fill(sum, 0, foci, 0);
        for (int k = 0; k < node.length; k++) {
            Arrays.fill(all, 0, foci, nodeWeight[k] * missed[k][nothing]);
            double p = node[k];
            double base = 1 - p - p * perFound;
            for (int i = 0; i < fulls; i++) {
                double[] met = product[full[i]];
                for (int j = 0; j < foci; j++) {
                    all[j] *= base + p * perFound * met[j];
                }
            }
            for (int i = 0; i < partials; i++) {
                double[] met = product[partial[i]];
                double[] seen = share[partial[i]];
                for (int j = 0; j < foci; j++) {
                    all[j] *= 1 - p * seen[j] * (1 + perFound - perFound * met[j]);
                }
            }
            for (int j = 0; j < foci; j++) {
                sum[j] += all[j];
            }
        }
        double total = 0;
        for (int j = 0; j < foci; j++) {
            total += casual[j] * sum[j];
        }
        return total;
    }

    /** The same where the ratio itself is too large or too small for a number. */
    private double logRatio(int from, int to, int lowest, int foci, int nothing, int fulls, int partials) {
        double even = strayRatio * evenUse / ((to - from) * cells.width);
        double total = Double.NEGATIVE_INFINITY;
        double[] met = new double[metBy.length];
        for (int j = 0; j < foci; j++) {
            Arrays.fill(met, 0);
            double logCasual = 0;
            for (int i = cells.below[from]; i < cells.below[to]; i++) {
                double density = even + near[i][lowest + j - nearFrom[i]] * scale[j];
                int v = cells.visit[i];
                if (v < 0) {
                    logCasual += Math.log1p(chanceRatio * density);
                } else {
                    met[v] += Math.log1p(density / share[v][j]);
                }
            }
            for (int k = 0; k < node.length; k++) {
                double log = logCasual + Math.log(nodeWeight[k]) + nothing * Math.log1p(-node[k]);
                for (int i = 0; i < fulls; i++) {
                    log += logVisit(node[k], met[full[i]]);
                }
                for (int i = 0; i < partials; i++) {
                    log += logVisit(node[k] * share[partial[i]][j], met[partial[i]]);
                }
                total = LogSum.of(total, log);
            }
        }
        return total;
    }

    /** How many visits covered a stretch from end to end and met nothing; −1 if anything was met, or covered in part. */
    int visitsThatMetNothing(int from, int to) {
        if (cells.below[from] < cells.below[to]) {
            return -1;
        }
        int full = 0;
        for (int[] covered : cells.covered) {
            int seen = covered[to] - covered[from];
            if (seen == to - from) {
                full++;
            } else if (seen > 0) {
                return -1;
            }
        }
        return full;
    }

    /** The logarithm of the probability that a pair is missed by so many visits. */
    double nothingMet(int visits) {
        return nothingMet[visits];
    }

    private double logVisit(double found, double logProduct) {
        double met = logProduct > 30 ? logProduct : Math.log(Math.expm1(logProduct));
        return LogSum.of(Math.log1p(-found), Math.log(found * perFound) + met);
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
