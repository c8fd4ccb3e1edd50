package org.ouzelbook.tracker.river;

import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;

/**
 * A drawn river as it was understood, before anything is stored.
 *
 * @param river the river
 * @param line version 1 of its line, going upstream
 * @param lengthMetres length of the line, bridged gaps included, in metres
 * @param mouthBy how the mouth was told
 * @param pieces how many drawn pieces are in the line
 * @param turned how many of these were drawn against the others
 * @param gaps gaps between its pieces that were bridged
 * @param leftOutMetres lengths of pieces that are not in the line
 * @param metresFromReceiving how far its mouth lies from the line of the river that it joins, in metres
 */
public record UnderstoodRiver(
        River river,
        RiverLine line,
        double lengthMetres,
        MouthBy mouthBy,
        int pieces,
        int turned,
        List<Gap> gaps,
        List<Double> leftOutMetres,
        Optional<Double> metresFromReceiving) {
    /** Copies the lists. */
    public UnderstoodRiver {
        gaps = List.copyOf(gaps);
        leftOutMetres = List.copyOf(leftOutMetres);
    }

    /**
     * A gap in the drawn line.
     *
     * @param at its lower end
     * @param metres its width, in metres
     */
    public record Gap(Chainage at, double metres) {}

    /** How it was told which end is the mouth. */
    public enum MouthBy {
        /** A person said so. */
        TOLD,
        /** It is the end nearest to the river that it joins. */
        JOINS,
        /** Nobody said; lines of rivers are mostly drawn downstream, so the last point drawn was taken. */
        DRAWN_DOWNSTREAM
    }

    /** {@return where the line starts: the mouth, unless its km start above 0} */
    public GeoPoint lowerEnd() {
        return line.points().get(0);
    }

    /** {@return where the line ends upstream} */
    public GeoPoint upperEnd() {
        return line.points().get(line.points().size() - 1);
    }
}
