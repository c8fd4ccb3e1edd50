package org.ouzelbook.ui.app.leak;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.ouzelbook.ui.app.leak.WordWindow.Word;

/** A few words in a row that say something, by which a note is known again; one number for each such row. */
final class Shingle {
    /** So many words tell a note, if it has no more. */
    static final int SHORTEST = 3;

    /** So many words in a row tell any note. */
    static final int LONGEST = 5;

    private Shingle() {}

    /** {@return every run of so many words that says something} */
    static Stream<Long> all(List<Word> words, int size) {
        return IntStream.rangeClosed(0, words.size() - size)
                .mapToObj(first -> words.subList(first, first + size))
                .filter(Shingle::saysSomething)
                .map(Shingle::of);
    }

    /** {@return whether enough of the words have letters} */
    static boolean saysSomething(List<Word> words) {
        int telling = 0;
        for (Word word : words) {
            if (Character.isLetter(word.written().charAt(0)) && word.written().length() > 1) {
                telling++;
            }
        }
        return telling >= SHORTEST;
    }

    /** {@return the number of a row of words; small and large letters are the same} */
    static long of(List<Word> words) {
        long hash = words.size();
        for (Word word : words) {
            hash = hash * 0x100000001b3L ^ word.small().hashCode();
        }
        return hash * 0x9e3779b97f4a7c15L;
    }
}
