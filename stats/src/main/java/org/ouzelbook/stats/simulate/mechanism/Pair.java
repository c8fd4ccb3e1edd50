package org.ouzelbook.stats.simulate.mechanism;

import java.util.List;
import org.ouzelbook.stats.simulate.Draws;

/** A pair: the water it holds, and where one visit past it would meet it. */
interface Pair {
    /** {@return the water it holds} */
    Ground ground();

    /**
     * {@return where it is met on one visit, in metres; none if it stays unseen}
     *
     * @param day day of the year
     * @param draws chance
     */
    List<Double> met(int day, Draws draws);
}
