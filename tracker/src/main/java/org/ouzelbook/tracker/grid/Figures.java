package org.ouzelbook.tracker.grid;

import java.util.Optional;

/**
 * The figures of a reference within a square of 100 km: as many for the way east as for the way north.
 *
 * @param corner the corner that they name, from the corner of the square of 100 km
 * @param side the side of the square that they leave open, in metres
 */
record Figures(GridPoint corner, double side) {
    private static final int MOST = 10;

    /** {@return the figures; empty if they are odd in number, too many, or parted into unequal halves} */
    static Optional<Figures> of(String written) {
        String digits = written.replace(" ", "");
        String[] parts = written.strip().split(" +", -1);
        boolean unequal = parts.length == 2 && parts[0].length() != parts[1].length();
        if (digits.length() % 2 != 0 || digits.length() > MOST || unequal) {
            return Optional.empty();
        }
        int half = digits.length() / 2;
        double side = Math.pow(10, 5.0 - half);
        return Optional.of(new Figures(
                new GridPoint(side * number(digits.substring(0, half)), side * number(digits.substring(half))), side));
    }

    private static int number(String digits) {
        return digits.isEmpty() ? 0 : Integer.parseInt(digits);
    }
}
