package org.ouzelbook.stats.simulate.mechanism;

/**
 * One visit: a day, and the water it went along.
 *
 * @param day day of the year; 1 is the first of January
 * @param fromMetres lower end of what it covered
 * @param toMetres upper end
 */
public record Walk(int day, double fromMetres, double toMetres) {
    /** {@return whether it went past a place} */
    boolean covers(double metres) {
        return fromMetres <= metres && metres <= toMetres;
    }
}
