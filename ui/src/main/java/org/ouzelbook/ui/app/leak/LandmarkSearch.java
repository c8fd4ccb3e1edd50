package org.ouzelbook.ui.app.leak;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Finds landmarks that stand in one sentence or row with a word for a nest. */
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

    private static final Pattern END = Pattern.compile("[\\n\\u001f]|(?<=[.!?])\\s");
    private static final Pattern SPACE = Pattern.compile("[\\s_\\p{Pd}]+");
    private static final int SHORTEST = 4;

    /** Many rivers have a Mill Bridge. */
    private final Set<String> names = new HashSet<>();

    /** By its first word, which stands whole wherever the name does; blank for a name that begins with a sign. */
    private final Map<String, List<Pattern>> landmarks = new HashMap<>();

    /** Takes up a landmark; a short name is left out, since it may be any word. */
    void add(String given) {
        String name = Spelling.folded(given).strip();
        List<WordWindow.Word> words = WordWindow.all(name);
        boolean startsWithAWord = !words.isEmpty() && words.get(0).start() == 0;
        String first = startsWithAWord ? folded(words.get(0).written()) : "";
        if (name.length() >= SHORTEST && names.add(name)) {
            landmarks
                    .computeIfAbsent(first, word -> new ArrayList<>())
                    .add(Pattern.compile(
                            "(?<![\\p{L}\\p{N}])" + anySpace(name) + "(?![\\p{L}\\p{N}])",
                            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE));
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
     * @param hit hears where the sentence begins, and the landmark
     */
    void in(CharSequence text, BiConsumer<Integer, String> hit) {
        Matcher end = END.matcher(text);
        int start = 0;
        while (end.find()) {
            sentence(text, start, end.start(), hit);
            start = end.end();
        }
        sentence(text, start, text.length(), hit);
    }

    private void sentence(CharSequence text, int start, int end, BiConsumer<Integer, String> hit) {
        CharSequence sentence = text.subSequence(start, end);
        if (!tellsOfANest(sentence)) {
            return;
        }
        Set<Pattern> named = new LinkedHashSet<>();
        for (WordWindow window = new WordWindow(sentence, 1); !window.isEmpty(); window.step()) {
            WordWindow.Word word = window.view().get(0);
            for (Pattern landmark : landmarks.getOrDefault(folded(word.written()), List.of())) {
                if (!named.contains(landmark) && standsAt(landmark, sentence, word.start())) {
                    named.add(landmark);
                }
            }
        }
        landmarks.getOrDefault("", List.of()).stream()
                .filter(landmark -> landmark.matcher(sentence).find())
                .forEach(named::add);
        named.forEach(landmark -> hit.accept(start, landmark.pattern()));
    }

    private static boolean tellsOfANest(CharSequence sentence) {
        for (WordWindow window = new WordWindow(sentence, 1); !window.isEmpty(); window.step()) {
            if (NEST_WORDS.contains(window.view().get(0).small())) {
                return true;
            }
        }
        return false;
    }

    private static boolean standsAt(Pattern landmark, CharSequence sentence, int place) {
        return landmark.matcher(sentence)
                .region(place, sentence.length())
                .useTransparentBounds(true)
                .lookingAt();
    }
}
