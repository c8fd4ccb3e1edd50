package org.ouzelbook.ui.app.leak;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Glides over the words of a text, a few neighbours in view at a time. It takes one step for each word, so every run of neighbours that is
 * no longer than the window comes into view whole, wherever it stands; and what is held does not grow with the text.
 */
final class WordWindow {
    private static final Pattern WORD = Pattern.compile("[\\p{L}\\p{N}]+");

    /**
     * A word or a number.
     *
     * @param written as it stands in the text
     * @param small in small letters
     * @param start where it begins
     * @param end behind its last letter
     */
    record Word(String written, String small, int start, int end) {}

    private final Matcher matcher;
    private final int size;
    private final List<Word> view = new ArrayList<>();

    /**
     * Stands before the first word.
     *
     * @param text the text
     * @param size how many words are in view, from 1; fewer at the end of the text
     */
    WordWindow(CharSequence text, int size) {
        matcher = WORD.matcher(text);
        this.size = size;
        fill();
    }

    private void fill() {
        while (view.size() < size && matcher.find()) {
            String written = matcher.group();
            view.add(new Word(written, written.toLowerCase(Locale.ROOT), matcher.start(), matcher.end()));
        }
    }

    /** {@return whether the text is over} */
    boolean isEmpty() {
        return view.isEmpty();
    }

    /** {@return the words in view, in their order; the list changes with the next step} */
    List<Word> view() {
        return view;
    }

    /** Goes on by a word. */
    void step() {
        view.remove(0);
        fill();
    }

    /** {@return every word of a short text} */
    static List<Word> all(String text) {
        return new WordWindow(text, Integer.MAX_VALUE).view;
    }
}
