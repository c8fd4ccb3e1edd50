package org.ouzelbook.tracker.rings;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What was seen of the rings on one leg, each position read from the top down. */
public sealed interface RingLeg permits RingLeg.NotSeen, RingLeg.Whole, RingLeg.Parted {

    /** {@return the rings that were seen} */
    Stream<Ring> rings();

    /** {@return whether nothing of the leg is in doubt} */
    boolean isCertain();

    /** Whether a bird with these letters above and below the joint may have been read so. */
    boolean fits(String upper, String lower);

    /** The leg was not seen. */
    record NotSeen() implements RingLeg {
        @Override
        public Stream<Ring> rings() {
            return Stream.empty();
        }

        @Override
        public boolean isCertain() {
            return false;
        }

        @Override
        public boolean fits(String upper, String lower) {
            return true;
        }

        @Override
        public String toString() {
            return "?";
        }
    }

    /**
     * The leg was read without saying where its joint is.
     *
     * @param row its rings
     */
    record Whole(List<Ring> row) implements RingLeg {
        /** Copies the list. */
        public Whole {
            row = List.copyOf(row);
        }

        @Override
        public Stream<Ring> rings() {
            return row.stream();
        }

        @Override
        public boolean isCertain() {
            return certain(row);
        }

        @Override
        public boolean fits(String upper, String lower) {
            return RingLeg.fits(row, upper + lower);
        }

        @Override
        public String toString() {
            return written(row);
        }
    }

    /**
     * The leg was read above and below its joint.
     *
     * @param upper rings above; empty if that was not seen
     * @param lower rings below; empty if that was not seen
     */
    record Parted(Optional<List<Ring>> upper, Optional<List<Ring>> lower) implements RingLeg {
        /** Copies the lists. */
        public Parted {
            upper = upper.map(List::copyOf);
            lower = lower.map(List::copyOf);
        }

        @Override
        public Stream<Ring> rings() {
            return Stream.of(upper, lower).flatMap(Optional::stream).flatMap(List::stream);
        }

        @Override
        public boolean isCertain() {
            return upper.filter(RingLeg::certain).isPresent()
                    && lower.filter(RingLeg::certain).isPresent();
        }

        @Override
        public boolean fits(String above, String below) {
            return upper.map(row -> RingLeg.fits(row, above)).orElse(true)
                    && lower.map(row -> RingLeg.fits(row, below)).orElse(true);
        }

        @Override
        public String toString() {
            return upper.map(RingLeg::written).orElse("?")
                    + "-"
                    + lower.map(RingLeg::written).orElse("?");
        }
    }

    private static boolean certain(List<Ring> row) {
        return row.stream().allMatch(ring -> ring.certainty() == Ring.Certainty.CERTAIN);
    }

    private static boolean fits(List<Ring> row, String given) {
        if (row.size() != given.length()) {
            return false;
        }
        for (int i = 0; i < row.size(); i++) {
            if (!row.get(i).mayBe(given.charAt(i))) {
                return false;
            }
        }
        return true;
    }

    private static String written(List<Ring> row) {
        return row.stream().map(Ring::toString).collect(Collectors.joining());
    }
}
