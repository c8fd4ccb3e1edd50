package org.ouzelbook.stats.simulate.nature;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.ouzelbook.stats.simulate.Draws;
import org.ouzelbook.tracker.domain.Species;

/**
 * One species on some rivers: where it can nest and how it lives there.
 *
 * @param species the species
 * @param sites where it can nest
 * @param population how it takes up its sites
 * @param breeding when and how well it breeds
 * @param conditions how the seasons differed
 */
public record Nature(
        Species species,
        List<NestingSite> sites,
        PopulationSettings population,
        BreedingSettings breeding,
        Conditions conditions) {
    /** Copies the list. */
    public Nature {
        sites = List.copyOf(sites);
    }

    /**
     * {@return every pair of every season, by season, river and distance from the mouth}
     *
     * @param courses the rivers
     * @param firstSeason the first calendar year
     * @param lastSeason the last one
     * @param draws where chance comes from
     */
    public List<TruePair> pairs(List<Course> courses, int firstSeason, int lastSeason, Draws draws) {
        Draws own = draws.branch("nature", species.scientificName());
        Occupancy occupancy = new Occupancy(sites, population, conditions);
        Holders holders = new Holders(species.englishName(), population, conditions);
        Breeding breeds = new Breeding(breeding, conditions, holders);
        List<TruePair> pairs = new ArrayList<>();
        List<NestingSite> held = List.of();
        for (int season = firstSeason; season <= lastSeason; season++) {
            Draws chance = own.branch(season);
            held = season == firstSeason
                    ? occupancy.first(season, chance.branch("held"))
                    : occupancy.next(season, new HashSet<>(held), chance.branch("held"));
            holders.fill(season, held, chance.branch("holders"));
            Map<NestingSite, List<Ground>> grounds =
                    Grounds.of(courses, held, population, own.branch("ground"), chance.branch("ground"));
            List<TruePair> now = new ArrayList<>();
            for (NestingSite site : inOrder(courses, held)) {
                List<Attempt> attempts = breeds.attempts(season, site, chance.branch("nests", site.name()));
                now.add(new TruePair(
                        species,
                        season,
                        site,
                        grounds.getOrDefault(site, List.of()),
                        holders.female(site),
                        holders.male(site),
                        attempts));
            }
            holders.release(now.stream().flatMap(pair -> pair.young().stream()).toList());
            pairs.addAll(now);
        }
        return List.copyOf(pairs);
    }

    private static List<NestingSite> inOrder(List<Course> courses, List<NestingSite> held) {
        List<UUID> rivers = courses.stream().map(Course::id).toList();
        return held.stream()
                .sorted(Comparator.comparing((NestingSite site) -> rivers.indexOf(site.riverId()))
                        .thenComparing(NestingSite::at))
                .toList();
    }
}
