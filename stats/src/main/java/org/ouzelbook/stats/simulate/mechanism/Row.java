package org.ouzelbook.stats.simulate.mechanism;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleSupplier;

/** Grounds laid one after another along a river. */
final class Row {
    private static final double BEYOND_METRES = 15_000;

    private Row() {}

    /**
     * {@return the grounds with water on the river, going up}
     *
     * @param plan the river
     * @param length the length of the next ground, in metres
     * @param gap the free water before the next ground, in metres; negative where they overlap
     */
    static List<Ground> of(FieldPlan plan, DoubleSupplier length, DoubleSupplier gap) {
        double end = plan.riverMetres();
        double start = plan.piece() ? -BEYOND_METRES : 0;
        List<Ground> row = new ArrayList<>();
        double at = start + Math.max(0, gap.getAsDouble());
        while (at < end) {
            Ground ground = new Ground(at, at + length.getAsDouble());
            if (plan.piece() ? ground.toMetres() > 0 : ground.middle() < end) {
                row.add(plan.piece() ? ground : new Ground(ground.fromMetres(), Math.min(end, ground.toMetres())));
            }
            at = Math.max(ground.toMetres() + gap.getAsDouble(), at + 1);
        }
        return row;
    }
}
