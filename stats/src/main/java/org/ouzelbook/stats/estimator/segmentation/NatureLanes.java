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

    /** How many natures there are. */
    final int natures;

    /** The most lanes that a stretch can have. */
    final int lanes;

    final double[] evenUse;
    final double[] nearUse;
    final double[] evenStrays;
    final double[] perFound;
    final double[] chanceRatio;

    /** How much more a set with two neighbours weighs that were not noted as seen at once. */
    final double[] unnoted;

    /** The largest of each, over all natures. */
    final double mostEven;

    final double mostPerFound;
    final double mostChanceRatio;
    final double mostUnnoted;

    /** The smallest, over all natures. */
    final double leastEvenUse;

    /** For each registration, from {@link #nearFrom} on: what the focal place adds to its density, for a stretch without ends. */
    final double[][] near;

    /** For each registration, the first focal place that can matter. */
    final int[] nearFrom;

    /** The largest of each. */
    final double[] mostNear;

    private final Cells cells;
    private final List<Nature> several;

    /** By length: what each lane takes for a stretch of so many cells; made when it is asked for. */
    private final double[][] even;

    /** By the remainder of the lower border by the step, then by length. */
    private final double[][][] scale;

    private final double[][] mostScale;

    /**
     * The normal law below a border, by how far the focal place lies above it: for each remainder of that distance by the step, so that
     * neighbouring focal places stand side by side.
     */
    private final double[][] below;

    NatureLanes(Cells cells, List<Nature> several) {
        this.cells = cells;
        this.several = several;
        natures = several.size();
        step = (int) Math.max(1, Math.min(cells.shortest, Math.round(FOCAL_STEP / cells.width)));
        lanes = (cells.longest / step + 2) * natures;
        evenUse = each(Nature::evenUse);
        nearUse = each(nature -> 1 - nature.evenUse());
        evenStrays = each(nature -> strayRatio(nature) * nature.evenUse());
        perFound = each(nature -> 1 / Math.expm1(nature.repeats()));
        chanceRatio = each(nature -> BY_CHANCE / strayRatio(nature));
        unnoted = each(nature -> nature.noting() / (1 - nature.noting()));
        mostEven = most(evenStrays);
        mostPerFound = most(perFound);
        mostChanceRatio = most(chanceRatio);
        mostUnnoted = most(unnoted);
        leastEvenUse = several.stream().mapToDouble(Nature::evenUse).min().orElse(0);
        below = below();
        even = new double[cells.longest + 1][];
        scale = new double[step][cells.longest + 1][];
        mostScale = new double[step][cells.longest + 1];
        near = new double[cells.position.length][];
        nearFrom = new int[near.length];
        mostNear = new double[near.length];
        for (int i = 0; i < near.length; i++) {
            int at = (int) (cells.position[i] / cells.width);
            nearFrom[i] = Math.max(0, (at - cells.longest) / step - 1);
            near[i] = near(cells.position[i], nearFrom[i], (at + cells.longest) / step + 2);
            mostNear[i] = most(near[i]);
        }
    }

    private static double strayRatio(Nature nature) {
        return nature.repeats() / (nature.strays() / 1000);
    }

    private static double most(double[] numbers) {
        double most = 0;
        for (double number : numbers) {
            most = Math.max(most, number);
        }
        return most;
    }

    private double[] each(ToDoubleFunction<Nature> number) {
        double[] all = new double[lanes];
        for (int lane = 0; lane < lanes; lane++) {
            all[lane] = number.applyAsDouble(several.get(lane % natures));
        }
        return all;
    }

    private double[][] below() {
        int farthest = cells.longest + step;
        double[][] law = new double[step][(2 * farthest / step + 1) * natures];
        for (int n = 0; n < natures; n++) {
            double spread = several.get(n).focalSpread();
            int same = firstOfSpread(spread);
            for (int distance = 0; distance <= 2 * farthest; distance++) {
                double metres = (farthest - distance - step / 2.0) * cells.width;
                double[] here = law[distance % step];
                int lane = distance / step * natures;
                here[lane + n] = same < n ? here[lane + same] : 0.5 * Erf.erfc(-metres / (spread * SQRT_2));
            }
        }
        return law;
    }

    /** The first nature whose birds spread so: what hangs on that alone is worked out once. */
    private int firstOfSpread(double spread) {
        int first = 0;
        while (several.get(first).focalSpread() != spread) {
            first++;
        }
        return first;
    }

    private double[] near(double position, int from, int to) {
        double[] densities = new double[(to - from) * natures];
        double[] falls = new double[densities.length];
        for (int n = 0; n < natures; n++) {
            Nature nature = several.get(n);
            double spread = nature.focalSpread();
            int same = firstOfSpread(spread);
            for (int focus = from; focus < to; focus++) {
                int lane = (focus - from) * natures;
                double z = (position - (focus + 0.5) * step * cells.width) / spread;
                falls[lane + n] = same < n ? falls[lane + same] : Math.exp(-z * z / 2);
                densities[lane + n] = strayRatio(nature)
                        * (1 - nature.evenUse())
                        * falls[lane + n]
                        / (spread * SQRT_2 * Math.sqrt(Math.PI));
            }
        }
        return densities;
    }

    /** The focal place of the first lanes of a stretch that begins at a border. */
    int lowest(int from) {
        return Math.floorDiv(2 * from + step - 1, 2 * step);
    }

    /** How many focal places a stretch has. */
    int foci(int from, int to) {
        return lowest(to) - lowest(from);
    }

    /** The density of registrations that lie anywhere in a stretch of so many cells, over that of strays. */
    double[] even(int cellsLong) {
        if (even[cellsLong] == null) {
            double metres = cellsLong * cells.width;
            double[] made = new double[lanes];
            for (int lane = 0; lane < lanes; lane++) {
                made[lane] = evenStrays[lane] / metres;
            }
            even[cellsLong] = made;
        }
        return even[cellsLong];
    }

    /** One over what of the normal law lies in a stretch. */
    double[] scale(int from, int to) {
        double[][] byLength = scale[from % step];
        if (byLength[to - from] == null) {
            double[] made = new double[foci(from, to) * natures];
            addBetween(from, to, lowest(from), made.length, made);
            for (int lane = 0; lane < made.length; lane++) {
                made[lane] = 1 / made[lane];
            }
            byLength[to - from] = made;
            mostScale[from % step][to - from] = most(made);
        }
        return byLength[to - from];
    }

    /** The largest of {@link #scale(int, int)}, once that was asked for. */
    double mostScale(int from, int to) {
        return mostScale[from % step][to - from];
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
        int lowerAt = lower / step * natures;
        int upperAt = upper / step * natures;
        for (int lane = 0; lane < size; lane++) {
            sums[lane] += belowUpper[upperAt + lane] - belowLower[lowerAt + lane];
        }
    }
}
