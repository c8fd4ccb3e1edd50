package org.ouzelbook.tracker.rings;

import java.util.Optional;
import java.util.stream.Stream;

/**
 * Colour rings as they were read, the bird's own left leg first.
 *
 * <p>Legs are parted by {@code /}, each read from the top down, one letter a ring: {@code OW/mR}. A hyphen marks the joint:
 * {@code R-OW/m-}. Or all four positions are written with {@code /} between upper and lower and a {@code ·}, {@code |} or
 * {@code ;} between the legs: {@code R/N · m/W}. A {@code ?} alone is a leg or position that was not seen, among letters a ring
 * whose colour was not made out; a letter in brackets is unsure; {@code @} is a lost ring; a hyphen alone is a bare leg.
 *
 * <p>Left leg first, top down, {@code /} between legs, {@code ?} and {@code @}: as European colour-ring projects write them
 * (International Wader Study Group, describing combinations). Brackets and hyphen: common practice, no source.
 *
 * @param left the left leg
 * @param right the right leg
 */
public record RingReading(RingLeg left, RingLeg right) {

    /**
     * {@return the reading that somebody wrote; empty if it cannot be understood}
     *
     * @param text a reading
     */
    public static Optional<RingReading> read(String text) {
        return RingScanner.read(text);
    }

    /** {@return every ring that was seen} */
    public Stream<Ring> rings() {
        return Stream.concat(left.rings(), right.rings());
    }

    /** {@return whether both legs were read, and nothing is in doubt} */
    public boolean isCertain() {
        return left.isCertain() && right.isCertain() && rings().findAny().isPresent();
    }

    @Override
    public String toString() {
        return left + "/" + right;
    }
}
