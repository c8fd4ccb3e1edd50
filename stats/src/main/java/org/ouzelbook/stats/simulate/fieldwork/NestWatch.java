package org.ouzelbook.stats.simulate.fieldwork;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.ouzelbook.stats.simulate.Draws;
import org.ouzelbook.stats.simulate.nature.Attempt;
import org.ouzelbook.stats.simulate.nature.TruePair;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.NestOutcome;
import org.ouzelbook.tracker.domain.NestStage;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Species;

/** The nests that were found, and the checks of them. */
final class NestWatch {
    private static final int BUILT_BEFORE_EGGS = 10;

    private final NestSettings settings;
    private final List<Nest> nests = new ArrayList<>();
    private final List<NestCheck> checks = new ArrayList<>();

    private NestWatch(NestSettings settings) {
        this.settings = settings;
    }

    static NestWatch none() {
        return new NestWatch(new NestSettings(Species.DIPPER, 0, 1, 0, 0));
    }

    static NestWatch of(NestSettings settings, List<TruePair> pairs, Draws draws) {
        NestWatch watch = new NestWatch(settings);
        pairs.stream().filter(pair -> pair.species().equals(settings.species())).forEach(pair -> {
            for (Attempt attempt : pair.attempts()) {
                watch.attempt(
                        pair,
                        attempt,
                        draws.branch("nest", pair.season(), pair.site().name(), attempt.number()));
            }
        });
        return watch;
    }

    List<Nest> nests() {
        return nests;
    }

    List<NestCheck> checks() {
        return checks;
    }

    private void attempt(TruePair pair, Attempt attempt, Draws draws) {
        if (!draws.happens(settings.found())) {
            return;
        }
        LocalDate earliest = attempt.firstEgg().minusDays(BUILT_BEFORE_EGGS);
        long span = ChronoUnit.DAYS.between(earliest, attempt.end());
        LocalDate found = earliest.plusDays((long) (draws.uniform() * 0.8 * span));
        long sameSeason = nests.stream()
                .filter(nest -> nest.label().startsWith(pair.season() + "/"))
                .count();
        String label = pair.season() + "/%02d".formatted(sameSeason + 1);
        Place place =
                new Place(pair.site().riverId(), pair.site().at(), pair.site().bank(), 10, 1);
        double height = Math.round(draws.between(6, 28)) / 10.0;
        Nest nest = new Nest(
                draws.key(),
                label,
                place,
                pair.species(),
                pair.site().kind(),
                OptionalDouble.of(height),
                Optional.of(found),
                attempt.number() > 1 && attempt.lost().isEmpty() ? "later attempt of the same pair" : "");
        nests.add(nest);
        LocalDate day = found;
        boolean over = false;
        while (!over) {
            over = !day.isBefore(attempt.end());
            checks.add(over ? lastCheck(nest, attempt, day, draws) : check(nest, attempt, day, draws));
            day = day.plusDays(Math.max(2, Math.round(draws.normal(settings.everyDays(), 1.5))));
        }
    }

    private NestCheck check(Nest nest, Attempt attempt, LocalDate day, Draws draws) {
        boolean seenInto = draws.happens(settings.seenInto());
        long age = ChronoUnit.DAYS.between(attempt.hatching(), day);
        int laid = (int) Math.min(attempt.clutch(), ChronoUnit.DAYS.between(attempt.firstEgg(), day) + 1);
        return switch (attempt.on(day)) {
            case AHEAD -> row(nest, day, draws.happens(0.5) ? NestStage.BUILDING : NestStage.COMPLETE, 0, 0, "", draws);
            case LAYING ->
                row(nest, day, seenInto ? NestStage.EGGS : NestStage.UNKNOWN, seenInto ? laid : 0, 0, "", draws);
            case INCUBATION ->
                seenInto
                        ? row(nest, day, NestStage.EGGS, laid, 0, "warm", draws)
                        : row(nest, day, NestStage.UNKNOWN, 0, 0, "adult sitting, left alone", draws);
            case NESTLINGS ->
                row(nest, day, NestStage.YOUNG, 0, seenInto ? attempt.hatched() : 0, growth(age, seenInto), draws);
            case LED_YOUNG, OVER -> row(nest, day, NestStage.EMPTY, 0, 0, "", draws);
        };
    }

    private static String growth(long age, boolean seenInto) {
        if (!seenInto) {
            return "young heard, not counted";
        }
        if (age < 5) {
            return "young naked, blind";
        }
        if (age < 9) {
            return "eyes open";
        }
        return age < 15 ? "primaries in pin" : "well feathered, not gone near";
    }

    private NestCheck lastCheck(Nest nest, Attempt attempt, LocalDate day, Draws draws) {
        boolean known = draws.happens(settings.outcomeKnown());
        boolean lost = attempt.lost().isPresent();
        NestOutcome ended = lost ? NestOutcome.FAILURE : NestOutcome.SUCCESS;
        NestCheck plain = row(nest, day, NestStage.EMPTY, 0, 0, last(attempt, known), draws);
        return new NestCheck(
                plain.id(),
                plain.nestId(),
                plain.date(),
                plain.time(),
                plain.stage(),
                plain.stageText(),
                plain.eggs(),
                plain.young(),
                plain.adults(),
                Optional.of(known ? ended : NestOutcome.UNKNOWN),
                plain.note());
    }

    private static String last(Attempt attempt, boolean known) {
        if (!known) {
            return "empty, no sign either way";
        }
        return attempt.lost()
                .map(loss -> loss.cause() == Attempt.Cause.FLOOD ? "washed out" : "lining torn, nothing left")
                .orElse("young seen near the nest");
    }

    private static NestCheck row(
            Nest nest, LocalDate day, NestStage stage, int eggs, int young, String note, Draws draws) {
        return new NestCheck(
                draws.key(),
                nest.id(),
                day,
                Optional.of(LocalTime.of(9, 0).plusMinutes(5L * draws.below(90))),
                stage,
                "",
                eggs > 0 ? OptionalInt.of(eggs) : OptionalInt.empty(),
                young > 0 ? OptionalInt.of(young) : OptionalInt.empty(),
                OptionalInt.empty(),
                Optional.empty(),
                note);
    }
}
