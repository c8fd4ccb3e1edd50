package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.NestOutcome;
import org.ouzelbook.tracker.domain.Species;

/**
 * When an attempt can have begun and hatched, counted back from what checks show: one egg a day, incubation from the last egg.
 *
 * @param firstEgg when the first egg was laid
 * @param hatching when the eggs hatched, if they did
 */
public record BreedingDates(Window firstEgg, Window hatching) {

    /**
     * The days between which something happened.
     *
     * @param earliest the first of them
     * @param latest the last of them
     */
    public record Window(LocalDate earliest, LocalDate latest) {
        /** {@return the day in the middle} */
        public LocalDate middle() {
            return earliest.plusDays(days() / 2);
        }

        /** {@return from the first day to the last} */
        public long days() {
            return latest.toEpochDay() - earliest.toEpochDay();
        }

        private Window after(LocalDate day) {
            return new Window(earliest.isAfter(day) ? earliest : day, latest);
        }

        private Window before(LocalDate day) {
            return new Window(earliest, latest.isBefore(day) ? latest : day);
        }

        private boolean isPossible() {
            return !earliest.isAfter(latest);
        }
    }

    /**
     * What is known of the number of eggs.
     *
     * @param from at least
     * @param to at most
     */
    record Clutch(int from, int to) {}

    /**
     * The dates that agree with every check; empty if none do, or no egg and no young were seen.
     *
     * @param looks the checks in order
     * @param ended when and how it ended, if that is known
     */
    static Optional<BreedingDates> of(
            List<NestLook> looks, Optional<NestLook> ended, Species species, BreedingPace pace, Clutch clutch) {
        if (looks.stream().noneMatch(NestLook::isActive)) {
            return Optional.empty();
        }
        Window eggs = new Window(
                looks.get(0).date().minusYears(1), looks.get(looks.size() - 1).date());
        Window hatch = new Window(eggs.earliest(), eggs.latest().plusYears(1));
        boolean begun = false;
        for (NestLook look : looks) {
            LocalDate day = look.date();
            if (look.hasEggs() && look.isActive()) {
                int counted = Math.max(1, look.eggs());
                eggs = eggs.before(day.minusDays(counted - 1L));
                hatch = hatch.after(day);
                if (look.eggs() > 0 && look.eggs() < clutch.from() && !look.tellsOfIncubation()) {
                    eggs = grows(looks, look) ? eggs.after(day.minusDays(counted)) : eggs;
                }
            } else if (look.hasYoung() && look.isActive()) {
                hatch = hatch.before(day).after(day.minusDays(pace.nestlingTo()));
                Optional<YoungAge> age = YoungAge.of(look, species);
                if (age.isPresent()) {
                    hatch = hatch.before(day.minusDays(age.get().from()))
                            .after(day.minusDays(age.get().to()));
                }
            } else if (look.hasNothing() && !begun) {
                eggs = eggs.after(day.plusDays(1));
            }
            begun |= look.isActive();
        }
        if (ended.flatMap(NestLook::outcome).filter(NestOutcome.SUCCESS::equals).isPresent()) {
            hatch = hatch.before(ended.get().date().minusDays(pace.nestlingFrom()));
        }
        Window first = eggs.after(hatch.earliest().minusDays(pace.longestToHatching(clutch.to())))
                .before(hatch.latest().minusDays(pace.shortestToHatching(clutch.from())));
        Window hatched = hatch.after(first.earliest().plusDays(pace.shortestToHatching(clutch.from())))
                .before(first.latest().plusDays(pace.longestToHatching(clutch.to())));
        return first.isPossible() && hatched.isPossible()
                ? Optional.of(new BreedingDates(first, hatched))
                : Optional.empty();
    }

    /** Whether more eggs were counted later: the clutch was still being laid. */
    private static boolean grows(List<NestLook> looks, NestLook look) {
        return looks.stream().anyMatch(later -> later.date().isAfter(look.date()) && later.eggs() > look.eggs());
    }
}
