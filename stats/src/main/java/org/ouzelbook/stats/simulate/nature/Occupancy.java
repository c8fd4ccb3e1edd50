package org.ouzelbook.stats.simulate.nature;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.ouzelbook.stats.simulate.Draws;

/** Which sites are held: a chain from season to season, each site by its quality and the season's conditions. */
final class Occupancy {
    private final List<NestingSite> sites;
    private final PopulationSettings settings;
    private final Conditions conditions;

    Occupancy(List<NestingSite> sites, PopulationSettings settings, Conditions conditions) {
        this.sites = sites.stream()
                .sorted(Comparator.comparing(NestingSite::quality).reversed().thenComparing(NestingSite::name))
                .toList();
        this.settings = settings;
        this.conditions = conditions;
    }

    /** The sites held in the first season. */
    List<NestingSite> first(int season, Draws draws) {
        List<NestingSite> held = new ArrayList<>();
        for (NestingSite site : sites) {
            settle(site, settings.occupiedAtFirst(), conditions.settling(season, site), held, draws);
        }
        return held;
    }

    /** The sites held in a season, after those of the season before: kept first, then settled, the best sites leading. */
    List<NestingSite> next(int season, Set<NestingSite> before, Draws draws) {
        List<NestingSite> held = new ArrayList<>();
        for (NestingSite site : sites) {
            if (before.contains(site) && happens(settings.staying(), conditions.staying(season, site), site, draws)) {
                held.add(site);
            }
        }
        for (NestingSite site : sites) {
            if (!before.contains(site)) {
                settle(site, settings.settling(), conditions.settling(season, site), held, draws);
            }
        }
        return held;
    }

    private void settle(NestingSite site, double probability, double logOdds, List<NestingSite> held, Draws draws) {
        boolean free = held.stream()
                .noneMatch(other -> other.riverId().equals(site.riverId())
                        && other.at().distanceTo(site.at()) < settings.closestMetres());
        if (happens(probability, logOdds, site, draws) && free) {
            held.add(site);
        }
    }

    private static boolean happens(double probability, double logOdds, NestingSite site, Draws draws) {
        return draws.branch(site.name()).happens(Draws.probability(Draws.logOdds(probability) + logOdds));
    }
}
