package org.ouzelbook.tracker.place;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.ouzelbook.tracker.domain.Landmark;

/** The names and aliases of the landmarks, whole or by the beginning of each word. */
final class LandmarkNames {
    private static final int SHORTEST_BEGINNING = 2;
    private final Map<String, Set<Landmark>> byName = new LinkedHashMap<>();
    private int mostWords = 1;

    LandmarkNames(List<Landmark> landmarks) {
        landmarks.forEach(this::add);
    }

    void add(Landmark landmark) {
        add(landmark.name(), landmark);
        landmark.aliases().forEach(alias -> add(alias, landmark));
    }

    private void add(String name, Landmark landmark) {
        String plain = Word.plain(name);
        if (!plain.isEmpty()) {
            byName.computeIfAbsent(plain, key -> new LinkedHashSet<>()).add(landmark);
            mostWords = Math.max(mostWords, plain.split(" ").length);
        }
    }

    /**
     * Landmarks that words may mean.
     *
     * @param words how many words they took
     * @param landmarks the landmarks of that name; several if it is ambiguous
     */
    record Match(int words, List<Landmark> landmarks) {}

    /** {@return the longest run of words from the start that is a whole name; no landmarks if there is none} */
    Match whole(List<Word> words) {
        for (int count = Math.min(mostWords, words.size()); count > 0; count--) {
            Set<Landmark> named = byName.get(Word.plain(Word.joined(words.subList(0, count))));
            if (named != null) {
                return new Match(count, List.copyOf(named));
            }
        }
        return new Match(0, List.of());
    }

    /**
     * {@return the longest run of words from the start that begin a name, word by word: {@code mill br} for Mill Bridge}
     *
     * @param words the words
     * @param meansSomethingElse words that begin no name
     */
    Match beginning(List<Word> words, Predicate<String> meansSomethingElse) {
        Match longest = new Match(0, List.of());
        for (int count = 1; count <= Math.min(mostWords, words.size()); count++) {
            if (meansSomethingElse.test(words.get(count - 1).lower())) {
                break;
            }
            List<Landmark> begun = begunBy(Word.plain(Word.joined(words.subList(0, count))));
            if (begun.isEmpty()) {
                break;
            }
            longest = new Match(count, begun);
        }
        return longest;
    }

    private List<Landmark> begunBy(String plain) {
        Set<Landmark> begun = new LinkedHashSet<>();
        byName.forEach((name, landmarks) -> {
            if (begins(plain.split(" "), name.split(" "))) {
                begun.addAll(landmarks);
            }
        });
        return List.copyOf(begun);
    }

    private static boolean begins(String[] typed, String[] name) {
        if (typed.length > name.length) {
            return false;
        }
        for (int i = 0; i < typed.length; i++) {
            boolean number = !typed[i].isEmpty() && Character.isDigit(typed[i].charAt(0));
            boolean fits = (number || typed[i].length() < SHORTEST_BEGINNING)
                    ? name[i].equals(typed[i])
                    : name[i].startsWith(typed[i]);
            if (!fits) {
                return false;
            }
        }
        return true;
    }

    /** {@return landmarks whose name differs from the text by a slip or two of the keyboard} */
    List<Landmark> similar(String text) {
        String plain = Word.plain(text);
        Set<Landmark> similar = new LinkedHashSet<>();
        byName.forEach((name, landmarks) -> {
            if (slips(plain, name) <= Math.max(1, Math.min(2, name.length() / 4))) {
                similar.addAll(landmarks);
            }
        });
        return new ArrayList<>(similar);
    }

    /** The edit distance of V. I. Levenshtein (1966), Soviet Physics Doklady 10:707–710. */
    private static int slips(String one, String other) {
        int[] row = new int[other.length() + 1];
        for (int j = 0; j < row.length; j++) {
            row[j] = j;
        }
        for (int i = 1; i <= one.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j < row.length; j++) {
                int change = diagonal + (one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(change, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[row.length - 1];
    }
}
