package org.ouzelbook.ui.strip;

import java.util.ArrayList;
import java.util.List;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Stretch;

/** The water that nobody walked: what the walked stretches leave of the whole. */
final class Unwalked {
    private Unwalked() {}

    /**
     * {@return what is left of the whole, going upstream}
     *
     * @param whole the water that could have been walked
     * @param walked the stretches that were, in any order; they may overlap and reach beyond the whole
     */
    static List<Stretch> of(Stretch whole, List<Stretch> walked) {
        List<Stretch> gaps = new ArrayList<>();
        Chainage reached = whole.lower();
        for (Stretch next : Stretch.union(walked)) {
            Chainage start = lesser(next.lower(), whole.upper());
            if (start.compareTo(reached) > 0) {
                gaps.add(new Stretch(reached, start));
            }
            if (next.upper().compareTo(reached) > 0) {
                reached = next.upper();
            }
        }
        if (reached.compareTo(whole.upper()) < 0) {
            gaps.add(new Stretch(reached, whole.upper()));
        }
        return gaps;
    }

    private static Chainage lesser(Chainage one, Chainage other) {
        return one.compareTo(other) <= 0 ? one : other;
    }
}
