package org.ouzelbook.ui.app.leak;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Glides over the words of a text, a few neighbours in view at a time. It takes one step for each word, so every run of neighbours that is
 * no longer than the window comes into view whole, wherever it stands; and what is held does not grow with the text.
 */
final class WordWindow {
    /**
     * A word or a number.
     *
     * @param written as it stands in the text
     * @param small in small letters
     * @param start where it begins
     * @param end behind its last letter
     */
    record Word(String written, String small, int start, int end) {}

    private final CharSequence text;
    private final int size;

    /** How far the text was read. */
    private int at;

    private final List<Word> view = new ArrayList<>();

    /**
     * Stands before the first word.
     *
     * @param text the text
     * @param size how many words are in view, from 1; fewer at the end of the text
     */
    WordWindow(CharSequence text, int size) {
        this.text = text;
        this.size = size;
        fill();
    }

    private void fill() {
        while (view.size() < size && goToWord()) {
            int start = at;
            at = endOfWord();
            String written = text.subSequence(start, at).toString();
            view.add(new Word(written, written.toLowerCase(Locale.ROOT), start, at));
        }
    }

    private boolean goToWord() {
        while (at < text.length() && !isOfWord(Character.codePointAt(text, at))) {
            at++;
        }
        return at < text.length();
    }

    private int endOfWord() {
        int end = at;
        while (end < text.length()) {
            int sign = Character.codePointAt(text, end);
            if (!isOfWord(sign)) {
                break;
            }
            end += Character.charCount(sign);
        }
        return end;
    }

    /** Whether a sign is a letter or a number of any kind: the general categories L and N of Unicode. */
    private static boolean isOfWord(int sign) {
        return switch (Character.getType(sign)) {
            case Character.UPPERCASE_LETTER,
                    Character.LOWERCASE_LETTER,
                    Character.TITLECASE_LETTER,
                    Character.MODIFIER_LETTER,
                    Character.OTHER_LETTER,
                    Character.DECIMAL_DIGIT_NUMBER,
                    Character.LETTER_NUMBER,
                    Character.OTHER_NUMBER -> true;
            default -> false;
        };
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
