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
import org.ouzelbook.ui.app.leak.WordWindow.Word;

/**
 * Words that must not be read outside: names, labels, rings; and what stands in notes, as any five words in a row or a short note
 * whole. What the program itself writes, and the names of landmarks, rivers and reaches, anybody may read.
 */
final class PrivateText {
    private static final Pattern SENTENCE_END = Pattern.compile("[.!?:;]\\s*$");

    /** What follows a name at the beginning of a sentence. */
    private static final Pattern SAYS = Pattern.compile(
            "(?:['’]s\\b|\\s+(?:saw|says|said|told|tells|reports|reported|found|phoned|rang|thinks|showed)\\b|\\s+\\p{Lu}\\p{Ll}+).*",
            Pattern.DOTALL);

    /** What may stand between the words of a name, the parts of a ring, and the halves of a word at the end of a line. */
    private static final Pattern IN_A_NAME = Pattern.compile("\\s+|\\s*[,+/_'’`\\p{Pd}]\\s*|\\.");

    private static final Pattern BETWEEN_CELLS = Pattern.compile("\"?(?:[,\\t]|,\\s*\\n)\"?");
    private static final Pattern IN_A_RING = Pattern.compile("[\\s._\\p{Pd}]{1,2}");
    private static final Pattern HYPHENATED = Pattern.compile("\\p{Pd}[^\\S\\n]*\\r?\\n\\s*");
    private static final Pattern IN_COLOURS = Pattern.compile("[\\s,;.\\p{Pd}]+");
    private static final int MOST_JOINED = 12;
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

    /** A private word: how it is written, and when it counts. */
    private record Phrase(List<String> words, String written, boolean asWritten, boolean alone) {
        String joined() {
            return String.join("", words);
        }
    }

    /** By their letters and digits alone, since the same may stand in one word or in several. */
    private final Map<String, List<Phrase>> phrases = new HashMap<>();

    private final Set<String> beginnings = new HashSet<>();
    private int longestJoined;
    private int longest = Shingle.LONGEST;
    private final Set<String> known = new HashSet<>();
    private final Set<String> publicWords = new HashSet<>();
    private final Set<Long> shingles = new HashSet<>();

    private static String lower(String text) {
        return text.toLowerCase(Locale.ROOT);
    }

    /** Takes up names that anybody may read. */
    void addPublic(Collection<String> names) {
        for (String given : names) {
            String name = Spelling.folded(given);
            known.add(lower(name.strip()));
            WordWindow.all(name).forEach(word -> publicWords.add(word.small()));
        }
    }

    /** Takes up a label, a ring or a name; after every public name. */
    void addName(String name) {
        String written = Spelling.folded(name).strip();
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

    /** Takes up a person’s name, the surname first as well, and the surname by itself if it is no ordinary word; after every public name. */
    void addPerson(String name) {
        addName(name);
        String written = Spelling.folded(name).strip();
        List<Word> words = WordWindow.all(written);
        if (words.size() < 2 || written.indexOf(',') >= 0 || known.contains(lower(written))) {
            return;
        }
        Word last = words.get(words.size() - 1);
        addName(last.written() + " " + written.substring(0, last.start()).strip());
        if (isOneName(last) && !isOrdinary(last.written(), publicWords)) {
            add(new Phrase(List.of(last.small()), last.written(), true, false));
            add(new Phrase(List.of(last.small()), last.written().toUpperCase(Locale.ROOT), true, false));
        }
    }

    private static boolean isOneName(Word word) {
        String written = word.written();
        return written.length() >= NAME_IN_NOTE
                && Character.isUpperCase(written.charAt(0))
                && written.substring(1).chars().allMatch(Character::isLowerCase);
    }

    /** A word that stands in the program’s own texts, in a landmark’s name, or in any field guide to rivers. */
    private static boolean isOrdinary(String written, Set<String> publicWords) {
        String word = lower(written);
        return OwnTexts.holds(word) || publicWords.contains(word) || WATER_WORDS.contains(word);
    }

    private void add(Phrase phrase) {
        String joined = phrase.joined();
        List<Phrase> alike = phrases.computeIfAbsent(joined, word -> new ArrayList<>(1));
        if (!alike.contains(phrase)) {
            alike.add(phrase);
            longest = Math.max(longest, Math.max(phrase.words().size(), Math.min(MOST_JOINED, joined.length())));
            longestJoined = Math.max(longestJoined, joined.length());
            for (int end = 1; end <= joined.length(); end++) {
                beginnings.add(joined.substring(0, end));
            }
        }
    }

    /**
     * Takes up a note, and the names in it: words with a capital that are not public and do not merely begin a sentence.
     */
    void addNote(String given) {
        String note = Spelling.folded(given);
        List<Word> words = WordWindow.all(note);
        int size = Math.min(Shingle.LONGEST, words.size());
        if (size >= Shingle.SHORTEST) {
            Shingle.all(words, size).filter(shingle -> !OwnTexts.holds(shingle)).forEach(shingles::add);
        }
        for (Word word : words) {
            String before = note.substring(0, word.start());
            boolean begins = before.isBlank() || SENTENCE_END.matcher(before).find();
            if (isOneName(word)
                    && (!begins || SAYS.matcher(note.substring(word.end())).matches())
                    && !OwnTexts.holds(word.small())
                    && !publicWords.contains(word.small())) {
                add(new Phrase(List.of(word.small()), word.written(), true, false));
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
        int told = 0;
        for (WordWindow window = new WordWindow(text, longest); !window.isEmpty(); window.step()) {
            List<Word> words = window.view();
            Word first = words.get(0);
            if (first.start() >= told) {
                told = names(text, words, name);
            }
            if (beginsANote(words)) {
                note.accept(first.start(), first.written());
            }
        }
    }

    private boolean beginsANote(List<Word> words) {
        for (int size = Shingle.SHORTEST; size <= Math.min(Shingle.LONGEST, words.size()); size++) {
            List<Word> some = words.subList(0, size);
            if (Shingle.saysSomething(some) && shingles.contains(Shingle.of(some))) {
                return true;
            }
        }
        return false;
    }

    /**
     * Tries the first word by itself and with those that follow, as long as a secret may begin so.
     *
     * @return the end of what was told, so that a surname is not told again behind its name; 0 if nothing was
     */
    private int names(CharSequence text, List<Word> words, BiConsumer<Integer, String> name) {
        int told = 0;
        StringBuilder joined = new StringBuilder();
        for (int size = 1; size <= words.size(); size++) {
            joined.append(words.get(size - 1).small());
            if (joined.length() > longestJoined || !beginnings.contains(joined.toString())) {
                break;
            }
            List<Word> some = words.subList(0, size);
            for (Phrase phrase : phrases.getOrDefault(joined.toString(), List.of())) {
                if (stands(phrase, text, some)) {
                    name.accept(some.get(0).start(), phrase.written());
                    told = some.get(size - 1).end();
                }
            }
        }
        return told;
    }

    private static boolean stands(Phrase phrase, CharSequence text, List<Word> words) {
        int start = words.get(0).start();
        int end = words.get(words.size() - 1).end();
        if (areInSeveralCells(text, words) && !(isEdge(text, start - 1) && isEdge(text, end))) {
            return false;
        }
        String found = squashed(text.subSequence(start, end).toString());
        String wanted = squashed(core(phrase.written()));
        if (phrase.alone()) {
            return found.equals(wanted) && isEdge(text, start - 1) && isEdge(text, end);
        }
        if (phrase.asWritten()) {
            return found.equals(wanted)
                    || (words.size() > 1
                            && areJoined(HYPHENATED, text, words)
                            && found.replaceAll("\\p{Pd} ", "").equals(wanted))
                    || (wanted.length() >= SHORT_NAME
                            && hasLetterAndDigit(wanted)
                            && found.replaceAll("[ _\\p{Pd}]", "").equals(wanted));
        }
        return found.equalsIgnoreCase(wanted) || isOtherwiseWritten(found, wanted, text, words);
    }

    /** The same letters and digits with other signs between them: {@code AB-12345}, {@code Ina_Brekke}, {@code R/Nm/W}. */
    private static boolean isOtherwiseWritten(String found, String wanted, CharSequence text, List<Word> words) {
        if (hasLetterAndDigit(wanted)) {
            return areJoined(IN_A_RING, text, words);
        }
        if (wanted.chars().anyMatch(Character::isDigit)) {
            return false;
        }
        if (wanted.indexOf('/') >= 0) {
            return IN_COLOURS
                    .matcher(found)
                    .replaceAll("")
                    .equalsIgnoreCase(IN_COLOURS.matcher(wanted).replaceAll(""));
        }
        return areJoined(WordWindow.all(wanted).size() > 1 ? IN_A_NAME : HYPHENATED, text, words);
    }

    private static boolean hasLetterAndDigit(String text) {
        return text.chars().anyMatch(Character::isDigit) && text.chars().anyMatch(Character::isLetter);
    }

    private static boolean areJoined(Pattern sign, CharSequence text, List<Word> words) {
        for (int i = 1; i < words.size(); i++) {
            CharSequence between =
                    text.subSequence(words.get(i - 1).end(), words.get(i).start());
            if (!sign.matcher(between).matches()) {
                return false;
            }
        }
        return true;
    }

    /** The end of one cell and the beginning of the next make no name; whole cells may, as those of a surname and a first name. */
    private static boolean areInSeveralCells(CharSequence text, List<Word> words) {
        for (int i = 1; i < words.size(); i++) {
            CharSequence between =
                    text.subSequence(words.get(i - 1).end(), words.get(i).start());
            if (BETWEEN_CELLS.matcher(between).matches()) {
                return true;
            }
        }
        return false;
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
