package org.ouzelbook.ui.app.leak;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Finds landmarks that stand in one sentence, row or feature with a word for a nest. Such a word within a landmark’s own name, as in
 * Nest Bridge, counts only where birds nest at that landmark.
 */
final class LandmarkSearch {
    private static final Set<String> NEST_WORDS = Set.of(
            "nest",
            "nests",
            "nesting",
            "nestbox",
            "nestboxes",
            "brood",
            "broods",
            "eggs",
            "clutch",
            "chicks",
            "nestling",
            "nestlings",
            "fledged",
            "fledglings",
            "roost",
            "roosts");

    private static final Pattern END = Pattern.compile("[\\n\\u001f]|(?<=[.!?])\\s|(?<=\\}),?\\s*(?=\\{)");
    private static final Pattern SPACE = Pattern.compile("[\\s_\\p{Pd}]+");
    private static final int SHORTEST = 4;

    /** A name of a landmark, and how it is found. */
    private record Mark(String name, Pattern pattern) {}

    /** Where a landmark’s name stands in a sentence. */
    private record Named(Mark mark, int start, int end) {}

    /** Hears of a landmark and a word for a nest, which may stand in the landmark’s own name. */
    interface Hit {
        void at(int sentence, String landmark, String nestWord, boolean inItsName);
    }

    /** Many rivers have a Mill Bridge. */
    private final Set<String> names = new HashSet<>();

    /** Names in which a word for a nest tells the truth. */
    private final Set<String> telling = new HashSet<>();

    /** By its first word, which stands whole wherever the name does; blank for a name that begins with a sign. */
    private final Map<String, List<Mark>> landmarks = new HashMap<>();

    /**
     * Takes up a landmark; a short name is left out, since it may be any word.
     *
     * @param given its name
     * @param hasNests whether birds nest there
     */
    void add(String given, boolean hasNests) {
        String name = Spelling.folded(given).strip();
        if (hasNests) {
            telling.add(name);
        }
        List<WordWindow.Word> words = WordWindow.all(name);
        boolean startsWithAWord = !words.isEmpty() && words.get(0).start() == 0;
        String first = startsWithAWord ? folded(words.get(0).written()) : "";
        if (name.length() >= SHORTEST && names.add(name)) {
            landmarks
                    .computeIfAbsent(first, word -> new ArrayList<>())
                    .add(new Mark(
                            name,
                            Pattern.compile(
                                    "(?<![\\p{L}\\p{N}])" + anySpace(name) + "(?![\\p{L}\\p{N}])",
                                    Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE)));
        }
    }

    private static String anySpace(String name) {
        return SPACE.splitAsStream(name).map(Pattern::quote).collect(Collectors.joining(SPACE.pattern()));
    }

    /** {@return a word as patterns compare it, letter by letter and whatever its case} */
    private static String folded(String word) {
        StringBuilder folded = new StringBuilder();
        word.codePoints()
                .map(letter -> Character.toLowerCase(Character.toUpperCase(letter)))
                .forEach(folded::appendCodePoint);
        return folded.toString();
    }

    /**
     * Looks through a text, sentence by sentence.
     *
     * @param text the text
     * @param hit hears where the sentence begins, the landmark and the word for a nest
     */
    void in(CharSequence text, Hit hit) {
        Matcher end = END.matcher(text);
        int start = 0;
        while (end.find()) {
            sentence(text, start, end.start(), hit);
            start = end.end();
        }
        sentence(text, start, text.length(), hit);
    }

    private void sentence(CharSequence text, int start, int end, Hit hit) {
        CharSequence sentence = text.subSequence(start, end);
        List<WordWindow.Word> nestWords = nestWords(sentence);
        if (nestWords.isEmpty()) {
            return;
        }
        List<Named> named = new ArrayList<>();
        for (WordWindow window = new WordWindow(sentence, 1); !window.isEmpty(); window.step()) {
            WordWindow.Word word = window.view().get(0);
            for (Mark mark : landmarks.getOrDefault(folded(word.written()), List.of())) {
                Matcher there = mark.pattern()
                        .matcher(sentence)
                        .region(word.start(), sentence.length())
                        .useTransparentBounds(true);
                if (there.lookingAt()) {
                    named.add(new Named(mark, there.start(), there.end()));
                }
            }
        }
        landmarks.getOrDefault("", List.of()).forEach(mark -> {
            Matcher there = mark.pattern().matcher(sentence);
            while (there.find()) {
                named.add(new Named(mark, there.start(), there.end()));
            }
        });
        tell(start, nestWords, named, hit);
    }

    private static List<WordWindow.Word> nestWords(CharSequence sentence) {
        List<WordWindow.Word> found = new ArrayList<>();
        for (WordWindow window = new WordWindow(sentence, 1); !window.isEmpty(); window.step()) {
            WordWindow.Word word = window.view().get(0);
            if (NEST_WORDS.contains(word.small())) {
                found.add(word);
            }
        }
        return found;
    }

    private void tell(int sentence, List<WordWindow.Word> nestWords, List<Named> named, Hit hit) {
        Optional<WordWindow.Word> free = nestWords.stream()
                .filter(word -> named.stream().noneMatch(landmark -> holds(landmark, word)))
                .findFirst();
        Set<Mark> told = new HashSet<>();
        for (Named landmark : named) {
            Optional<WordWindow.Word> own = ownWord(landmark, nestWords);
            own.or(() -> free)
                    .filter(word -> told.add(landmark.mark()))
                    .ifPresent(word -> hit.at(sentence, landmark.mark().name(), word.written(), own.isPresent()));
        }
    }

    private Optional<WordWindow.Word> ownWord(Named landmark, List<WordWindow.Word> nestWords) {
        return nestWords.stream()
                .filter(word -> holds(landmark, word)
                        && telling.contains(landmark.mark().name()))
                .findFirst();
    }

    private static boolean holds(Named landmark, WordWindow.Word word) {
        return landmark.start() <= word.start() && word.end() <= landmark.end();
    }
}
