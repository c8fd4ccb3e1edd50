package org.ouzelbook.stats.simulate.mechanism;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.ouzelbook.stats.simulate.Draws;

/** Writes down what the visits of one season meet. */
final class FieldNotes {
    private static final double IN_SIGHT_METRES = 500;
    private static final double PLACE_ERROR_METRES = 15;
    private static final double TURN_ERROR_METRES = 40;

    private final FieldPlan plan;
    private final List<Pair> pairs;
    private final Draws draws;
    private final List<Walk> walks;
    private final List<Registration> registrations = new ArrayList<>();
    private final List<Together> together = new ArrayList<>();

    private FieldNotes(FieldPlan plan, List<Pair> pairs, Draws draws) {
        this.plan = plan;
        this.pairs = pairs;
        this.draws = draws;
        this.walks = plan.walks(draws.branch("walks"));
    }

    /**
     * {@return the season}
     *
     * @param plan the river and its visits
     * @param pairs the pairs that live there, going up
     * @param straysPerKm birds without a ground met on one km of one visit, on average
     * @param draws chance
     */
    static RiverSeason of(FieldPlan plan, List<Pair> pairs, double straysPerKm, Draws draws) {
        FieldNotes notes = new FieldNotes(plan, pairs, draws);
        for (int visit = 0; visit < notes.walks.size(); visit++) {
            notes.walk(visit, straysPerKm);
        }
        return new RiverSeason(
                plan.riverMetres(),
                notes.walks,
                notes.registrations,
                notes.together,
                pairs.stream().map(Pair::ground).toList());
    }

    private void walk(int visit, double straysPerKm) {
        Walk walk = walks.get(visit);
        List<Met> met = new ArrayList<>();
        for (int nr = 0; nr < pairs.size(); nr++) {
            Pair pair = pairs.get(nr);
            boolean first = true;
            for (double metres : pair.met(walk.day(), draws.branch("met", visit, nr))) {
                if (walk.covers(metres)) {
                    met.add(new Met(write(visit, metres, turn(pair.ground(), first)), nr));
                    first = false;
                }
            }
        }
        int strays = draws.poisson(straysPerKm * (walk.toMetres() - walk.fromMetres()) / 1000);
        for (int stray = 0; stray < strays; stray++) {
            double metres = draws.between(walk.fromMetres(), walk.toMetres());
            met.add(new Met(write(visit, metres, OptionalDouble.empty()), pairs.size() + stray));
        }
        seenAtOnce(met);
    }

    /**
     * A bird that was met.
     *
     * @param note what was written down
     * @param whose the number of its pair; each stray has its own
     */
    private record Met(Registration note, int whose) {}

    private OptionalDouble turn(Ground ground, boolean first) {
        if (!first || !draws.happens(plan.turnBacks())) {
            return OptionalDouble.empty();
        }
        double end = draws.happens(0.5) ? ground.fromMetres() : ground.toMetres();
        double place = end + draws.normal(0, TURN_ERROR_METRES);
        return place > 0 && place < plan.riverMetres()
                ? OptionalDouble.of(StrictMath.rint(place))
                : OptionalDouble.empty();
    }

    private Registration write(int visit, double metres, OptionalDouble turnedBackAt) {
        double place = StrictMath.rint(metres + draws.normal(0, PLACE_ERROR_METRES));
        double onRiver = Math.max(0, Math.min(StrictMath.floor(plan.riverMetres()), place));
        Registration made = new Registration("r" + (registrations.size() + 1), visit, onRiver, turnedBackAt);
        registrations.add(made);
        return made;
    }

    private void seenAtOnce(List<Met> met) {
        met.sort(Comparator.comparingDouble(one -> one.note.metres()));
        for (int i = 1; i < met.size(); i++) {
            Met lower = met.get(i - 1);
            Met upper = met.get(i);
            if (lower.whose != upper.whose
                    && upper.note.metres() - lower.note.metres() <= IN_SIGHT_METRES
                    && draws.happens(plan.together())) {
                together.add(new Together(lower.note.id(), upper.note.id()));
            }
        }
    }
}
