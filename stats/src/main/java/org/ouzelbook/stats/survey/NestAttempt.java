package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.ouzelbook.stats.survey.BreedingDates.Clutch;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.NestOutcome;

/**
 * One nesting attempt, read from the checks of its nest.
 *
 * @param nest the nest
 * @param season the calendar year of its first check
 * @param outcome how it ended; {@link NestOutcome#UNKNOWN} unless a check says so
 * @param problems what cannot have been so; then nothing is computed with the attempt
 * @param dates when it began and hatched; empty without eggs or young, or with problems
 * @param clutch eggs, if counted twice unchanged or during incubation
 * @param brood young at the last count
 * @param fledged young that left the nest, taken as the brood at the last count; 0 after a failure; empty if unknown
 * @param watched the days between its checks
 * @param inUse the days of the first and the last check that found eggs or young
 */
public record NestAttempt(
        Nest nest,
        int season,
        NestOutcome outcome,
        List<Message> problems,
        Optional<BreedingDates> dates,
        OptionalInt clutch,
        OptionalInt brood,
        OptionalInt fledged,
        List<Watch> watched,
        Optional<Span> inUse) {
    /** Copies the lists. */
    public NestAttempt {
        problems = List.copyOf(problems);
        watched = List.copyOf(watched);
    }

    /**
     * The days between two checks, of which the first found eggs or young.
     *
     * @param eggDays days with eggs
     * @param youngDays days with young
     * @param survived whether eggs or young were alive at the end
     * @param seen whether the end is a check that found them alive, not the middle of the days before a success
     */
    public record Watch(double eggDays, double youngDays, boolean survived, boolean seen) {
        /** {@return all days} */
        public double days() {
            return eggDays + youngDays;
        }
    }

    /**
     * Days from one to another.
     *
     * @param from the first
     * @param to the last
     */
    public record Span(LocalDate from, LocalDate to) {}

    /**
     * {@return the attempt of a nest}
     *
     * @param nest the nest
     * @param checks its checks, one or more, in any order
     * @param pace how long an attempt takes
     */
    public static NestAttempt of(Nest nest, List<NestCheck> checks, BreedingPace pace) {
        List<NestLook> looks = NestLook.of(checks);
        Optional<NestLook> ended =
                looks.stream().filter(look -> look.outcome().isPresent()).findFirst();
        OptionalInt clutch = ClutchCount.of(looks, nest.species(), pace);
        List<Message> problems = new ArrayList<>(NestProblems.of(nest, looks, clutch));
        Optional<BreedingDates> dates = Optional.empty();
        if (problems.isEmpty() && looks.stream().anyMatch(NestLook::isActive)) {
            dates = dates(nest, looks, ended, pace, clutch)
                    .or(() -> dates(nest, looks, ended, pace.possible(), clutch));
            if (dates.isEmpty()) {
                problems.add(Message.of("nests.problem.dates", nest.label()));
            }
        }
        NestOutcome outcome = ended.flatMap(NestLook::outcome).orElse(NestOutcome.UNKNOWN);
        OptionalInt brood = looks.stream()
                .mapToInt(NestLook::young)
                .filter(young -> young > 0)
                .reduce((before, last) -> last);
        OptionalInt fledged = switch (outcome) {
            case SUCCESS -> brood;
            case FAILURE -> OptionalInt.of(0);
            case UNKNOWN -> OptionalInt.empty();
        };
        return new NestAttempt(
                nest,
                looks.get(0).date().getYear(),
                outcome,
                problems,
                dates,
                clutch,
                brood,
                fledged,
                problems.isEmpty() ? WatchedDays.of(looks, dates, pace) : List.of(),
                inUse(looks));
    }

    private static Optional<Span> inUse(List<NestLook> looks) {
        List<NestLook> active = looks.stream().filter(NestLook::isActive).toList();
        return active.isEmpty()
                ? Optional.empty()
                : Optional.of(new Span(
                        active.get(0).date(), active.get(active.size() - 1).date()));
    }

    private static Optional<BreedingDates> dates(
            Nest nest, List<NestLook> looks, Optional<NestLook> ended, BreedingPace pace, OptionalInt clutch) {
        int seen = looks.stream()
                .mapToInt(look -> Math.max(look.eggs(), look.young()))
                .max()
                .orElse(1);
        Clutch eggs = clutch.isPresent()
                ? new Clutch(clutch.getAsInt(), clutch.getAsInt())
                : new Clutch(Math.max(seen, pace.clutchFrom()), Math.max(seen, pace.clutchTo()));
        return BreedingDates.of(looks, ended, nest.species(), pace, eggs);
    }

    /** {@return whether it can be computed with} */
    public boolean isSound() {
        return problems.isEmpty();
    }
}
