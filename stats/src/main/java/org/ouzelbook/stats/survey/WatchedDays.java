package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.stats.survey.NestAttempt.Watch;
import org.ouzelbook.tracker.domain.NestOutcome;

/**
 * The days on which a nest was watched. Between two checks that found it alive all days count; before a success the days up to the middle
 * of the last interval, since nobody saw on which day the young left; before a loss the whole interval, as lost, but not beyond
 * the last day on which young could still have been in the nest; of an unknown end nothing after the last check that found it alive.
 */
final class WatchedDays {
    private WatchedDays() {}

    static List<Watch> of(List<NestLook> looks, Optional<BreedingDates> dates, BreedingPace pace) {
        List<NestLook> active = looks.stream().filter(NestLook::isActive).toList();
        List<Watch> watched = new ArrayList<>();
        for (int i = 1; i < active.size(); i++) {
            NestLook from = active.get(i - 1);
            NestLook to = active.get(i);
            add(
                    watched,
                    from,
                    day(to.date()),
                    to.hasYoung() ? hatching(from, to, dates) : Double.MAX_VALUE,
                    true,
                    true);
        }
        if (!active.isEmpty()) {
            NestLook last = active.get(active.size() - 1);
            end(looks, last).ifPresent(end -> last(watched, last, end, looks, dates, pace));
        }
        return watched;
    }

    /** The first check that found the nest empty or its end, after it was last alive. */
    private static Optional<NestLook> end(List<NestLook> looks, NestLook last) {
        return looks.stream()
                .skip(looks.indexOf(last) + 1L)
                .filter(look -> look.isEmpty() || look.outcome().isPresent())
                .findFirst();
    }

    private static void last(
            List<Watch> watched,
            NestLook last,
            NestLook end,
            List<NestLook> looks,
            Optional<BreedingDates> dates,
            BreedingPace pace) {
        Optional<NestOutcome> outcome =
                looks.stream().flatMap(look -> look.outcome().stream()).findFirst();
        double hatching = dates.map(
                        known -> Math.max(day(last.date()), day(known.hatching().middle())))
                .orElse(Double.MAX_VALUE);
        if (outcome.filter(NestOutcome.SUCCESS::equals).isPresent()) {
            add(watched, last, (day(last.date()) + day(end.date())) / 2.0, hatching, true, false);
        } else if (outcome.filter(NestOutcome.FAILURE::equals).isPresent()) {
            LocalDate latest = dates.map(known -> known.hatching().latest().plusDays(pace.nestlingTo()))
                    .filter(gone -> gone.isBefore(end.date()) && gone.isAfter(last.date()))
                    .orElse(end.date());
            add(watched, last, day(latest), hatching, false, true);
        }
    }

    private static double hatching(NestLook from, NestLook to, Optional<BreedingDates> dates) {
        double middle =
                dates.map(known -> day(known.hatching().middle())).orElse((day(from.date()) + day(to.date())) / 2.0);
        return Math.max(day(from.date()), Math.min(day(to.date()), middle));
    }

    private static void add(
            List<Watch> watched, NestLook from, double to, double hatching, boolean survived, boolean seen) {
        double start = day(from.date());
        if (to > start) {
            double eggDays = from.hasEggs() ? Math.min(to, hatching) - start : 0;
            watched.add(new Watch(eggDays, to - start - eggDays, survived, seen));
        }
    }

    private static double day(LocalDate date) {
        return (double) date.toEpochDay();
    }
}
