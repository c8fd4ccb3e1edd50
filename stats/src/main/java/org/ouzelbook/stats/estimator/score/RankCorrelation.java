package org.ouzelbook.stats.estimator.score;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Reason;

/**
 * Spearman's rank correlation, equal values sharing their ranks, with the probability of one as far from 0 if the values were
 * paired by chance.
 *
 * <p>Up to 8 pairs every pairing is tried, and the probability is exact. With more pairs 9,999
 * pairings are drawn, always the same ones, and it is {@code (1 + as far) / (1 + drawn)}: B. Phipson and G. K. Smyth (2010),
 * Stat. Appl. Genet. Mol. Biol. 9:39. Pairs must be independent, which seasons of one water are not quite.
 *
 * <p>Source: C. Spearman (1904), Am. J. Psychol. 15:72–101; M. G. Kendall (1948), Rank Correlation Methods.
 *
 * @param coefficient the correlation, −1 to 1
 * @param p the two-sided probability
 * @param isExact whether every pairing was tried
 * @param pairs how many pairs
 */
public record RankCorrelation(double coefficient, double p, boolean isExact, int pairs) {
    private static final int FEWEST = 4;
    private static final int EXACT = 8;
    private static final int SHUFFLES = 9999;
    private static final long SEED = 1904;
    private static final double ROUNDING = 1e-9;

    /**
     * {@return the correlation of pairs of values}
     *
     * @param one the first value of each pair; finite
     * @param other the second
     * @throws IllegalArgumentException if there are not as many of either, or one is not finite
     */
    public static Answer<RankCorrelation> of(double[] one, double[] other) {
        if (one.length != other.length
                || !Arrays.stream(one).allMatch(Double::isFinite)
                || !Arrays.stream(other).allMatch(Double::isFinite)) {
            throw new IllegalArgumentException("A rank correlation needs finite values in pairs");
        }
        if (one.length < FEWEST) {
            return Answer.notEstimable(Reason.TOO_FEW_VALUES, one.length, FEWEST);
        }
        double[] x = centredRanks(one);
        double[] y = centredRanks(other);
        double scale = Math.sqrt(product(x, x) * product(y, y));
        if (!(scale > 0)) {
            return Answer.notEstimable(Reason.ALL_VALUES_EQUAL);
        }
        double observed = product(x, y);
        long[] asFar = one.length <= EXACT ? everyPairing(x, y, observed) : drawnPairings(x, y, observed);
        return Answer.of(new RankCorrelation(
                Math.max(-1, Math.min(1, observed / scale)),
                (double) asFar[0] / asFar[1],
                one.length <= EXACT,
                one.length));
    }

    private static double[] centredRanks(double[] values) {
        double middle = (values.length + 1) / 2.0;
        return Arrays.stream(values)
                .map(value -> {
                    long below =
                            Arrays.stream(values).filter(other -> other < value).count();
                    long equal = Arrays.stream(values)
                            .filter(other -> other == value)
                            .count();
                    return below + (equal + 1) / 2.0 - middle;
                })
                .toArray();
    }

    private static double product(double[] x, double[] y) {
        return IntStream.range(0, x.length).mapToDouble(i -> x[i] * y[i]).sum();
    }

    private static boolean asFar(double product, double observed) {
        return Math.abs(product) >= Math.abs(observed) - ROUNDING;
    }

    /** How many pairings are as far from 0, and how many there are: Heap's way through all orders. */
    private static long[] everyPairing(double[] x, double[] y, double observed) {
        double[] order = y.clone();
        int[] counter = new int[order.length];
        long far = asFar(product(x, order), observed) ? 1 : 0;
        long all = 1;
        int i = 1;
        while (i < order.length) {
            if (counter[i] < i) {
                swap(order, i % 2 == 0 ? 0 : counter[i], i);
                far += asFar(product(x, order), observed) ? 1 : 0;
                all++;
                counter[i]++;
                i = 1;
            } else {
                counter[i] = 0;
                i++;
            }
        }
        return new long[] {far, all};
    }

    private static long[] drawnPairings(double[] x, double[] y, double observed) {
        Random random = new Random(SEED);
        double[] order = y.clone();
        long far = 1;
        for (int draw = 0; draw < SHUFFLES; draw++) {
            for (int i = order.length - 1; i > 0; i--) {
                swap(order, i, random.nextInt(i + 1));
            }
            far += asFar(product(x, order), observed) ? 1 : 0;
        }
        return new long[] {far, 1L + SHUFFLES};
    }

    private static void swap(double[] values, int one, int other) {
        double kept = values[one];
        values[one] = values[other];
        values[other] = kept;
    }
}
