package org.ouzelbook.ui.app.leak;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.leak.WordWindow.Word;

/**
 * Words that must not be read outside: names, labels, rings; and what stands in notes, as any five words in a row or a short note
 * whole. What the program itself writes, and the names of landmarks, rivers and reaches, anybody may read.
 */
final class PrivateText {
    private static final Pattern SENTENCE_END = Pattern.compile("[.!?:;]\\s*$");
    private static final int SHINGLE = 5;
    private static final int SHORTEST_NOTE = 3;
    private static final int SHORT_NAME = 3;
    private static final int SHORTEST_NUMBER = 5;
    private static final int NAME_IN_NOTE = 4;

    /** Separators of cells and lines: a word between two of them is alone. */
    private static final String EDGES = "\n\t,;|\"\u001f";

    /** Words of the water that are also people’s names. */
    private static final Set<String> WATER_WORDS = Set.of(
            "beck", "brook", "burn", "dale", "dell", "field", "ford", "glen", "hill", "lake", "marsh", "mill", "pool",
            "reed", "stone", "wood", "woods", "wells", "bank", "banks", "bridge", "bridges", "rivers", "waters",
            "heath", "moor");

    private static final Set<String> VOCABULARY = vocabulary();
    private static final Set<Long> OWN_SHINGLES = ownShingles();

    /** A private word: how it is written, and when it counts. */
    private record Phrase(List<String> words, String written, boolean asWritten, boolean alone) {}

    private final Map<String, List<Phrase>> phrases = new HashMap<>();
    private int longest = SHINGLE;
    private final Set<String> known = new HashSet<>();
    private final Set<String> publicWords = new HashSet<>();
    private final Set<Long> shingles = new HashSet<>();

    private static Set<String> vocabulary() {
        Set<String> words = new HashSet<>();
        Texts.all().forEach(text -> WordWindow.all(text).forEach(word -> words.add(word.small())));
        return Set.copyOf(words);
    }

    private static Set<Long> ownShingles() {
        Set<Long> found = new HashSet<>();
        Texts.all().forEach(text -> {
            List<Word> words = WordWindow.all(text);
            for (int size = SHORTEST_NOTE; size <= SHINGLE; size++) {
                shingles(words, size).forEach(shingle -> found.add(shingle));
            }
        });
        return found;
    }

    private static String lower(String text) {
        return text.toLowerCase(Locale.ROOT);
    }

    /** {@return every run of so many words that says something} */
    private static List<Long> shingles(List<Word> words, int size) {
        return IntStream.rangeClosed(0, words.size() - size)
                .mapToObj(first -> words.subList(first, first + size))
                .filter(PrivateText::saysSomething)
                .map(PrivateText::shingle)
                .toList();
    }

    private static boolean saysSomething(List<Word> words) {
        int telling = 0;
        for (Word word : words) {
            if (Character.isLetter(word.written().charAt(0)) && word.written().length() > 1) {
                telling++;
            }
        }
        return telling >= SHORTEST_NOTE;
    }

    private static long shingle(List<Word> words) {
        long hash = words.size();
        for (Word word : words) {
            hash = hash * 0x100000001b3L ^ word.small().hashCode();
        }
        return hash * 0x9e3779b97f4a7c15L;
    }

    /** Takes up names that anybody may read. */
    void addPublic(Collection<String> names) {
        for (String name : names) {
            known.add(lower(name.strip()));
            WordWindow.all(name).forEach(word -> publicWords.add(word.small()));
        }
    }

    /** Takes up a label, a ring or a name; after every public name. */
    void addName(String name) {
        String written = name.strip();
        List<Word> words = WordWindow.all(written);
        boolean hasLetter = written.chars().anyMatch(Character::isLetter);
        if (words.isEmpty()
                || known.contains(lower(written))
                || (hasLetter ? written.length() < 2 : written.length() < SHORTEST_NUMBER)) {
            return;
        }
        boolean ordinary =
                words.size() == 1 && written.chars().noneMatch(Character::isDigit) && isOrdinary(written, publicWords);
        boolean isShort =
                words.stream().mapToInt(word -> word.written().length()).sum() <= SHORT_NAME;
        add(new Phrase(words.stream().map(Word::small).toList(), written, isShort || ordinary, ordinary));
    }

    /** A word that stands in the program’s own texts, in a landmark’s name, or in any field guide to rivers. */
    private static boolean isOrdinary(String written, Set<String> publicWords) {
        String word = lower(written);
        return VOCABULARY.contains(word) || publicWords.contains(word) || WATER_WORDS.contains(word);
    }

    private void add(Phrase phrase) {
        List<Phrase> alike = phrases.computeIfAbsent(phrase.words().get(0), word -> new ArrayList<>());
        if (!alike.contains(phrase)) {
            alike.add(phrase);
            longest = Math.max(longest, phrase.words().size());
        }
    }

    /** Takes up a note, and the names in it: words with a capital that neither begin a sentence nor are public. */
    void addNote(String note) {
        List<Word> words = WordWindow.all(note);
        int size = Math.min(SHINGLE, words.size());
        if (size >= SHORTEST_NOTE) {
            shingles(words, size).stream()
                    .filter(shingle -> !OWN_SHINGLES.contains(shingle))
                    .forEach(shingles::add);
        }
        for (Word word : words) {
            String written = word.written();
            String before = note.substring(0, word.start());
            if (written.length() >= NAME_IN_NOTE
                    && Character.isUpperCase(written.charAt(0))
                    && written.substring(1).chars().allMatch(Character::isLowerCase)
                    && !before.isBlank()
                    && !SENTENCE_END.matcher(before).find()
                    && !VOCABULARY.contains(word.small())
                    && !publicWords.contains(word.small())) {
                add(new Phrase(List.of(word.small()), written, true, false));
            }
        }
    }

    /**
     * Looks through a text once, from word to word.
     *
     * @param text the text
     * @param name hears where a private name stands, and which
     * @param note hears where words of a note stand, and the first of them
     */
    void in(CharSequence text, BiConsumer<Integer, String> name, BiConsumer<Integer, String> note) {
        for (WordWindow window = new WordWindow(text, longest); !window.isEmpty(); window.step()) {
            List<Word> words = window.view();
            Word first = words.get(0);
            for (Phrase phrase : phrases.getOrDefault(first.small(), List.of())) {
                if (stands(phrase, text, words)) {
                    name.accept(first.start(), phrase.written());
                }
            }
            if (beginsANote(words)) {
                note.accept(first.start(), first.written());
            }
        }
    }

    private boolean beginsANote(List<Word> words) {
        for (int size = SHORTEST_NOTE; size <= Math.min(SHINGLE, words.size()); size++) {
            List<Word> some = words.subList(0, size);
            if (saysSomething(some) && shingles.contains(shingle(some))) {
                return true;
            }
        }
        return false;
    }

    private static boolean stands(Phrase phrase, CharSequence text, List<Word> words) {
        int size = phrase.words().size();
        if (size > words.size()) {
            return false;
        }
        for (int i = 0; i < size; i++) {
            if (!phrase.words().get(i).equals(words.get(i).small())) {
                return false;
            }
        }
        int start = words.get(0).start();
        int end = words.get(size - 1).end();
        String found = squashed(text.subSequence(start, end).toString());
        String wanted = squashed(core(phrase.written()));
        boolean same = phrase.asWritten() ? found.equals(wanted) : found.equalsIgnoreCase(wanted);
        return same && (!phrase.alone() || (isEdge(text, start - 1) && isEdge(text, end)));
    }

    private static boolean isEdge(CharSequence text, int at) {
        return at < 0 || at >= text.length() || EDGES.indexOf(text.charAt(at)) >= 0;
    }

    /** From the first letter or digit to the last. */
    private static String core(String written) {
        return written.replaceAll("^[^\\p{L}\\p{N}]+|[^\\p{L}\\p{N}]+$", "");
    }

    private static String squashed(String text) {
        return text.replaceAll("\\s+", " ");
    }
}
