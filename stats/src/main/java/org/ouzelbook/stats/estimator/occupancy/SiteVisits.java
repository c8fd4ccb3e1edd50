package org.ouzelbook.stats.estimator.occupancy;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The visits of some sites in some seasons. Missing visits, seasons and whole sites are left out.
 *
 * @param sites how many sites
 * @param seasons how many seasons, with those without a visit
 * @param visits the visits; covariates of detection have a row for each, in this order
 */
public record SiteVisits(int sites, int seasons, List<SiteVisit> visits) {
    /**
     * Copies the list and checks it.
     *
     * @throws IllegalArgumentException if a visit is out of range, or stands twice
     */
    public SiteVisits {
        visits = List.copyOf(visits);
        Set<List<Integer>> known = new HashSet<>(2 * visits.size());
        for (SiteVisit visit : visits) {
            if (visit.site() >= sites || visit.season() >= seasons) {
                throw new IllegalArgumentException("No such site or season: " + visit);
            }
            if (!known.add(List.of(visit.site(), visit.season(), visit.occasion()))) {
                throw new IllegalArgumentException("Two results for one visit: " + visit);
            }
        }
    }

    /** Places of the visits in the list, by site and season. */
    List<List<List<Integer>>> rows() {
        List<List<List<Integer>>> rows = new ArrayList<>();
        for (int site = 0; site < sites; site++) {
            List<List<Integer>> ofSite = new ArrayList<>();
            for (int season = 0; season < seasons; season++) {
                ofSite.add(new ArrayList<>(4));
            }
            rows.add(ofSite);
        }
        for (int row = 0; row < visits.size(); row++) {
            SiteVisit visit = visits.get(row);
            rows.get(visit.site()).get(visit.season()).add(row);
        }
        return rows;
    }

    /** {@return how many sites have a visit} */
    public int visitedSites() {
        return (int) visits.stream().mapToInt(SiteVisit::site).distinct().count();
    }

    /** {@return in how many of them the species was detected, by season} */
    public List<Naive> naive() {
        List<Naive> naive = new ArrayList<>();
        for (int season = 0; season < seasons; season++) {
            int asked = season;
            List<SiteVisit> made =
                    visits.stream().filter(visit -> visit.season() == asked).toList();
            naive.add(new Naive(
                    (int) made.stream().mapToInt(SiteVisit::site).distinct().count(), (int) made.stream()
                            .filter(SiteVisit::detected)
                            .mapToInt(SiteVisit::site)
                            .distinct()
                            .count()));
        }
        return naive;
    }

    /**
     * What a season shows before any model.
     *
     * @param visited sites with a visit
     * @param detected sites with a detection
     */
    public record Naive(int visited, int detected) {}
}
