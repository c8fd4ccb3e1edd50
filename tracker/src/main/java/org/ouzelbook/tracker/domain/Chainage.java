package org.ouzelbook.tracker.domain;

/**
 * A distance along the water, measured upstream from the river's mouth.
 *
 * @param metres distance from the mouth, in metres; finite and not negative
 */
public record Chainage(double metres) implements Comparable<Chainage> {
    /**
     * Checks the distance.
     *
     * @throws IllegalArgumentException if {@code metres} is negative, infinite or NaN
     */
    public Chainage {
        if (!(metres >= 0 && metres < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("Chainage must be finite and >= 0 m, but was " + metres);
        }
    }

    /**
     * {@return the chainage at this many river kilometres from the mouth}
     *
     * @param km kilometres from the mouth; finite and not negative
     * @throws IllegalArgumentException if {@code km} is negative, infinite or NaN
     */
    public static Chainage ofKm(double km) {
        return new Chainage(km * 1000);
    }

    /** {@return kilometres from the mouth} */
    public double km() {
        return metres / 1000;
    }

    /**
     * {@return the distance to another chainage of the same river, in metres; never negative}
     *
     * @param other a chainage of the same river
     */
    public double distanceTo(Chainage other) {
        return Math.abs(metres - other.metres);
    }

    @Override
    public int compareTo(Chainage other) {
        return Double.compare(metres, other.metres);
    }
}
