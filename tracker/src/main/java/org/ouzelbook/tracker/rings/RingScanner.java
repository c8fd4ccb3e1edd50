package org.ouzelbook.tracker.rings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** Takes the text of a reading apart. */
final class RingScanner {
    private static final Pattern BETWEEN_LEGS = Pattern.compile("[·|;]");

    private RingScanner() {}

    static Optional<RingReading> read(String text) {
        String bare = text.replaceAll("\\s+", "").replace('–', '-');
        String[] legs = BETWEEN_LEGS.split(bare, -1);
        if (legs.length == 2) {
            return reading(fourPositions(legs[0]), fourPositions(legs[1]));
        }
        String[] sides = bare.split("/", -1);
        if (legs.length > 2 || sides.length != 2) {
            return Optional.empty();
        }
        return reading(leg(sides[0]), leg(sides[1]));
    }

    private static Optional<RingReading> reading(Optional<RingLeg> left, Optional<RingLeg> right) {
        return left.flatMap(one -> right.map(other -> new RingReading(one, other)));
    }

    /** A leg with {@code /} at its joint. */
    private static Optional<RingLeg> fourPositions(String leg) {
        String[] positions = leg.split("/", -1);
        return positions.length == 2 ? parted(positions[0], positions[1]) : leg(leg);
    }

    private static Optional<RingLeg> leg(String leg) {
        if (leg.isEmpty() || leg.equals("?")) {
            return Optional.of(new RingLeg.NotSeen());
        }
        String[] positions = leg.split("-", -1);
        if (positions.length == 2) {
            return parted(positions[0], positions[1]);
        }
        return positions.length == 1 ? row(leg).map(RingLeg.Whole::new) : Optional.empty();
    }

    private static Optional<RingLeg> parted(String upper, String lower) {
        Optional<List<Ring>> above = row(upper);
        Optional<List<Ring>> below = row(lower);
        if (above.isEmpty() || below.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new RingLeg.Parted(
                upper.equals("?") ? Optional.empty() : above, lower.equals("?") ? Optional.empty() : below));
    }

    /** The rings of a position; empty if there is anything else. */
    static Optional<List<Ring>> row(String text) {
        List<Ring> row = new ArrayList<>();
        for (int at = 0; at < text.length(); at++) {
            char letter = text.charAt(at);
            if (letter == '('
                    && at + 2 < text.length()
                    && isLetter(text.charAt(at + 1))
                    && text.charAt(at + 2) == ')') {
                row.add(new Ring(text.charAt(at + 1), Ring.Certainty.UNSURE));
                at += 2;
            } else if (letter == Ring.UNREAD) {
                row.add(new Ring(letter, Ring.Certainty.UNREAD));
            } else if (letter == Ring.LOST) {
                row.add(new Ring(letter, Ring.Certainty.LOST));
            } else if (isLetter(letter)) {
                row.add(Ring.certain(letter));
            } else {
                return Optional.empty();
            }
        }
        return Optional.of(row);
    }

    private static boolean isLetter(char letter) {
        return (letter >= 'A' && letter <= 'Z') || (letter >= 'a' && letter <= 'z');
    }
}
