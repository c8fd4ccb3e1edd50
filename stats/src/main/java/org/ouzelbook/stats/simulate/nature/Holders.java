package org.ouzelbook.stats.simulate.nature;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ouzelbook.stats.simulate.Draws;
import org.ouzelbook.tracker.domain.Sex;

/**
 * The birds that hold the sites. A survivor stays where it bred while the site is held; one whose site was given up fills the
 * nearest gap of its sex; other gaps go to young of the waters or to birds from elsewhere.
 */
final class Holders {
    private final PopulationSettings settings;
    private final Conditions conditions;
    private final String species;
    private Map<NestingSite, Bird> females = new HashMap<>();
    private Map<NestingSite, Bird> males = new HashMap<>();
    private List<Bird> freeYoung = List.of();
    private int birds;

    Holders(String species, PopulationSettings settings, Conditions conditions) {
        this.species = species;
        this.settings = settings;
        this.conditions = conditions;
    }

    /** Fills the sites of a season. */
    void fill(int season, List<NestingSite> held, Draws draws) {
        List<Bird> young = new ArrayList<>(freeYoung);
        females = filled(season, held, Sex.FEMALE, females, young, draws.branch("females"));
        males = filled(season, held, Sex.MALE, males, young, draws.branch("males"));
    }

    Bird female(NestingSite site) {
        return holder(females, site);
    }

    Bird male(NestingSite site) {
        return holder(males, site);
    }

    private static Bird holder(Map<NestingSite, Bird> holders, NestingSite site) {
        return Optional.ofNullable(holders.get(site))
                .orElseThrow(() -> new IllegalArgumentException(site.name() + " is not held"));
    }

    /** A new bird of these waters. */
    Bird hatched(int season, Draws draws) {
        return newBird(draws.happens(0.5) ? Sex.FEMALE : Sex.MALE, season);
    }

    /** The young of last season that may take a site in the next. */
    void release(List<Bird> young) {
        freeYoung = List.copyOf(young);
    }

    private Bird newBird(Sex sex, int hatched) {
        birds++;
        return new Bird(species + " " + birds, sex, hatched);
    }

    private Map<NestingSite, Bird> filled(
            int season, List<NestingSite> held, Sex sex, Map<NestingSite, Bird> before, List<Bird> young, Draws draws) {
        Map<NestingSite, Bird> now = new HashMap<>();
        Map<NestingSite, Bird> homeless = new HashMap<>();
        before.keySet().stream().sorted(Comparator.comparing(NestingSite::name)).forEach(site -> {
            Bird bird = holder(before, site);
            double logOdds = Draws.logOdds(settings.grownSurvival()) + conditions.survival(season, site);
            if (draws.branch(bird.label()).happens(Draws.probability(logOdds))) {
                (held.contains(site) ? now : homeless).put(site, bird);
            }
        });
        for (NestingSite site : held) {
            if (!now.containsKey(site)) {
                Bird bird = nearest(homeless, site).orElseGet(() -> recruit(season, sex, young, draws));
                now.put(site, bird);
            }
        }
        return now;
    }

    private static Optional<Bird> nearest(Map<NestingSite, Bird> homeless, NestingSite gap) {
        return homeless.keySet().stream()
                .filter(site -> site.riverId().equals(gap.riverId()))
                .min(Comparator.comparingDouble((NestingSite site) -> site.at().distanceTo(gap.at()))
                        .thenComparing(NestingSite::name))
                .map(homeless::remove);
    }

    private Bird recruit(int season, Sex sex, List<Bird> young, Draws draws) {
        List<Bird> fitting = young.stream().filter(bird -> bird.sex() == sex).toList();
        if (!fitting.isEmpty() && draws.happens(settings.homeRecruits())) {
            Bird recruit = draws.oneOf(fitting);
            young.remove(recruit);
            return recruit;
        }
        return newBird(sex, season - 1);
    }
}
