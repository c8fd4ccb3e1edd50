package org.ouzelbook.tracker.exchange.export;

/** Degrees as files write them: to a millionth, which is 11 cm. */
final class Degrees {
    private static final double DIGITS = 1e6;

    private Degrees() {}

    static double of(double exact) {
        return Math.round(exact * DIGITS) / DIGITS;
    }
}
