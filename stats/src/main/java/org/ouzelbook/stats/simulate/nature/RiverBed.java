package org.ouzelbook.stats.simulate.nature;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Chainage;

/**
 * The small animals of the river bed and what has poisoned them.
 *
 * @param families what lives there
 * @param spills what happened to them
 */
public record RiverBed(List<Family> families, List<Spill> spills) {
    /** Copies the lists. */
    public RiverBed {
        families = List.copyOf(families);
        spills = List.copyOf(spills);
    }

    /**
     * A family of animals.
     *
     * @param name its name
     * @param usual how many a clean riffle gives in one kick sample, on average
     * @param sensitivity 1 for the most easily poisoned, 0 for the untouched, below 0 for those that thrive on it
     */
    public record Family(String name, double usual, double sensitivity) {}

    /**
     * {@return how many of a family one kick sample gives on average, then and there}
     *
     * @param family the family
     * @param riverId the river
     * @param at the place
     * @param day the date
     */
    public double expected(Family family, UUID riverId, Chainage at, LocalDate day) {
        double harm = spills.stream()
                .filter(spill ->
                        spill.riverId().equals(riverId) && spill.where().contains(at) && !day.isBefore(spill.day()))
                .mapToDouble(spill -> spill.harm()
                        * StrictMath.pow(0.5, ChronoUnit.DAYS.between(spill.day(), day) / spill.halvingDays()))
                .sum();
        return family.usual() * StrictMath.exp(-family.sensitivity() * harm);
    }
}
