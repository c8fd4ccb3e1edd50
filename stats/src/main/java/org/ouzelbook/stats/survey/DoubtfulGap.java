package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.stats.estimator.segmentation.Acceptance;
import org.ouzelbook.tracker.domain.Chainage;

/**
 * A gap inside a territory that is wide enough for it to be two, each of which the rules would accept: that it is one rests
 * on the gap alone, unless rings or a brood bind the two sides.
 *
 * @param lower the part below the gap
 * @param upper the part above it
 */
record DoubtfulGap(Cluster lower, Cluster upper) {

    /** The widest such gap of a cluster on its own river; empty if there is none. */
    static Optional<DoubtfulGap> of(Cluster cluster, Field field, Season season) {
        if (!cluster.accepted() || cluster.atHome().size() < cluster.members().size()) {
            return Optional.empty();
        }
        List<Member> members = cluster.members();
        Optional<DoubtfulGap> widest = Optional.empty();
        for (int cut = 1; cut < members.size(); cut++) {
            double width = members.get(cut).metres() - members.get(cut - 1).metres();
            if (width >= season.settings().doubtfulGapMetres()
                    && widest.map(gap -> gap.metres() < width).orElse(true)
                    && !field.bindsAcross(members.subList(0, cut), members.subList(cut, members.size()))) {
                Cluster lower = part(cluster, members.subList(0, cut), season);
                Cluster upper = part(cluster, members.subList(cut, members.size()), season);
                if (lower.accepted() && upper.accepted()) {
                    widest = Optional.of(new DoubtfulGap(lower, upper));
                }
            }
        }
        return widest;
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

    private static Cluster part(Cluster whole, List<Member> members, Season season) {
        Cluster part = new Cluster(whole.riverId(), members, false);
        Acceptance acceptance = season.acceptance(whole.riverId(), 0);
        boolean decisive = members.stream().anyMatch(member -> season.settings().isDecisive(member.code()));
        boolean accepted = acceptance.accepts(
                decisive,
                part.days().size(),
                part.spreadDays(),
                part.lowest().metres(),
                part.highest().metres());
        return new Cluster(whole.riverId(), members, accepted);
    }

    Chainage from() {
        return lower.highest();
    }

    Chainage to() {
        return upper.lowest();
    }

    double metres() {
        return from().distanceTo(to());
    }
}
