package org.ouzelbook.stats.estimator.segmentation;

import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;

/**
 * Lines of water that meet, in one season: a river, the tributaries that join it, and theirs.
 *
 * @param branches the lines; the first joins none of the others, and each other stands after the one that it joins
 * @param links what is known of places on two lines, one of which joins the other
 */
public record SurveyedTree(List<Branch> branches, List<Link> links) {
    /**
     * Copies the lists and checks that the lines make one tree.
     *
     * @throws IllegalArgumentException if they do not, or a link names two lines that do not meet
     */
    public SurveyedTree {
        branches = List.copyOf(branches);
        links = List.copyOf(links);
        for (int i = 0; i < branches.size(); i++) {
            Optional<Mouth> mouth = branches.get(i).mouth();
            boolean placed = mouth.isEmpty()
                    ? i == 0
                    : mouth.get().branch() >= 0 && mouth.get().branch() < i;
            if (!placed) {
                throw new IllegalArgumentException("Line " + i + " of the tree joins none before it");
            }
        }
        for (Link link : links) {
            boolean meet = link.branch() > 0
                    && link.branch() < branches.size()
                    && branches.get(link.branch()).mouth().orElseThrow().branch() == link.receiving();
            if (!meet) {
                throw new IllegalArgumentException("No tributary and the line that it joins: " + link);
            }
        }
    }

    /**
     * {@return a line that no other joins}
     *
     * @param line the line
     */
    public static SurveyedTree of(SurveyedLine line) {
        List<Long> days = LongStream.range(0, line.visits().size()).boxed().toList();
        return new SurveyedTree(List.of(new Branch(line, days, Optional.empty())), List.of());
    }

    /**
     * One line of the tree.
     *
     * @param line the line; that of a tributary begins where it joins another
     * @param days the day of each visit, counted from any one; visits of two lines on one day are one visit
     * @param mouth where it joins another
     */
    public record Branch(SurveyedLine line, List<Long> days, Optional<Mouth> mouth) {
        /**
         * Copies the list.
         *
         * @throws IllegalArgumentException if a visit has no day, or two have the same
         */
        public Branch {
            days = List.copyOf(days);
            if (days.size() != line.visits().size() || days.stream().distinct().count() < days.size()) {
                throw new IllegalArgumentException("Each visit needs a day of its own, but the days were " + days);
            }
        }
    }

    /**
     * Where a tributary joins another line.
     *
     * @param branch which of the lines it joins
     * @param position where, in metres along that line
     */
    public record Mouth(int branch, double position) {}

    /** Something known of a tributary and the line that it joins together. */
    public sealed interface Link {
        /** {@return the tributary} */
        int branch();

        /** {@return the line that it joins} */
        int receiving();
    }

    /**
     * Something known of a place on a tributary and one on the line that it joins.
     *
     * @param branch the tributary
     * @param position the place on it, in metres
     * @param receiving the line that it joins
     * @param other the place on that line, in metres
     * @param apart whether they hardly lie in one territory; otherwise they hardly lie in two, and each limit of a territory
     *     between them weighs the factor
     * @param factor weight of a map that this speaks against, or of a limit; 0 to 1
     */
    public record Places(int branch, double position, int receiving, double other, boolean apart, double factor)
            implements Link {
        /**
         * Checks the factor.
         *
         * @throws IllegalArgumentException if it is not between 0 and 1
         */
        public Places {
            if (!(factor >= 0 && factor <= 1)) {
                throw new IllegalArgumentException("A factor is between 0 and 1, but was " + factor);
            }
        }
    }

    /**
     * Two birds of one day on a tributary and the line that it joins that were seen at one time, and are no pair.
     *
     * @param branch the tributary
     * @param one a registration of it
     * @param receiving the line that it joins
     * @param other a registration of that line
     */
    public record Birds(int branch, Registration one, int receiving, Registration other) implements Link {}
}
