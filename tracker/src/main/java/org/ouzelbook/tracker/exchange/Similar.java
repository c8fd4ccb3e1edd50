package org.ouzelbook.tracker.exchange;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Names that look like one that nobody knows, to suggest. */
final class Similar {
    private static final int MOST = 3;

    private Similar() {}

    /** {@return up to three names, the most similar first; only those of which at least half of the letters agree} */
    static List<String> to(String wanted, Stream<String> names) {
        String key = wanted.toLowerCase(Locale.ROOT);
        record Near(String name, int edits) {}
        return names.map(name -> new Near(name, edits(key, name.toLowerCase(Locale.ROOT))))
                .filter(near -> near.edits * 2 <= Math.max(key.length(), near.name.length()))
                .sorted(Comparator.comparingInt(Near::edits).thenComparing(Near::name))
                .limit(MOST)
                .map(Near::name)
                .toList();
    }

    /**
     * {@return how many letters must be put in, taken out or changed to make one word of the other}
     *
     * <p>Source: R. A. Wagner and M. J. Fischer (1974), The string-to-string correction problem, J. ACM 21:168–173.
     */
    static int edits(String one, String other) {
        int[] previous = new int[other.length() + 1];
        for (int j = 0; j <= other.length(); j++) {
            previous[j] = j;
        }
        for (int i = 1; i <= one.length(); i++) {
            int[] current = new int[other.length() + 1];
            current[0] = i;
            for (int j = 1; j <= other.length(); j++) {
                int change = one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1;
                current[j] = Math.min(Math.min(current[j - 1], previous[j]) + 1, previous[j - 1] + change);
            }
            previous = current;
        }
        return previous[other.length()];
    }
}
