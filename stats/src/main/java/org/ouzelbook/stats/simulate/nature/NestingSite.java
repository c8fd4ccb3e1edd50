package org.ouzelbook.stats.simulate.nature;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.ouzelbook.stats.simulate.Draws;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.NestSite;

/**
 * A place where a pair can nest, year after year: a bridge, a weir, a rock.
 *
 * @param name its name; unique among the sites of a species
 * @param riverId the river
 * @param at distance from the river's mouth
 * @param bank the side
 * @param kind what a nest is built on here
 * @param quality log-odds added to being settled and to being kept; 0 for the common run of sites
 */
public record NestingSite(String name, UUID riverId, Chainage at, Bank bank, NestSite kind, double quality) {

    /**
     * {@return sites along a river by a renewal process: each log-normal distance begins at the site before}
     *
     * @param course the river
     * @param medianSpacingMetres median distance between sites, in metres; positive
     * @param logSd standard deviation of the logarithm of the distance
     * @param qualitySd standard deviation of the sites' quality
     * @param draws where chance comes from
     */
    public static List<NestingSite> along(
            Course course, double medianSpacingMetres, double logSd, double qualitySd, Draws draws) {
        List<NestSite> kinds = List.of(NestSite.BRIDGE, NestSite.WEIR, NestSite.ROCK, NestSite.WALL, NestSite.BANK);
        List<NestingSite> sites = new ArrayList<>();
        double metres = draws.uniform() * medianSpacingMetres;
        while (metres < course.lengthMetres()) {
            sites.add(new NestingSite(
                    course.river().name() + " site " + (sites.size() + 1),
                    course.id(),
                    new Chainage(metres),
                    draws.oneOf(List.of(Bank.LEFT, Bank.RIGHT)),
                    draws.oneOf(kinds),
                    draws.normal(0, qualitySd)));
            metres += draws.logNormal(medianSpacingMetres, logSd);
        }
        return List.copyOf(sites);
    }
}
