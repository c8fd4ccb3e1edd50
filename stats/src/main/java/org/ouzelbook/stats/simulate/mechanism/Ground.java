package org.ouzelbook.stats.simulate.mechanism;

/**
 * The water that one pair holds.
 *
 * @param fromMetres its lower end; below 0 where it goes on beyond the river's lower end
 * @param toMetres its upper end
 */
public record Ground(double fromMetres, double toMetres) {
    /** {@return its middle} */
    public double middle() {
        return (fromMetres + toMetres) / 2;
    }

    /** {@return its length, in metres} */
    public double length() {
        return toMetres - fromMetres;
    }

    boolean contains(double metres) {
        return fromMetres <= metres && metres <= toMetres;
    }
}
