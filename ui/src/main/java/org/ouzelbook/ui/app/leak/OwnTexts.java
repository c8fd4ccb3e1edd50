package org.ouzelbook.ui.app.leak;

import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.leak.WordWindow.Word;

/** What the program itself writes: no word of it is taken for a name, and no row of its words for a note. */
final class OwnTexts {
    private static final Set<String> WORDS = ConcurrentHashMap.newKeySet();
    private static final Set<Long> SHINGLES = ConcurrentHashMap.newKeySet();

    static {
        Texts.all().forEach(OwnTexts::learn);
    }

    private OwnTexts() {}

    private static void learn(String text) {
        List<Word> words = WordWindow.all(Spelling.folded(text));
        words.forEach(word -> WORDS.add(word.small()));
        IntStream.rangeClosed(Shingle.SHORTEST, Shingle.LONGEST)
                .boxed()
                .flatMap(size -> Shingle.all(words, size))
                .forEach(SHINGLES::add);
    }

    /** {@return whether the program writes a word, given in small letters} */
    static boolean holds(String word) {
        return WORDS.contains(word);
    }

    /** {@return whether it writes the words of a {@link Shingle} in a row} */
    static boolean holds(long shingle) {
        return SHINGLES.contains(shingle);
    }
}
