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
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ouzelbook.ui.app.Texts;

/**
 * Words that must not be read outside: names, labels, rings; and what stands in notes, as any five words in a row or a short note
 * whole. What the program itself writes, and the names of landmarks, rivers and reaches, anybody may read.
 */
final class PrivateText {
    /** A word or a number. */
    static final Pattern WORD = Pattern.compile("[\\p{L}\\p{N}]+");

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
    private final Set<String> known = new HashSet<>();
    private final Set<String> publicWords = new HashSet<>();
    private final Set<Long> shingles = new HashSet<>();

    private static Set<String> vocabulary() {
        Set<String> words = new HashSet<>();
        Texts.all().forEach(text -> words(text).forEach(word -> words.add(lower(word))));
        return Set.copyOf(words);
    }

    private static Set<Long> ownShingles() {
        Set<Long> found = new HashSet<>();
        Texts.all().forEach(text -> {
            List<String> words = words(text);
            for (int size = SHORTEST_NOTE; size <= SHINGLE; size++) {
                shingles(words, size).forEach(shingle -> found.add(shingle));
            }
        });
        return found;
    }

    private static List<String> words(String text) {
        return WORD.matcher(text).results().map(match -> match.group()).toList();
    }

    private static String lower(String text) {
        return text.toLowerCase(Locale.ROOT);
    }

    private static List<Long> shingles(List<String> words, int size) {
        List<Long> found = new ArrayList<>();
        for (int i = 0; i + size <= words.size(); i++) {
            List<String> some = words.subList(i, i + size);
            if (some.stream()
                            .filter(word -> Character.isLetter(word.charAt(0)) && word.length() > 1)
                            .count()
                    >= SHORTEST_NOTE) {
                long hash = size;
                for (String word : some) {
                    hash = hash * 0x100000001b3L ^ lower(word).hashCode();
                }
                found.add(hash * 0x9e3779b97f4a7c15L);
            }
        }
        return found;
    }

    /** Takes up names that anybody may read. */
    void addPublic(Collection<String> names) {
        for (String name : names) {
            known.add(lower(name.strip()));
            words(name).forEach(word -> publicWords.add(lower(word)));
        }
    }

    /** Takes up a label, a ring or a name; after every public name. */
    void addName(String name) {
        String written = name.strip();
        List<String> words = words(written);
        boolean hasLetter = written.chars().anyMatch(Character::isLetter);
        if (words.isEmpty()
                || known.contains(lower(written))
                || (hasLetter ? written.length() < 2 : written.length() < SHORTEST_NUMBER)) {
            return;
        }
        boolean ordinary =
                words.size() == 1 && written.chars().noneMatch(Character::isDigit) && isOrdinary(written, publicWords);
        boolean isShort = words.stream().mapToInt(String::length).sum() <= SHORT_NAME;
        add(new Phrase(words.stream().map(PrivateText::lower).toList(), written, isShort || ordinary, ordinary));
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
        }
    }

    /** Takes up a note, and the names in it: words with a capital that neither begin a sentence nor are public. */
    void addNote(String note) {
        List<String> words = words(note);
        int size = Math.min(SHINGLE, words.size());
        if (size >= SHORTEST_NOTE) {
            shingles(words, size).stream()
                    .filter(shingle -> !OWN_SHINGLES.contains(shingle))
                    .forEach(shingles::add);
        }
        Matcher word = WORD.matcher(note);
        while (word.find()) {
            String written = word.group();
            String before = note.substring(0, word.start());
            if (written.length() >= NAME_IN_NOTE
                    && Character.isUpperCase(written.charAt(0))
                    && written.substring(1).chars().allMatch(Character::isLowerCase)
                    && !before.isBlank()
                    && !SENTENCE_END.matcher(before).find()
                    && !VOCABULARY.contains(lower(written))
                    && !publicWords.contains(lower(written))) {
                add(new Phrase(List.of(lower(written)), written, true, false));
            }
        }
    }

    /**
     * Looks through a text.
     *
     * @param text the text
     * @param name hears where a private name stands, and which
     * @param note hears where words of a note stand, and the first of them
     */
    void in(String text, BiConsumer<Integer, String> name, BiConsumer<Integer, String> note) {
        List<int[]> spans = new ArrayList<>();
        List<String> words = new ArrayList<>();
        WORD.matcher(text).results().forEach(match -> {
            spans.add(new int[] {match.start(), match.end()});
            words.add(match.group());
        });
        for (int i = 0; i < words.size(); i++) {
            for (Phrase phrase : phrases.getOrDefault(lower(words.get(i)), List.of())) {
                if (stands(phrase, text, words, spans, i)) {
                    name.accept(spans.get(i)[0], phrase.written());
                }
            }
        }
        for (int size = SHORTEST_NOTE; size <= SHINGLE; size++) {
            for (int i = 0; i + size <= words.size(); i++) {
                List<Long> one = shingles(words.subList(i, i + size), size);
                if (!one.isEmpty() && shingles.contains(one.get(0))) {
                    note.accept(spans.get(i)[0], words.get(i));
                }
            }
        }
    }

    private static boolean stands(Phrase phrase, String text, List<String> words, List<int[]> spans, int at) {
        int last = at + phrase.words().size() - 1;
        if (last >= words.size()) {
            return false;
        }
        for (int i = 0; i < phrase.words().size(); i++) {
            if (!phrase.words().get(i).equals(lower(words.get(at + i)))) {
                return false;
            }
        }
        int start = spans.get(at)[0];
        int end = spans.get(last)[1];
        String found = squashed(text.substring(start, end));
        String wanted = squashed(core(phrase.written()));
        boolean same = phrase.asWritten() ? found.equals(wanted) : found.equalsIgnoreCase(wanted);
        return same && (!phrase.alone() || (isEdge(text, start - 1) && isEdge(text, end)));
    }

    private static boolean isEdge(String text, int at) {
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
