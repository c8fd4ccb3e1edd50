package org.ouzelbook.stats.simulate.fieldwork;

import java.util.List;
import org.ouzelbook.tracker.domain.Species;

/**
 * A colour-ringing project.
 *
 * @param species whose birds are ringed
 * @param firstSeason its first season
 * @param lastSeason its last season
 * @param broods share of broods that are ringed
 * @param grown probability that an unringed holder is caught in a season
 * @param colours letters of its colours; metal is {@code m}
 * @param readWhole probability that a met bird's rings are read whole
 * @param readInPart probability that they are read in part
 */
public record RingingSettings(
        Species species,
        int firstSeason,
        int lastSeason,
        double broods,
        double grown,
        List<String> colours,
        double readWhole,
        double readInPart) {
    /** Copies the list. */
    public RingingSettings {
        colours = List.copyOf(colours);
    }
}
