package org.ouzelbook.tracker.exchange.export;

/** Degrees as files write them: to a millionth, which is 11 cm. */
public final class Degrees {
    private static final double DIGITS = 1e6;

    private Degrees() {}

    /**
     * {@return degrees to a millionth}
     *
     * @param exact degrees
     */
    public static double of(double exact) {
        return Math.round(exact * DIGITS) / DIGITS;
    }
}
