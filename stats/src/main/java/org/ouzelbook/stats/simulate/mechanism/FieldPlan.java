package org.ouzelbook.stats.simulate.mechanism;

import java.util.ArrayList;
import java.util.List;
import org.ouzelbook.stats.simulate.Draws;

/**
 * The river and how it is walked in a season.
 *
 * @param riverMetres its length
 * @param piece whether it is a piece of a longer river, so that territories may lie across its ends; otherwise all water from
 *     the mouth to the source
 * @param visits visits in the season; at least one
 * @param shortWalks the share of visits that cover only a part, a third to nine tenths
 * @param together probability that two birds that are no pair, met next to each other within 500 m, are written down as seen at once
 * @param turnBacks probability that a pair that is met is driven to an end of its ground and seen to turn back
 */
public record FieldPlan(
        double riverMetres, boolean piece, int visits, double shortWalks, double together, double turnBacks) {
    private static final int FIRST_DAY = 50;
    private static final int LAST_DAY = 162;

    /**
     * Checks the plan.
     *
     * @throws IllegalArgumentException if there is no river or no visit
     */
    public FieldPlan {
        if (!(riverMetres > 0) || visits < 1) {
            throw new IllegalArgumentException("There must be a river and at least one visit");
        }
    }

    /** The same on a river of another length, from end to end. */
    FieldPlan on(double metres) {
        return new FieldPlan(metres, false, visits, shortWalks, together, turnBacks);
    }

    /** The visits of one season: spread over the time from late February to early June, each some days early or late. */
    List<Walk> walks(Draws draws) {
        List<Walk> walks = new ArrayList<>();
        double step = (double) (LAST_DAY - FIRST_DAY) / visits;
        for (int visit = 0; visit < visits; visit++) {
            int day = (int) (FIRST_DAY + step * (visit + draws.between(0.2, 0.8)));
            double share = draws.happens(shortWalks) ? draws.between(1.0 / 3, 0.9) : 1;
            double rest = riverMetres * (1 - share);
            double from = draws.happens(0.5) ? 0 : rest;
            walks.add(new Walk(day, from, from + riverMetres * share));
        }
        return walks;
    }
}
