package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.DoublePredicate;
import org.apache.commons.math3.random.MersenneTwister;
import org.apache.commons.math3.random.RandomGenerator;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.segmentation.LinePosterior;
import org.ouzelbook.stats.estimator.segmentation.LinePosterior.Ground;
import org.ouzelbook.stats.estimator.segmentation.LinePosterior.Span;
import org.ouzelbook.stats.estimator.segmentation.TreePosterior;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * The territories of one river in one season by the model: how many there can be, and where. A territory counts where its middle
 * lies, as far as that is surveyed water and water asked about.
 */
public final class ModelCount {
    /** A cell that an unseen territory holds with less than this probability shows no room for one. */
    private static final double ROOM = 0.15;

    private final LinePosterior posterior;
    private final ModelTree tree;
    private final ModelLine line;
    private final Effort effort;
    private final DoublePredicate counted;
    private final double[] law;

    ModelCount(TreePosterior all, ModelTree tree, UUID river, Water water) {
        this.posterior = all.line(tree.place(river));
        this.tree = tree;
        this.line = tree.lines().get(tree.place(river));
        this.effort = line.effort();
        this.counted = metres -> effort.surveyed(new Chainage(metres)) && water.contains(river, new Chainage(metres));
        this.law = posterior.countLaw(counted);
    }

    /** {@return the probabilities of 0, 1, 2 … territories, those included that no visit found} */
    public List<Double> distribution() {
        List<Double> distribution = new ArrayList<>();
        for (double probability : law) {
            distribution.add(probability);
        }
        return distribution;
    }

    /** {@return the expected number of territories} */
    public double expected() {
        double sum = 0;
        for (int k = 0; k < law.length; k++) {
            sum += k * law[k];
        }
        return sum;
    }

    /** {@return the expected number of those that no visit found} */
    public double expectedUnseen() {
        return posterior.expectedUnseen(counted);
    }

    /**
     * {@return the lower limit of the number}
     *
     * @param level probability that the number lies between the limits, at least
     */
    public int lower(double level) {
        return quantile(Estimate.tail(level));
    }

    /**
     * {@return the upper limit of the number}
     *
     * @param level probability that the number lies between the limits, at least
     */
    public int upper(double level) {
        return quantile(1 - Estimate.tail(level));
    }

    private int quantile(double probability) {
        double sum = 0;
        for (int k = 0; k < law.length; k++) {
            sum += law[k];
            if (sum >= probability - 1e-12) {
                return k;
            }
        }
        return law.length - 1;
    }

    /**
     * {@return what the model knows of the territory that holds a place}
     *
     * @param place the place
     * @param level probability that an end lies between its limits
     */
    public Ground ground(Chainage place, double level) {
        return posterior.ground(within(place.metres()), Estimate.tail(level));
    }

    /**
     * {@return the probability that one territory holds two places}
     *
     * @param one a place
     * @param other another
     */
    public double together(Chainage one, Chainage other) {
        double lower = Math.min(one.metres(), other.metres());
        double upper = Math.max(one.metres(), other.metres());
        return posterior.together(within(lower), within(upper));
    }

    /**
     * {@return the probability that one territory holds a place of this river and one of another; 0 where the two do not meet}
     *
     * @param one a place of this river
     * @param river key of the other river
     * @param other a place of that river
     */
    public double together(Chainage one, UUID river, Chainage other) {
        for (int i = 0; i < tree.lines().size(); i++) {
            if (tree.lines().get(i).river().equals(river)) {
                return posterior.together(
                        within(one.metres()), i, within(tree.lines().get(i), other.metres()));
            }
        }
        return 0;
    }

    /**
     * Another river into which a territory may reach.
     *
     * @param river key of the river
     * @param probability how probable that is
     */
    public record Reach(UUID river, double probability) {}

    /**
     * {@return the rivers into which the territory that holds a place may reach through a confluence}
     *
     * @param place the place
     */
    public List<Reach> reaching(Chainage place) {
        List<Reach> reaching = new ArrayList<>();
        for (int i = 0; i < tree.lines().size(); i++) {
            ModelLine other = tree.lines().get(i);
            if (!other.river().equals(line.river())) {
                reaching.add(new Reach(other.river(), posterior.reaching(within(place.metres()), i)));
            }
        }
        return reaching;
    }

    private double within(double metres) {
        return within(line, metres);
    }

    private static double within(ModelLine on, double metres) {
        return Math.max(on.line().lower(), Math.min(on.line().upper(), metres));
    }

    /**
     * A territory of a map.
     *
     * @param stretch its water on this river
     * @param arm its water on another, where it reaches through a confluence
     */
    public record Mapped(Stretch stretch, Optional<Territory.Arm> arm) {}

    /** {@return the territories of the most probable map whose middles lie on this river, going up} */
    public List<Mapped> mostProbable() {
        return posterior.mostProbable().stream()
                .map(span -> new Mapped(
                        stretch(span.lower(), span.upper()), span.beyond().map(this::arm)))
                .toList();
    }

    private Territory.Arm arm(LinePosterior.Beyond beyond) {
        return new Territory.Arm(tree.lines().get(beyond.line()).river(), stretch(beyond.lower(), beyond.upper()));
    }

    private static Stretch stretch(double lower, double upper) {
        return new Stretch(new Chainage(lower), new Chainage(upper));
    }

    /**
     * Water where a pair that no visit found would fit.
     *
     * @param stretch the water
     * @param probability highest probability, along it, that such a territory holds a place
     */
    public record Room(Stretch stretch, double probability) {}

    /** {@return surveyed water where a pair that no visit found would fit, going up} */
    public List<Room> roomForUnseen() {
        double[] unseen = posterior.unseen();
        List<Room> rooms = new ArrayList<>();
        int from = -1;
        double highest = 0;
        for (int c = 0; c <= unseen.length; c++) {
            boolean room = c < unseen.length
                    && unseen[c] >= ROOM
                    && counted.test((posterior.place(c) + posterior.place(c + 1)) / 2);
            if (room) {
                from = from < 0 ? c : from;
                highest = Math.max(highest, unseen[c]);
            } else if (from >= 0) {
                rooms.add(new Room(
                        new Stretch(new Chainage(posterior.place(from)), new Chainage(posterior.place(c))), highest));
                from = -1;
                highest = 0;
            }
        }
        return rooms;
    }

    /**
     * What one visit found of the most probable map.
     *
     * @param date the day
     * @param passed territories of which it covered half or more
     * @param found those in which it met a bird
     */
    public record Found(LocalDate date, int passed, int found) {}

    /** {@return what each effective visit found of the most probable map, by date} */
    public List<Found> foundByVisit() {
        List<Span> map = posterior.mostProbable();
        List<Found> all = new ArrayList<>();
        for (Effort.Day day : effort.effective()) {
            int passed = 0;
            int found = 0;
            for (Span span : map) {
                double length = span.upper() - span.lower();
                double walked = line.walked(day.date(), span.lower(), span.upper());
                boolean met = line.met(day.date(), span.lower(), span.upper());
                if (span.beyond().isPresent()) {
                    LinePosterior.Beyond beyond = span.beyond().get();
                    ModelLine there = tree.lines().get(beyond.line());
                    length += beyond.upper() - beyond.lower();
                    walked += there.walked(day.date(), beyond.lower(), beyond.upper());
                    met |= there.met(day.date(), beyond.lower(), beyond.upper());
                }
                if (walked >= length / 2) {
                    passed++;
                    found += met ? 1 : 0;
                }
            }
            all.add(new Found(day.date(), passed, found));
        }
        return all;
    }

    /**
     * {@return how many territories each of several maps has, each map drawn with its probability; the same seed draws the same
     * of all rivers that meet, and the same draw of every line of a book is by the same nature of the species}
     *
     * @param size how many maps
     * @param seed where chance begins
     */
    public List<Long> draws(int size, long seed) {
        RandomGenerator random = new MersenneTwister(seed);
        List<Long> draws = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            draws.add(posterior.draw(random, (i + 0.5) / size).stream()
                    .filter(span -> counted.test(span.middle()))
                    .count());
        }
        return draws;
    }
}
