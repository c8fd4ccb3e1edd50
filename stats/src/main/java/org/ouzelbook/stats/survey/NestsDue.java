package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.NestStage;
import org.ouzelbook.tracker.domain.Species;

/**
 * The nests that are to be looked at next, and from how near. It is private: it names nests.
 *
 * <p>A nest in use is looked at about once a week until it has ended: the rule of nest record handbooks, here as five to eight days
 * after the last look. Large young leave the nest early where somebody comes near, so from twelve days after hatching it is to be watched
 * from a distance only; both numbers of days are common practice, no source. The law, the licence and the bird come first.
 *
 * @param due the nests, the earliest first
 */
public record NestsDue(List<Due> due) {
    private static final int SOONEST_DAYS = 5;
    private static final int LATEST_DAYS = 8;
    private static final int GIVEN_UP_DAYS = 45;
    private static final int LARGE_YOUNG_DAYS = 12;

    /** Copies the list. */
    public NestsDue {
        due = List.copyOf(due);
    }

    /** How a nest is to be looked at. */
    public enum Manner {
        /** A short look, by those who may. */
        SHORT_LOOK,
        /** From a distance only: young may leave too early. */
        FROM_AFAR,
        /** The young have left by now, if all went well: look for them nearby. */
        FOR_FLEDGED
    }

    /**
     * A nest that is due.
     *
     * @param nest the nest
     * @param last when it was last looked at
     * @param stage what was found then
     * @param from the first day of the next look
     * @param to the last day of it
     * @param manner how
     */
    public record Due(Nest nest, LocalDate last, NestStage stage, LocalDate from, LocalDate to, Manner manner) {}

    /**
     * {@return the nests of a species that are to be looked at}
     *
     * @param records the records of the book
     * @param species whose nests
     * @param today nests last seen in use more than 45 days before this day are given up
     */
    public static NestsDue of(SurveyRecords records, Species species, LocalDate today) {
        Map<UUID, List<NestCheck>> checks = records.nestChecks().stream()
                .filter(check -> !check.date().isAfter(today) && check.date().getYear() == today.getYear())
                .collect(Collectors.groupingBy(NestCheck::nestId));
        List<Due> due = new ArrayList<>();
        for (Nest nest : records.nests()) {
            List<NestCheck> own = checks.getOrDefault(nest.id(), List.of());
            if (nest.species().equals(species) && !own.isEmpty()) {
                due(nest, own, today).ifPresent(due::add);
            }
        }
        due.sort(Comparator.comparing(Due::from).thenComparing(one -> one.nest().label()));
        return new NestsDue(due);
    }

    private static Optional<Due> due(Nest nest, List<NestCheck> checks, LocalDate today) {
        NestCheck last =
                checks.stream().max(Comparator.comparing(NestCheck::date)).orElseThrow();
        boolean ended = checks.stream().anyMatch(check -> check.outcome().isPresent());
        boolean inUse = last.stage() != NestStage.EMPTY;
        if (ended || !inUse || last.date().plusDays(GIVEN_UP_DAYS).isBefore(today)) {
            return Optional.empty();
        }
        LocalDate from = last.date().plusDays(SOONEST_DAYS);
        LocalDate to = last.date().plusDays(LATEST_DAYS);
        BreedingPace pace = BreedingPace.usualFor(nest.species());
        LocalDate look = to.isBefore(today) ? today : to;
        Manner manner = NestAttempt.of(nest, checks, pace)
                .dates()
                .map(dates -> manner(dates.hatching(), pace, look))
                .orElse(Manner.SHORT_LOOK);
        return Optional.of(new Due(nest, last.date(), last.stage(), from, to, manner));
    }

    private static Manner manner(BreedingDates.Window hatching, BreedingPace pace, LocalDate look) {
        if (look.isAfter(hatching.latest().plusDays(pace.nestlingTo()))) {
            return Manner.FOR_FLEDGED;
        }
        return look.isBefore(hatching.earliest().plusDays(LARGE_YOUNG_DAYS)) ? Manner.SHORT_LOOK : Manner.FROM_AFAR;
    }
}
