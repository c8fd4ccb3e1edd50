package org.ouzelbook.stats.estimator.segmentation;

import java.util.Arrays;
import java.util.function.DoublePredicate;

/** The probabilities of 0, 1, 2 … territories whose middles lie in some water, those included that no visit found. */
final class CountLaw {
    /** Numbers less probable than this, on the way, are left out. */
    private static final double NEGLIGIBLE = 1e-14;

    private final Recursion recursion;
    private final DoublePredicate counted;
    private final int most;

    private CountLaw(Recursion recursion, DoublePredicate counted) {
        this.recursion = recursion;
        this.counted = counted;
        this.most = recursion.cells.count / recursion.cells.shortest;
    }

    /**
     * The law of one line under one nature.
     *
     * @param recursion the line
     * @param counted whether a territory with its middle at a place counts
     */
    static double[] of(Recursion recursion, DoublePredicate counted) {
        return new CountLaw(recursion, counted).law();
    }

    /** A walk up the line that keeps, for each border, the probabilities of each number below it. */
    private double[] law() {
        Cells cells = recursion.cells;
        double[][] begin = new double[cells.count + 1][];
        int[] top = new int[cells.count + 1];
        double[] territory = new double[most + 1];
        double[] vacant = new double[most + 1];
        territory[0] = 1;
        for (int c = 0; c <= cells.count; c++) {
            if (c > 0) {
                double afterTerritory = recursion.pVacantAfterTerritory(c - 1);
                double afterVacant = recursion.pVacantAfterVacant(c - 1);
                for (int k = 0; k <= most; k++) {
                    vacant[k] = territory[k] * afterTerritory + vacant[k] * afterVacant;
                }
                territory = ending(c, begin, top);
            }
            begin[c] = new double[most + 1];
            if (c < cells.count) {
                double afterTerritory = 1 - recursion.pVacantAfterTerritory(c);
                double afterVacant = 1 - recursion.pVacantAfterVacant(c);
                for (int k = 0; k <= most; k++) {
                    begin[c][k] = territory[k] * afterTerritory + vacant[k] * afterVacant;
                    top[c] = begin[c][k] > NEGLIGIBLE ? k : top[c];
                }
            }
        }
        for (int k = 0; k <= most; k++) {
            territory[k] += vacant[k];
        }
        return Arrays.copyOf(territory, territory.length);
    }

    /** The probabilities of each number, with a territory that ends at a border. */
    private double[] ending(int border, double[][] begin, int[] top) {
        Cells cells = recursion.cells;
        double[] ending = new double[most + 1];
        for (int n = cells.shortest; n <= Math.min(border, cells.longest); n++) {
            int from = border - n;
            double given = Math.exp(recursion.logProbability(from, n) - recursion.logBeginProbability(from));
            if (given > NEGLIGIBLE) {
                int one = counted.test(cells.place(from) + n * cells.width / 2) ? 1 : 0;
                for (int k = 0; k <= Math.min(top[from], most - one); k++) {
                    ending[k + one] += begin[from][k] * given;
                }
            }
        }
        return ending;
    }
}
