package org.ouzelbook.tracker.place;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * One word of a typed line, and where it stands.
 *
 * @param text the word as typed
 * @param from index of its first character in the line
 * @param to index after its last character
 */
public record Word(String text, int from, int to) {

    /** {@return the word in lower case} */
    public String lower() {
        return text.toLowerCase(Locale.ROOT);
    }

    /**
     * {@return the words of a line: they end at blanks, semicolons, equals signs (each a word of its own), and at commas save
     * the decimal comma of a short number such as {@code 8,4}}
     *
     * @param line what was typed
     */
    public static List<Word> of(String line) {
        List<Word> words = new ArrayList<>();
        int start = -1;
        for (int i = 0; i <= line.length(); i++) {
            boolean ends = i == line.length() || endsWord(line, i, Math.max(start, 0));
            if (ends && start >= 0) {
                words.add(new Word(line.substring(start, i), start, i));
                start = -1;
            } else if (!ends && start < 0) {
                start = i;
            }
            if (i < line.length() && line.charAt(i) == '=') {
                words.add(new Word("=", i, i + 1));
            }
        }
        return List.copyOf(words);
    }

    private static boolean endsWord(String line, int at, int wordStart) {
        char c = line.charAt(at);
        if (c == ',') {
            return !isDecimalComma(line, at, wordStart);
        }
        return Character.isWhitespace(c) || Character.isSpaceChar(c) || c == ';' || c == '=';
    }

    private static boolean isDecimalComma(String line, int comma, int wordStart) {
        String before = line.substring(wordStart, comma);
        int end = comma + 1;
        while (end < line.length() && Character.isDigit(line.charAt(end))) {
            end++;
        }
        boolean shortBefore = before.matches("(?i)(km)?[-+−]?\\d{1,3}");
        boolean fraction = end > comma + 1 && !line.substring(end).matches("(?s)[.,:]\\d.*");
        return shortBefore && fraction && !(before.matches("\\d{1,2}") && end - comma - 1 == 4);
    }

    /**
     * {@return names and words in the form in which they are compared: lower case, without accents, points and apostrophes,
     * single blanks}
     *
     * @param text a name or words
     */
    public static String plain(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .toLowerCase(Locale.ROOT)
                .replaceAll("['’‘`.()\"]", "")
                .replaceAll("[\\s\\p{Z}\\-‐–_/,]+", " ")
                .strip();
    }

    static String joined(List<Word> words) {
        return words.stream().map(Word::text).collect(Collectors.joining(" "));
    }
}
