package org.ouzelbook.ui.cli;

import java.util.Collection;
import java.util.List;

/** Which of the words that would have been understood was meant by one that was not. */
final class NearWords {
    private static final int SLIPS = 2;

    private NearWords() {}

    /**
     * {@return the known words that are at most two slips of the finger away, and those that begin like it; at most three}
     *
     * @param typed what was typed
     * @param known what would have been understood
     */
    static List<String> of(String typed, Collection<String> known) {
        return known.stream()
                .filter(word -> slips(typed, word) <= Math.min(SLIPS, typed.length() / 2)
                        || (typed.length() > 1 && word.startsWith(typed)))
                .limit(3)
                .toList();
    }

    /** Letters left out, put in, changed, or swapped with their neighbour, that lead from one word to the other. */
    private static int slips(String one, String other) {
        int[][] slips = new int[one.length() + 1][other.length() + 1];
        for (int i = 0; i <= one.length(); i++) {
            for (int j = 0; j <= other.length(); j++) {
                if (i == 0 || j == 0) {
                    slips[i][j] = i + j;
                    continue;
                }
                int changed = one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1;
                slips[i][j] = Math.min(slips[i - 1][j - 1] + changed, Math.min(slips[i - 1][j], slips[i][j - 1]) + 1);
                boolean swapped = i > 1
                        && j > 1
                        && one.charAt(i - 1) == other.charAt(j - 2)
                        && one.charAt(i - 2) == other.charAt(j - 1);
                if (swapped) {
                    slips[i][j] = Math.min(slips[i][j], slips[i - 2][j - 2] + 1);
                }
            }
        }
        return slips[one.length()][other.length()];
    }
}
