package org.ouzelbook.stats.simulate.nature;

import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * How the seasons differed.
 *
 * @param effects what was better or worse, where and when; several add up
 * @param floods spates that took nests
 */
public record Conditions(List<SeasonEffect> effects, List<Flood> floods) {
    /** Copies the lists. */
    public Conditions {
        effects = List.copyOf(effects);
        floods = List.copyOf(floods);
    }

    /** {@return seasons that are all alike} */
    public static Conditions even() {
        return new Conditions(List.of(), List.of());
    }

    double survival(int season, NestingSite site) {
        return sum(season, site, SeasonEffect::survival);
    }

    double staying(int season, NestingSite site) {
        return site.quality() + sum(season, site, SeasonEffect::staying);
    }

    double settling(int season, NestingSite site) {
        return site.quality() + sum(season, site, SeasonEffect::settling);
    }

    double nestLosses(int season, NestingSite site) {
        return effects.stream()
                .filter(effect -> effect.reaches(season, site))
                .mapToDouble(SeasonEffect::nestLosses)
                .reduce(1, (one, other) -> one * other);
    }

    private double sum(int season, NestingSite site, ToDoubleFunction<SeasonEffect> part) {
        return effects.stream()
                .filter(effect -> effect.reaches(season, site))
                .mapToDouble(part)
                .sum();
    }
}
