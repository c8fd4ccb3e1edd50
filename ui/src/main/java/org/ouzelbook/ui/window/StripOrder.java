package org.ouzelbook.ui.window;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.ui.strip.HitArea;
import org.ouzelbook.ui.strip.StripDrawing;
import org.ouzelbook.ui.strip.Subject;

/** The order in which the keyboard steps through what is drawn. */
final class StripOrder {
    private StripOrder() {}

    /**
     * {@return the next thing, and after the last the first again; empty where there is nothing}
     *
     * @param drawing the drawing
     * @param now what is selected
     * @param step 1 for the next, −1 for the one before
     */
    static Optional<Subject> next(Optional<StripDrawing> drawing, Optional<Subject> now, int step) {
        List<Subject> order = drawing.map(one -> one.areas().stream()
                        .map(HitArea::subject)
                        .filter(subject -> !(subject instanceof Subject.OfEnd))
                        .distinct()
                        .sorted(Comparator.comparingInt(StripOrder::rank))
                        .toList())
                .orElse(List.of());
        if (order.isEmpty()) {
            return Optional.empty();
        }
        int place = now.map(order::indexOf).orElse(-1);
        int next = place < 0 ? (step > 0 ? 0 : order.size() - 1) : Math.floorMod(place + step, order.size());
        return Optional.of(order.get(next));
    }

    private static int rank(Subject subject) {
        if (subject instanceof Subject.OfTerritory) {
            return 0;
        }
        if (subject instanceof Subject.OfSeason) {
            return 1;
        }
        if (subject instanceof Subject.OfSighting || subject instanceof Subject.OfCrowd) {
            return 2;
        }
        if (subject instanceof Subject.OfVisit) {
            return 3;
        }
        return subject instanceof Subject.OfLandmark || subject instanceof Subject.OfRiver ? 5 : 4;
    }
}
