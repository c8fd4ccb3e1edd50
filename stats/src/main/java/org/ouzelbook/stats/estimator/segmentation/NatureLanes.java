package org.ouzelbook.stats.estimator.segmentation;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.special.Erf;

/**
 * What the weights of stretches take from several natures, in lanes: the natures of the first focal place side by side, then those of the
 * next, and so on.
 */
final class NatureLanes {
    /** Distance of the focal places that are tried, in metres. */
    private static final double FOCAL_STEP = 100;

    /**
     * Birds met by chance: how often one of a territory is met, for one without a territory on each metre. Common practice, no
     * source.
     */
    private static final double BY_CHANCE = 10_000;

    private static final double SQRT_2 = Math.sqrt(2);

    /** Distance of the focal places, in cells. */
    final int step;

    /** The most lanes that a stretch can have. */
    final int lanes;

    final double[] evenUse;
    final double[] nearUse;
    final double[] evenStrays;
    final double[] perFound;
    final double[] chanceRatio;

    /** How much more a set with two neighbours weighs that were not noted as seen at once. */
    final double[] unnoted;

    /** For each registration, from {@link #nearFrom} on: what the focal place adds to its density, for a stretch without ends. */
    final double[][] near;

    /** For each registration, the first focal place that can matter. */
    final int[] nearFrom;

    private final Cells cells;
    private final List<Nature> natures;

    /**
     * The normal law below a border, by how far the focal place lies above it: for each remainder of that distance by the step, so that
     * neighbouring focal places stand side by side.
     */
    private final double[][] below;

    NatureLanes(Cells cells, List<Nature> natures) {
        this.cells = cells;
        this.natures = natures;
        step = (int) Math.max(1, Math.min(cells.shortest, Math.round(FOCAL_STEP / cells.width)));
        lanes = (cells.longest / step + 2) * natures.size();
        evenUse = each(Nature::evenUse);
        nearUse = each(nature -> 1 - nature.evenUse());
        evenStrays = each(nature -> strayRatio(nature) * nature.evenUse());
        perFound = each(nature -> 1 / Math.expm1(nature.repeats()));
        chanceRatio = each(nature -> BY_CHANCE / strayRatio(nature));
        unnoted = each(nature -> nature.noting() / (1 - nature.noting()));
        below = below();
        near = new double[cells.position.length][];
        nearFrom = new int[near.length];
        for (int i = 0; i < near.length; i++) {
            int at = (int) (cells.position[i] / cells.width);
            nearFrom[i] = Math.max(0, (at - cells.longest) / step - 1);
            near[i] = near(cells.position[i], nearFrom[i], (at + cells.longest) / step + 2);
        }
    }

    private static double strayRatio(Nature nature) {
        return nature.repeats() / (nature.strays() / 1000);
    }

    private double[] each(ToDoubleFunction<Nature> number) {
        double[] all = new double[lanes];
        for (int lane = 0; lane < lanes; lane++) {
            all[lane] = number.applyAsDouble(natures.get(lane % natures.size()));
        }
        return all;
    }

    private double[][] below() {
        int farthest = cells.longest + step;
        double[][] law = new double[step][(2 * farthest / step + 1) * natures.size()];
        for (int distance = 0; distance <= 2 * farthest; distance++) {
            double metres = (farthest - distance - step / 2.0) * cells.width;
            for (int n = 0; n < natures.size(); n++) {
                law[distance % step][distance / step * natures.size() + n] =
                        0.5 * Erf.erfc(-metres / (natures.get(n).focalSpread() * SQRT_2));
            }
        }
        return law;
    }

    private double[] near(double position, int from, int to) {
        double[] densities = new double[(to - from) * natures.size()];
        for (int lane = 0; lane < densities.length; lane++) {
            Nature nature = natures.get(lane % natures.size());
            double spread = nature.focalSpread();
            int focus = from + lane / natures.size();
            double z = (position - (focus + 0.5) * step * cells.width) / spread;
            densities[lane] = strayRatio(nature)
                    * (1 - nature.evenUse())
                    * Math.exp(-z * z / 2)
                    / (spread * SQRT_2 * Math.sqrt(Math.PI));
        }
        return densities;
    }

    /**
     * Adds what of the normal law lies between two borders.
     *
     * @param from the lower border
     * @param to the upper border
     * @param lowest the focal place of the first lanes
     * @param size how many lanes
     * @param sums where to
     */
    void addBetween(int from, int to, int lowest, int size, double[] sums) {
        int lower = cells.longest + step + lowest * step - from;
        int upper = cells.longest + step + lowest * step - to;
        double[] belowLower = below[lower % step];
        double[] belowUpper = below[upper % step];
        int lowerAt = lower / step * natures.size();
        int upperAt = upper / step * natures.size();
        for (int lane = 0; lane < size; lane++) {
            sums[lane] += belowUpper[upperAt + lane] - belowLower[lowerAt + lane];
        }
    }
}
