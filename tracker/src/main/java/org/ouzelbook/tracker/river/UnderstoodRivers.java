package org.ouzelbook.tracker.river;

import java.util.List;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.river.UnderstoodRiver.MouthBy;

/**
 * Drawn rivers made into a network: each one line from its mouth to its source, tributaries joined at their mouths.
 *
 * <p>Which end is the mouth: what a person said; else, for a tributary, the end nearest to the river that it joins; else the
 * last point drawn, since most lines of rivers are drawn downstream, and then {@link MouthBy} says so. A walked track tells
 * nothing of the water's direction and is asked about.
 *
 * @param rivers the rivers understood, receiving rivers before their tributaries
 * @param questions what must be answered before anything is stored; none if all is clear
 */
public record UnderstoodRivers(List<UnderstoodRiver> rivers, List<Message> questions) {
    /** Copies the lists. */
    public UnderstoodRivers {
        rivers = List.copyOf(rivers);
        questions = List.copyOf(questions);
    }

    /**
     * {@return the rivers as understood from a drawing and a person's answers}
     *
     * @param drawn the rivers as drawn; names differ, in any case
     * @param answers what a person said
     */
    public static UnderstoodRivers of(List<DrawnRiver> drawn, RiverAnswers answers) {
        return new Understanding(drawn, answers).done();
    }
}
