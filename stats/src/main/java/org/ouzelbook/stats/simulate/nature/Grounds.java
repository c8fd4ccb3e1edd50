package org.ouzelbook.stats.simulate.nature;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.ouzelbook.stats.simulate.Draws;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * How much water each pair holds. A pair wants a length up and down from its site; where neighbours' wants overlap they meet
 * in between, elsewhere water stays vacant. At a confluence the part that reaches beyond it is shared out over both arms.
 */
final class Grounds {
    private static final double SMALLEST_ARM_METRES = 60;

    private final PopulationSettings settings;
    private final Draws sites;
    private final Draws season;
    private final Map<NestingSite, List<Ground>> grounds = new HashMap<>();

    /**
     * @param sites the branch for what a site wants in all seasons
     * @param season the branch for what differs this season
     */
    private Grounds(PopulationSettings settings, Draws sites, Draws season) {
        this.settings = settings;
        this.sites = sites;
        this.season = season;
    }

    static Map<NestingSite, List<Ground>> of(
            List<Course> courses, List<NestingSite> held, PopulationSettings settings, Draws sites, Draws season) {
        Grounds grounds = new Grounds(settings, sites, season);
        courses.forEach(course -> grounds.along(course, held));
        courses.forEach(grounds::bendInto);
        return grounds.grounds;
    }

    private void along(Course course, List<NestingSite> held) {
        List<Wish> wishes = held.stream()
                .filter(site -> site.riverId().equals(course.id()))
                .sorted(Comparator.comparing(NestingSite::at))
                .map(this::wish)
                .toList();
        List<Double> lower = new ArrayList<>();
        List<Double> upper = new ArrayList<>();
        for (int i = 0; i < wishes.size(); i++) {
            Wish wish = wishes.get(i);
            double from = Math.max(0, wish.at - wish.down);
            if (i > 0) {
                Wish below = wishes.get(i - 1);
                double meeting = below.at + (wish.at - below.at) * below.up / (below.up + wish.down);
                if (below.at + below.up > from) {
                    from = meeting;
                    upper.set(i - 1, meeting);
                }
            }
            lower.add(from);
            upper.add(Math.min(course.lengthMetres(), wish.at + wish.up));
        }
        for (int i = 0; i < wishes.size(); i++) {
            Stretch stretch = new Stretch(new Chainage(lower.get(i)), new Chainage(upper.get(i)));
            grounds.put(wishes.get(i).site, List.of(new Ground(course.id(), stretch)));
        }
    }

    private Wish wish(NestingSite site) {
        Draws lasting = sites.branch(site.name());
        double usual = lasting.logNormal(settings.medianLengthMetres(), settings.lengthLogSd());
        double length =
                Math.min(season.branch(site.name()).logNormal(usual, settings.yearlyLogSd()), settings.longestMetres());
        double share = lasting.between(0.35, 0.65);
        return new Wish(site, site.at().metres(), length * share, length * (1 - share));
    }

    private void bendInto(Course tributary) {
        if (tributary.river().mouth().isEmpty()) {
            return;
        }
        River.Confluence mouth = tributary.river().mouth().get();
        double open = grounds.values().stream()
                .map(pieces -> pieces.get(0))
                .filter(home -> home.riverId().equals(tributary.id()))
                .mapToDouble(home -> home.stretch().lower().metres())
                .min()
                .orElse(tributary.lengthMetres());
        grounds.replaceAll((site, pieces) -> bent(pieces, mouth, tributary, open));
    }

    /** Half of what lies beyond the confluence, seen from the site's river below it, goes into the tributary. */
    private static List<Ground> bent(List<Ground> pieces, River.Confluence mouth, Course tributary, double open) {
        Ground home = pieces.get(0);
        double meeting = mouth.chainage().metres();
        double arm = Math.min((home.stretch().upper().metres() - meeting) / 2, open);
        boolean reachesIt =
                home.riverId().equals(mouth.riverId()) && home.stretch().contains(mouth.chainage());
        if (!reachesIt || arm < SMALLEST_ARM_METRES) {
            return pieces;
        }
        Chainage shortened = new Chainage(home.stretch().upper().metres() - arm);
        List<Ground> all = new ArrayList<>();
        all.add(new Ground(home.riverId(), new Stretch(home.stretch().lower(), shortened)));
        all.addAll(pieces.subList(1, pieces.size()));
        all.add(new Ground(tributary.id(), new Stretch(new Chainage(0), new Chainage(arm))));
        return List.copyOf(all);
    }

    private record Wish(NestingSite site, double at, double down, double up) {}
}
