package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.random.RandomGenerator;

/** One map of a line, as its territories' borders going up: the most probable one, or one drawn with its probability. */
final class Walk {
    private Walk() {}

    static List<int[]> drawn(Recursion recursion, RandomGenerator random) {
        Cells cells = recursion.cells;
        List<int[]> territories = new ArrayList<>();
        boolean vacantBelow = false;
        int c = 0;
        while (c < cells.count) {
            double vacant = vacantBelow ? recursion.pVacantAfterVacant(c) : recursion.pVacantAfterTerritory(c);
            vacantBelow = random.nextDouble() < vacant;
            int to = vacantBelow ? c + 1 : end(recursion, c, random);
            if (!vacantBelow) {
                territories.add(new int[] {c, to});
            }
            c = to;
        }
        return territories;
    }

    private static int end(Recursion recursion, int from, RandomGenerator random) {
        double at = random.nextDouble();
        int last = from;
        for (int n = recursion.cells.shortest; n < recursion.ratio[from].length; n++) {
            double probability = Math.exp(recursion.logProbability(from, n) - recursion.logBeginProbability(from));
            at -= probability;
            last = probability > 0 ? from + n : last;
            if (at < 0) {
                break;
            }
        }
        return last;
    }

    /** The map of highest probability: the recursion of A. J. Viterbi (1967), with the best in place of the sum. */
    static List<int[]> best(Recursion recursion) {
        Cells cells = recursion.cells;
        double[] territory = new double[cells.count + 1];
        double[] vacant = new double[cells.count + 1];
        double[] begin = new double[cells.count + 1];
        int[] length = new int[cells.count + 1];
        Arrays.fill(territory, Double.NEGATIVE_INFINITY);
        Arrays.fill(vacant, Double.NEGATIVE_INFINITY);
        territory[0] = 0;
        for (int c = 0; c <= cells.count; c++) {
            if (c > 0) {
                vacant[c] = Math.max(
                        territory[c - 1] + recursion.logVacantAfterTerritory(c - 1),
                        vacant[c - 1] + recursion.logVacantAfterVacant(c - 1));
                for (int n = cells.shortest; n <= Math.min(c, cells.longest); n++) {
                    double value = begin[c - n] + recursion.lengths[n] + recursion.ratio[c - n][n];
                    if (value > territory[c]) {
                        territory[c] = value;
                        length[c] = n;
                    }
                }
            }
            begin[c] = Math.max(
                    territory[c] + recursion.logBeginAfterTerritory(c), vacant[c] + recursion.logBeginAfterVacant(c));
        }
        List<int[]> territories = new ArrayList<>();
        int c = cells.count;
        boolean inTerritory = territory[c] >= vacant[c];
        while (c > 0) {
            if (inTerritory) {
                territories.add(0, new int[] {c - length[c], c});
                c -= length[c];
                inTerritory = c > 0
                        && territory[c] + recursion.logBeginAfterTerritory(c)
                                >= vacant[c] + recursion.logBeginAfterVacant(c);
            } else {
                c--;
                inTerritory = territory[c] + recursion.logVacantAfterTerritory(c)
                        >= vacant[c] + recursion.logVacantAfterVacant(c);
            }
        }
        return territories;
    }
}
