package org.ouzelbook.ui.app;

import java.util.Locale;

/** Words made into sentences, the same in the window and in the report. */
public final class TrendWords {
    private TrendWords() {}

    /**
     * {@return the words as a sentence: a capital at the start, a full stop at the end}
     *
     * @param words some words
     */
    public static String sentence(String words) {
        String text = sentenceCase(words);
        return text.isBlank() || text.endsWith(".") || text.endsWith("?") ? text : text + ".";
    }

    /**
     * {@return the words with a capital at the start}
     *
     * @param words some words
     */
    public static String sentenceCase(String words) {
        if (words.isEmpty()) {
            return words;
        }
        int first = words.offsetByCodePoints(0, 1);
        return words.substring(0, first).toUpperCase(Locale.ENGLISH) + words.substring(first);
    }
}
