package org.ouzelbook.tracker.domain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A piece of one river between two chainages, both ends included.
 *
 * @param lower the end nearer the mouth
 * @param upper the end nearer the source; not below {@code lower}
 */
public record Stretch(Chainage lower, Chainage upper) {
    /**
     * Checks the order of the ends.
     *
     * @throws IllegalArgumentException if {@code upper} lies below {@code lower}
     */
    public Stretch {
        if (lower.compareTo(upper) > 0) {
            throw new IllegalArgumentException(
                    "A stretch runs upstream, but went from " + lower.metres() + " m to " + upper.metres() + " m");
        }
    }

    /**
     * {@return the stretch between two chainages, given in either order}
     *
     * @param one one end
     * @param other the other end
     */
    public static Stretch between(Chainage one, Chainage other) {
        return one.compareTo(other) <= 0 ? new Stretch(one, other) : new Stretch(other, one);
    }

    /**
     * {@return the stretch between two distances from the mouth, given in either order}
     *
     * @param oneKm one end, in km from the mouth; finite and not negative
     * @param otherKm the other end, in km from the mouth; finite and not negative
     * @throws IllegalArgumentException if a distance is negative, infinite or NaN
     */
    public static Stretch ofKm(double oneKm, double otherKm) {
        return between(Chainage.ofKm(oneKm), Chainage.ofKm(otherKm));
    }

    /** {@return the length, in metres} */
    public double length() {
        return upper.metres() - lower.metres();
    }

    /** {@return the point half-way along} */
    public Chainage middle() {
        return new Chainage((lower.metres() + upper.metres()) / 2);
    }

    /**
     * {@return whether the point lies on this stretch, its ends included}
     *
     * @param point a chainage of the same river
     */
    public boolean contains(Chainage point) {
        return lower.compareTo(point) <= 0 && point.compareTo(upper) <= 0;
    }

    /**
     * {@return the part that this stretch shares with another; empty where they do not meet}
     *
     * @param other a stretch of the same river
     */
    public Optional<Stretch> intersection(Stretch other) {
        Chainage low = lower.compareTo(other.lower) >= 0 ? lower : other.lower;
        Chainage high = upper.compareTo(other.upper) <= 0 ? upper : other.upper;
        return low.compareTo(high) <= 0 ? Optional.of(new Stretch(low, high)) : Optional.empty();
    }

    /**
     * {@return the water that at least one of the stretches covers, as separate stretches going upstream}
     *
     * @param stretches stretches of one river, in any order
     */
    public static List<Stretch> union(List<Stretch> stretches) {
        List<Stretch> sorted = new ArrayList<>(stretches);
        sorted.sort(Comparator.comparing(Stretch::lower));
        List<Stretch> union = new ArrayList<>();
        for (Stretch next : sorted) {
            int last = union.size() - 1;
            if (last >= 0 && union.get(last).contains(next.lower)) {
                Chainage top = union.get(last).upper.compareTo(next.upper) >= 0 ? union.get(last).upper : next.upper;
                union.set(last, new Stretch(union.get(last).lower, top));
            } else {
                union.add(next);
            }
        }
        return List.copyOf(union);
    }

    /**
     * {@return the total length of the stretches, in metres; overlaps are counted as often as they occur}
     *
     * @param stretches stretches, in any order
     */
    public static double totalLength(List<Stretch> stretches) {
        return stretches.stream().mapToDouble(Stretch::length).sum();
    }
}
