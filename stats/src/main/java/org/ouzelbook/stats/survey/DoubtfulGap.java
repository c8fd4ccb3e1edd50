package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Chainage;

/**
 * A gap inside a territory that is wide enough for it to be two, each of which the rules would accept: that it is one rests
 * on the gap alone, unless rings or a brood bind the two sides.
 *
 * @param lower the part below the gap; in a territory on two rivers, the part on the river that it is listed on
 * @param upper the other part
 * @param metres the width, along the water
 */
record DoubtfulGap(Cluster lower, Cluster upper, double metres) {

    /** The widest such gap of a cluster; empty if there is none. */
    static Optional<DoubtfulGap> of(Cluster cluster, Field field, Season season) {
        if (!cluster.accepted()) {
            return Optional.empty();
        }
        List<Member> members = cluster.members();
        Optional<DoubtfulGap> widest = Optional.empty();
        for (int cut = 1; cut < members.size(); cut++) {
            boolean betweenRivers = cut == cluster.atHome().size();
            if (betweenRivers || cluster.atHome().size() == members.size()) {
                List<Member> below = members.subList(0, cut);
                List<Member> above = members.subList(cut, members.size());
                double width = betweenRivers
                        ? narrowest(below, above, season)
                        : above.get(0).metres() - below.get(cut - 1).metres();
                if (width >= season.settings().doubtfulGapMetres()
                        && widest.map(gap -> gap.metres < width).orElse(true)) {
                    Cluster lower = part(below, season);
                    Cluster upper = part(above, season);
                    if (lower.accepted()
                            && upper.accepted()
                            && !field.bindsAcross(lower, upper)
                            && !season.decisions().bindsAcross(lower, upper)) {
                        widest = Optional.of(new DoubtfulGap(lower, upper, width));
                    }
                }
            }
        }
        return widest;
    }

    private static double narrowest(List<Member> below, List<Member> above, Season season) {
        double narrowest = Double.POSITIVE_INFINITY;
        for (Member one : below) {
            for (Member other : above) {
                narrowest = Math.min(narrowest, season.metresBetween(one, other));
            }
        }
        return narrowest;
    }

    private static Cluster part(List<Member> members, Season season) {
        Cluster part = Cluster.of(members.get(0).place().riverId(), members, false);
        return part.with(season.accepts(part, 0));
    }

    /** The parts into which a cluster falls when every such gap splits it. */
    static List<Cluster> split(Cluster cluster, Field field, Season season) {
        Optional<DoubtfulGap> gap = of(cluster, field, season);
        if (gap.isEmpty()) {
            return List.of(cluster);
        }
        List<Cluster> parts = new ArrayList<>(split(gap.get().lower(), field, season));
        parts.addAll(split(gap.get().upper(), field, season));
        return parts;
    }

    Chainage from() {
        return lower.highest();
    }

    Chainage to() {
        return upper.lowest();
    }
}
