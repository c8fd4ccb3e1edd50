package org.ouzelbook.tracker.domain;

import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;

/**
 * What a surveyor who knows the water decided about the territories of one season, over the head of any rule.
 *
 * @param id its key
 * @param species whose territories
 * @param season the year of the season
 * @param riverId the {@link River}
 * @param kind what was decided
 * @param stretch where; a boundary has no length, one territory and no territory have some
 * @param note the reason, in the surveyor's words; not blank, and never empty for a {@link DecisionKind#NOTE}
 * @param by who decided it
 * @param on the date when it was decided
 */
public record Decision(
        UUID id,
        Species species,
        int season,
        UUID riverId,
        DecisionKind kind,
        Stretch stretch,
        Optional<String> note,
        String by,
        LocalDate on)
        implements Entry {
    /**
     * Checks the length and the reason.
     *
     * @throws IllegalArgumentException if a boundary has a length, one territory or no territory has none, or the reason is
     *     blank or, for a note, missing
     */
    public Decision {
        boolean isPoint = !(stretch.length() > 0);
        if (kind == DecisionKind.BOUNDARY && !isPoint) {
            throw new IllegalArgumentException("A boundary has no length, but was " + stretch.length() + " m long");
        }
        if ((kind == DecisionKind.TOGETHER || kind == DecisionKind.NO_TERRITORY) && isPoint) {
            throw new IllegalArgumentException("Decision " + kind + " needs a stretch with some length");
        }
        if (note.filter(String::isBlank).isPresent() || (kind == DecisionKind.NOTE && note.isEmpty())) {
            throw new IllegalArgumentException("A decision's note is not blank, and a note always has one");
        }
    }

    /**
     * {@return whether this and another decision cannot both be followed}
     *
     * <p>A boundary contradicts one territory that it would cut; one territory contradicts no territory where the two
     * overlap. Whatever else two decisions say, both can hold.
     *
     * @param other another decision, of any river, species and season
     */
    public boolean contradicts(Decision other) {
        return species.equals(other.species)
                && season == other.season
                && riverId.equals(other.riverId)
                && (clashesWith(other) || other.clashesWith(this));
    }

    private boolean clashesWith(Decision other) {
        if (kind != DecisionKind.TOGETHER) {
            return false;
        }
        double lower = Math.max(stretch.lower().metres(), other.stretch.lower().metres());
        double upper = Math.min(stretch.upper().metres(), other.stretch.upper().metres());
        return switch (other.kind) {
            case BOUNDARY ->
                lower == upper
                        && lower > stretch.lower().metres()
                        && upper < stretch.upper().metres();
            case NO_TERRITORY -> lower < upper;
            case TOGETHER, NOTE -> false;
        };
    }
}
