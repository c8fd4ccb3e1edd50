package org.ouzelbook.stats.simulate.mechanism;

/**
 * What one simulated book is made from, except chance.
 *
 * @param kind how pairs share the river
 * @param medianMetres median length of a ground
 * @param seasons how many seasons; at least one
 * @param field the river and how it is walked
 */
public record BookPlan(Mechanism.Kind kind, double medianMetres, int seasons, FieldPlan field) {
    /**
     * Checks the plan.
     *
     * @throws IllegalArgumentException if there is no season or no length
     */
    public BookPlan {
        if (seasons < 1 || !(medianMetres > 0)) {
            throw new IllegalArgumentException("A book has a season and its grounds a length");
        }
    }
}
