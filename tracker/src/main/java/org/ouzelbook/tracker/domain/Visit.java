package org.ouzelbook.tracker.domain;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * One coverage of a stretch of one river: the effort without which nothing seen, and nothing not seen, means anything.
 *
 * @param id its key
 * @param label what the surveyor calls it; not blank, unique in its book
 * @param riverId the {@link River}
 * @param date the local date
 * @param start local time of the start
 * @param end local time of the end
 * @param walked the stretch covered; empty for a visit that was planned but missed, or whose extent nobody wrote down: such
 *     a visit shows no absence and counts as no effort
 * @param direction which way it went
 * @param mode how the observers travelled
 * @param observers names or initials
 * @param lookedFor the species that were looked for: only they can be absent
 * @param level river level, in the surveyor's words
 * @param weather weather, in the surveyor's words
 * @param effective whether birds could have been found: false for spate, fog, a missed visit
 * @param note anything else
 */
public record Visit(
        UUID id,
        String label,
        UUID riverId,
        LocalDate date,
        Optional<LocalTime> start,
        Optional<LocalTime> end,
        Optional<Stretch> walked,
        Optional<Direction> direction,
        Optional<TravelMode> mode,
        List<String> observers,
        List<Species> lookedFor,
        String level,
        String weather,
        boolean effective,
        String note)
        implements Entry {
    /**
     * Copies the lists and checks the label.
     *
     * @throws IllegalArgumentException if the label is blank
     */
    public Visit {
        observers = List.copyOf(observers);
        lookedFor = List.copyOf(lookedFor);
        if (label.isBlank()) {
            throw new IllegalArgumentException("A visit needs a label");
        }
    }

    /**
     * {@return whether this visit is effort for the species: effective, with a known extent, in season, and looking for it}
     *
     * @param species a species
     */
    public boolean isEffortFor(Species species) {
        return effective && walked.isPresent() && species.inSeason(date) && lookedFor.contains(species);
    }

    /**
     * {@return this visit, ended}
     *
     * @param at local time of the end
     * @param covered the stretch that was covered until then
     */
    public Visit ended(LocalTime at, Optional<Stretch> covered) {
        return with(label, Optional.of(at), covered, observers);
    }

    /**
     * {@return this visit under another label}
     *
     * @param other what to call it
     * @throws IllegalArgumentException if the label is blank
     */
    public Visit labelled(String other) {
        return with(other, end, walked, observers);
    }

    /**
     * {@return this visit, with these people}
     *
     * @param people who went
     */
    public Visit observedBy(List<String> people) {
        return with(label, end, walked, people);
    }

    private Visit with(
            String newLabel, Optional<LocalTime> newEnd, Optional<Stretch> newWalked, List<String> newObservers) {
        return new Visit(
                id,
                newLabel,
                riverId,
                date,
                start,
                newEnd,
                newWalked,
                direction,
                mode,
                newObservers,
                lookedFor,
                level,
                weather,
                effective,
                note);
    }
}
