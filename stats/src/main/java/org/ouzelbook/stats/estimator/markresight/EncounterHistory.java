package org.ouzelbook.stats.estimator.markresight;

import java.util.List;

/**
 * On which occasions an animal was met.
 *
 * @param seen whether it was, by occasion
 * @param count how many animals have this history; 1 or more
 */
public record EncounterHistory(List<Boolean> seen, long count) {
    /**
     * Copies the list and checks the count.
     *
     * @throws IllegalArgumentException if the count is below 1
     */
    public EncounterHistory {
        seen = List.copyOf(seen);
        if (count < 1) {
            throw new IllegalArgumentException("A history is that of one animal or more, but the count was " + count);
        }
    }

    /**
     * {@return the history of some animals}
     *
     * @param digits a 1 for each occasion on which they were met, a 0 for each other
     * @param count how many animals
     * @throws IllegalArgumentException if there are other signs, or the count is below 1
     */
    public static EncounterHistory of(String digits, long count) {
        if (!digits.matches("[01]*")) {
            throw new IllegalArgumentException("A history is made of 0 and 1, but was " + digits);
        }
        return new EncounterHistory(
                digits.chars().mapToObj(digit -> digit == '1').toList(), count);
    }

    /** {@return the number of occasions} */
    public int occasions() {
        return seen.size();
    }

    /** {@return the first occasion on which it was met, from 0; the number of occasions if it never was} */
    int first() {
        return next(-1);
    }

    /** {@return the next occasion on which it was met after this one; the number of occasions if it never was} */
    int next(int occasion) {
        int next = occasion + 1;
        while (next < seen.size() && !seen.get(next)) {
            next++;
        }
        return next;
    }
}
