package org.ouzelbook.stats.simulate.nature;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.ouzelbook.stats.simulate.Draws;

/** The nests of one pair in one season, one after the other. */
final class Breeding {
    private final BreedingSettings settings;
    private final Conditions conditions;
    private final Holders holders;

    Breeding(BreedingSettings settings, Conditions conditions, Holders holders) {
        this.settings = settings;
        this.conditions = conditions;
        this.holders = holders;
    }

    List<Attempt> attempts(int season, NestingSite site, Draws draws) {
        double late = settings.daysLaterPerKm() * site.at().km();
        LocalDate start =
                settings.firstEgg().atYear(season).plusDays(Math.round(draws.normal(late, settings.firstEggSd())));
        LocalDate lastStart = settings.lastStart().atYear(season);
        List<Attempt> attempts = new ArrayList<>();
        boolean again = true;
        while (again && !start.isAfter(lastStart)) {
            Attempt attempt = attempt(attempts.size() + 1, start, site, draws);
            attempts.add(attempt);
            boolean lost = attempt.lost().isPresent();
            again = draws.happens(lost ? settings.againAfterLoss() : settings.secondBrood());
            start = (lost ? attempt.end() : attempt.independence()).plusDays(Math.round(draws.between(4, 12)));
        }
        return attempts;
    }

    private Attempt attempt(int number, LocalDate firstEgg, NestingSite site, Draws draws) {
        int clutch = (int) Math.max(2, Math.round(draws.normal(settings.clutch(), settings.clutchSd())));
        LocalDate hatching = firstEgg.plusDays(clutch - 1L + settings.incubationDays());
        LocalDate fledging = hatching.plusDays(settings.nestlingDays());
        Optional<Attempt.Loss> lost = loss(firstEgg, fledging, site, draws);
        List<Bird> young = new ArrayList<>();
        int hatched = clutch - (draws.happens(0.35) ? 1 : 0);
        for (int i = 0; lost.isEmpty() && i < hatched; i++) {
            young.add(holders.hatched(firstEgg.getYear(), draws));
        }
        LocalDate independence = fledging.plusDays(settings.dependentDays());
        return new Attempt(number, firstEgg, clutch, hatching, fledging, independence, hatched, lost, young);
    }

    private Optional<Attempt.Loss> loss(LocalDate firstEgg, LocalDate fledging, NestingSite site, Draws draws) {
        double daily = Math.min(0.5, settings.dailyLoss() * conditions.nestLosses(firstEgg.getYear(), site));
        long days = (long) draws.exponential(-1 / StrictMath.log(1 - daily));
        Optional<Attempt.Loss> other = Optional.of(firstEgg.plusDays(days + 1))
                .filter(day -> day.isBefore(fledging))
                .map(day -> new Attempt.Loss(day, Attempt.Cause.OTHER));
        Optional<Attempt.Loss> flood = conditions.floods().stream()
                .filter(spate -> spate.day().isAfter(firstEgg) && spate.day().isBefore(fledging))
                .filter(spate -> draws.happens(spate.shareOfNestsLost()))
                .map(spate -> new Attempt.Loss(spate.day(), Attempt.Cause.FLOOD))
                .findFirst();
        return Stream.of(other, flood)
                .flatMap(Optional::stream)
                .min((one, two) -> one.day().compareTo(two.day()));
    }
}
