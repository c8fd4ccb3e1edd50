package org.ouzelbook.stats.simulate;

import java.util.List;
import java.util.SplittableRandom;
import java.util.UUID;

/**
 * Random draws that are the same for the same seed, on every machine and every Java.
 *
 * <p>Only the raw bits come from {@link SplittableRandom}; the laws are worked out here with {@link StrictMath}, because the
 * library's own may change with its version. A branch is a stream of its own, named by what it is for: more draws in one
 * branch do not move another.
 */
public final class Draws {
    private final long seed;
    private final SplittableRandom bits;

    private Draws(long seed) {
        this.seed = seed;
        this.bits = new SplittableRandom(seed);
    }

    /**
     * {@return draws from this seed}
     *
     * @param seed any number
     */
    public static Draws of(long seed) {
        return new Draws(seed);
    }

    /**
     * {@return an independent stream for one purpose; the same names give the same stream}
     *
     * @param names what it is for; read through their {@code toString}
     */
    public Draws branch(Object... names) {
        long mixed = seed;
        for (Object name : names) {
            mixed = (mixed ^ name.toString().hashCode()) * 0x9E3779B97F4A7C15L;
            mixed ^= mixed >>> 32;
        }
        return new Draws(mixed);
    }

    /** {@return a number from 0, included, to 1, excluded} */
    public double uniform() {
        return (bits.nextLong() >>> 11) * 0x1p-53;
    }

    /**
     * {@return a number between two limits}
     *
     * @param low lower limit
     * @param high upper limit
     */
    public double between(double low, double high) {
        return low + (high - low) * uniform();
    }

    /**
     * {@return whether something happens}
     *
     * @param probability its probability
     */
    public boolean happens(double probability) {
        return uniform() < probability;
    }

    /**
     * {@return a whole number from 0 up to, but not including, the limit}
     *
     * @param limit 1 or more
     */
    public int below(int limit) {
        return (int) (uniform() * limit);
    }

    /**
     * {@return one of these, each as likely}
     *
     * @param choices at least one
     * @param <T> what they are
     */
    public <T> T oneOf(List<T> choices) {
        return choices.get(below(choices.size()));
    }

    /**
     * {@return a normal deviate, by the method of Box and Muller (1958), Ann. Math. Stat. 29:610–611}
     *
     * @param mean its mean
     * @param sd its standard deviation; not negative
     */
    public double normal(double mean, double sd) {
        double radius = StrictMath.sqrt(-2 * StrictMath.log(1 - uniform()));
        return mean + sd * radius * StrictMath.cos(2 * StrictMath.PI * uniform());
    }

    /**
     * {@return a log-normal deviate}
     *
     * @param median its median; positive
     * @param logSd standard deviation of its logarithm
     */
    public double logNormal(double median, double logSd) {
        return median * StrictMath.exp(normal(0, logSd));
    }

    /**
     * {@return an exponential deviate}
     *
     * @param mean its mean; positive
     */
    public double exponential(double mean) {
        return -mean * StrictMath.log(1 - uniform());
    }

    /**
     * {@return a gamma deviate with scale 1, by the method of Marsaglia and Tsang (2000), ACM Trans. Math. Softw. 26:363–372}
     *
     * @param shape its shape, which is also its mean; positive
     */
    public double gamma(double shape) {
        if (shape < 1) {
            return gamma(shape + 1) * StrictMath.pow(1 - uniform(), 1 / shape);
        }
        double d = shape - 1.0 / 3;
        double c = 1 / StrictMath.sqrt(9 * d);
        while (true) {
            double x = normal(0, 1);
            double v = StrictMath.pow(1 + c * x, 3);
            if (v > 0 && StrictMath.log(1 - uniform()) < 0.5 * x * x + d - d * v + d * StrictMath.log(v)) {
                return d * v;
            }
        }
    }

    /**
     * {@return a beta deviate}
     *
     * @param mean its mean; above 0 and below 1
     * @param concentration the sum of its two parameters; positive
     */
    public double beta(double mean, double concentration) {
        double one = gamma(mean * concentration);
        return one / (one + gamma((1 - mean) * concentration));
    }

    /**
     * {@return a Poisson deviate, counted as the arrivals of one unit of time}
     *
     * @param mean its mean; not negative, and moderate: the work grows with it
     */
    public int poisson(double mean) {
        int arrivals = -1;
        for (double time = 0; time <= mean; time += exponential(1)) {
            arrivals++;
        }
        return Math.max(arrivals, 0);
    }

    /** {@return a key} */
    public UUID key() {
        return new UUID(
                (bits.nextLong() & ~0xF000L) | 0x4000L, (bits.nextLong() & 0x3FFFFFFFFFFFFFFFL) | 0x8000000000000000L);
    }

    /**
     * {@return the probability with these log-odds}
     *
     * @param logOdds any finite number
     */
    public static double probability(double logOdds) {
        return 1 / (1 + StrictMath.exp(-logOdds));
    }

    /**
     * {@return the log-odds of a probability}
     *
     * @param probability above 0 and below 1
     */
    public static double logOdds(double probability) {
        return StrictMath.log(probability / (1 - probability));
    }
}
