package org.ouzelbook.stats.simulate.mechanism;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ouzelbook.stats.simulate.Draws;

/**
 * One season on a river and a tributary that joins it. Two of the three arms that meet there, others each season, are one line of
 * grounds to the birds; the third has grounds of its own that end at the confluence. Each of the two lines is walked on its own days.
 *
 * @param river the season on the river
 * @param tributary the season on the tributary
 * @param trueCount how many territories there truly were on both
 */
public record ForkedSeason(RiverSeason river, RiverSeason tributary, int trueCount) {
    /**
     * {@return one season}
     *
     * @param mechanism how pairs share the water
     * @param field how it is walked; its river is whole
     * @param waters the lengths of the arms
     * @param draws chance; the same draws make the same season
     */
    static ForkedSeason of(Mechanism mechanism, FieldPlan field, Fork waters, Draws draws) {
        Arm below = new Arm(false, waters.below(), -1, waters.below());
        Arm above = new Arm(false, waters.below(), 1, waters.above());
        Arm beck = new Arm(true, 0, 1, waters.tributary());
        List<List<Arm>> ways =
                List.of(List.of(below, above, beck), List.of(below, beck, above), List.of(above, beck, below));
        List<Arm> way = ways.get(draws.below(ways.size()));
        Written written = new Written();
        RiverSeason one =
                mechanism.season(field.on(way.get(0).length() + way.get(1).length()), draws.branch("through"));
        RiverSeason other = mechanism.season(field.on(way.get(2).length()), draws.branch("aside"));
        written.add("t", one, way.subList(0, 2));
        written.add("a", other, way.subList(2, 3));
        return new ForkedSeason(
                written.on(false, waters.below() + waters.above()),
                written.on(true, waters.tributary()),
                one.trueCount() + other.trueCount());
    }

    /**
     * The lengths of the waters that meet, in metres.
     *
     * @param below the river below the confluence
     * @param above the river above it
     * @param tributary the tributary
     */
    public record Fork(double below, double above, double tributary) {}

    /** One arm: whether it is the tributary, where on its river the confluence lies, which way it goes from there, and how far. */
    private record Arm(boolean isTributary, double confluence, int direction, double length) {
        double place(double out) {
            return confluence + direction * Math.max(0, Math.min(length, out));
        }
    }

    /** What was written down, put on the rivers. */
    private static final class Written {
        private final List<List<Walk>> walks = List.of(new ArrayList<>(), new ArrayList<>());
        private final List<List<Registration>> registrations = List.of(new ArrayList<>(), new ArrayList<>());
        private final List<List<Together>> together = List.of(new ArrayList<>(), new ArrayList<>());

        /** Puts a season on one or two arms: the first is gone down to the confluence, the second up from there. */
        void add(String name, RiverSeason season, List<Arm> arms) {
            double first = arms.size() > 1 ? arms.get(0).length() : 0;
            int[] before = {walks.get(0).size(), walks.get(1).size()};
            for (Walk walk : season.walks()) {
                for (int river = 0; river < 2; river++) {
                    walks.get(river).add(walked(walk, arms, first, river));
                }
            }
            for (Registration one : season.registrations()) {
                Arm arm = arms.get(one.metres() < first ? 0 : arms.size() - 1);
                int river = arm.isTributary() ? 1 : 0;
                double place = Math.rint(arm.place(Math.abs(one.metres() - first)));
                registrations
                        .get(river)
                        .add(new Registration(
                                name + one.id(), before[river] + one.visit(), place, OptionalDouble.empty()));
            }
            for (Together pair : season.together()) {
                for (int river = 0; river < 2; river++) {
                    if (holds(river, name + pair.one()) && holds(river, name + pair.other())) {
                        together.get(river).add(new Together(name + pair.one(), name + pair.other()));
                    }
                }
            }
        }

        /** What a walk along the arms covered of a river; from and to the same place where it did not go there. */
        private static Walk walked(Walk walk, List<Arm> arms, double first, int river) {
            double lowest = Double.POSITIVE_INFINITY;
            double highest = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < arms.size(); i++) {
                Arm arm = arms.get(i);
                boolean towards = i == 0 && arms.size() > 1;
                double from =
                        towards ? first - Math.min(first, walk.toMetres()) : Math.max(first, walk.fromMetres()) - first;
                double to = towards ? first - walk.fromMetres() : walk.toMetres() - first;
                if ((arm.isTributary() ? 1 : 0) == river && from < to) {
                    lowest = Math.min(lowest, Math.min(arm.place(from), arm.place(to)));
                    highest = Math.max(highest, Math.max(arm.place(from), arm.place(to)));
                }
            }
            return lowest < highest ? new Walk(walk.day(), lowest, highest) : new Walk(walk.day(), 0, 0);
        }

        private boolean holds(int river, String id) {
            return registrations.get(river).stream().anyMatch(one -> one.id().equals(id));
        }

        RiverSeason on(boolean tributary, double metres) {
            int river = tributary ? 1 : 0;
            return new RiverSeason(metres, walks.get(river), registrations.get(river), together.get(river), List.of());
        }
    }
}
