package org.ouzelbook.tracker.notebook;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.place.Word;

/**
 * The words and short forms that observers write, and what each means.
 *
 * <p>Short forms {@code mat} and {@code food} are those of the usual territory-mapping symbols; the two-letter codes of the
 * birds are those in common use. The rest are plain words.
 */
final class Vocabulary {
    private static final int LONGEST_PHRASE = 3;
    private static final Map<String, Meaning> MEANINGS = meanings();
    private static final Set<String> FIRST_WORDS = firstWords();

    private Vocabulary() {}

    /** What a phrase means. */
    sealed interface Meaning {
        /** Something that the bird did. */
        record Did(Activity activity) implements Meaning {}

        /** An age. */
        record Aged(Age age) implements Meaning {}

        /** Whether a juvenile still depends on its parents. */
        record Depends(boolean dependent) implements Meaning {}

        /** A sex. */
        record Sexed(Sex sex) implements Meaning {}

        /** A number of birds in letters. */
        record Counted(int count) implements Meaning {}

        /** Two adults that belong together. */
        record Pair() implements Meaning {}

        /** No bird at all. */
        record Nothing() implements Meaning {}

        /** Another bird than the usual one. */
        record Named(Species species) implements Meaning {}

        /** A word that joins others and says nothing of its own. */
        record Joining() implements Meaning {}
    }

    /**
     * A phrase found.
     *
     * @param words how many words it has
     */
    record Phrase(int words, Meaning meaning) {}

    /** {@return the longest phrase with which the words start} */
    static Optional<Phrase> phrase(List<Word> words) {
        StringBuilder text = new StringBuilder();
        Optional<Phrase> longest = Optional.empty();
        for (int count = 1; count <= Math.min(LONGEST_PHRASE, words.size()); count++) {
            text.append(count > 1 ? " " : "")
                    .append(Word.plain(words.get(count - 1).text()));
            Meaning meaning = MEANINGS.get(text.toString());
            if (meaning != null) {
                longest = Optional.of(new Phrase(count, meaning));
            }
        }
        return longest;
    }

    /** {@return every phrase and what it means; of those that mean the same, the usual one first} */
    static Map<String, Meaning> phrases() {
        return MEANINGS;
    }

    /** {@return whether a phrase starts with this word, in lower case} */
    static boolean startsPhrase(String word) {
        return FIRST_WORDS.contains(Word.plain(word));
    }

    private static Set<String> firstWords() {
        Set<String> words = new HashSet<>(Set.of(
                "flew",
                "flies",
                "fly",
                "flying",
                "flushed",
                "turned",
                "back",
                "tb",
                "rings",
                "ring",
                "code",
                "lb",
                "rb",
                "left",
                "right",
                "true",
                "mid",
                "midstream",
                "channel",
                "to",
                "by",
                "from"));
        MEANINGS.keySet().forEach(phrase -> words.add(phrase.replaceFirst(" .*", "")));
        return words;
    }

    private static Map<String, Meaning> meanings() {
        Map<String, Meaning> all = new LinkedHashMap<>();
        did(all, Activity.SINGING, "song", "singing", "sings", "sang", "s", "in song", "subsong");
        did(all, Activity.CALLING, "call", "calls", "calling", "called", "c");
        did(all, Activity.ALARM, "alarm", "alarms", "alarming", "alarm calling", "alarm call", "agitated");
        did(all, Activity.DISPLAY, "display", "displaying", "displays", "courtship", "courting");
        did(all, Activity.AGGRESSION, "aggression", "chase", "chasing", "chased", "fight", "fighting", "dispute");
        did(all, Activity.FEEDING, "feeding", "feeds", "fed", "foraging", "diving");
        did(all, Activity.BATHING, "bathing", "preening", "bathing preening", "preens", "bathes");
        did(all, Activity.RESTING, "resting", "rests", "perched", "perching", "loafing");
        did(
                all,
                Activity.CARRYING_MATERIAL,
                "mat",
                "material",
                "nest material",
                "carrying material",
                "with material",
                "carrying nest material",
                "moss",
                "carrying moss");
        did(all, Activity.BUILDING, "building", "builds", "nest building", "building nest");
        did(
                all,
                Activity.AT_NEST_SITE,
                "at nest",
                "at nest site",
                "nest site",
                "visiting nest",
                "at the nest",
                "visiting nest site");
        did(all, Activity.CARRYING_FOOD, "food", "carrying food", "with food", "food carried", "food in");
        did(
                all,
                Activity.CARRYING_FAECAL_SAC,
                "sac",
                "faecal sac",
                "carrying faecal sac",
                "fecal sac",
                "with faecal sac");
        did(all, Activity.FEEDING_YOUNG, "feeding young", "feeds young", "feeding juv", "feeding juvs", "fed young");
        did(all, Activity.INCUBATING, "incubating", "brooding", "sitting", "on nest", "on eggs", "brooding incubating");
        did(all, Activity.DEPENDENT_YOUNG, "with young", "dependent young", "with dependent young", "family");
        did(all, Activity.ROOSTING, "roost", "roosting", "roosts", "at roost");
        did(all, Activity.DEAD, "dead", "found dead");
        put(all, new Meaning.Aged(Age.ADULT), "ad", "ads", "adult", "adults");
        put(
                all,
                new Meaning.Aged(Age.JUVENILE),
                "juv",
                "juvs",
                "juvenile",
                "juveniles",
                "fledgling",
                "fledglings",
                "imm");
        put(all, new Meaning.Aged(Age.FIRST_YEAR), "first year", "1y", "2cy");
        put(all, new Meaning.Depends(true), "dep", "dependent");
        put(all, new Meaning.Depends(false), "indep", "independent", "ind");
        put(all, new Meaning.Sexed(Sex.FEMALE), "f", "female", "females", "hen");
        put(all, new Meaning.Sexed(Sex.MALE), "m", "male", "males", "cock");
        put(all, new Meaning.Pair(), "pair", "pr", "a pair", "pair of adults");
        put(all, new Meaning.Nothing(), "0", "none", "nil", "nothing", "no birds", "no bird", "zero");
        List<String> numbers = List.of("one", "two", "three", "four", "five", "six");
        for (int i = 0; i < numbers.size(); i++) {
            put(all, new Meaning.Counted(i + 1), numbers.get(i));
        }
        put(all, new Meaning.Counted(1), "single", "a bird", "one bird");
        put(
                all,
                new Meaning.Joining(),
                "and",
                "&",
                "at",
                "bird",
                "birds",
                "seen",
                "then",
                "with",
                "on",
                "in",
                "the",
                "-",
                "–");
        for (Species species : Species.all()) {
            put(
                    all,
                    new Meaning.Named(species),
                    Word.plain(species.englishName()),
                    Word.plain(species.englishName()) + "s",
                    Word.plain(species.code()),
                    Word.plain(species.scientificName()));
        }
        return Collections.unmodifiableMap(all);
    }

    private static void did(Map<String, Meaning> all, Activity activity, String... phrases) {
        put(all, new Meaning.Did(activity), phrases);
    }

    private static void put(Map<String, Meaning> all, Meaning meaning, String... phrases) {
        for (String phrase : phrases) {
            all.put(phrase, meaning);
        }
    }

    /** {@return the words with numbers and words written together taken apart: {@code 3juv}, {@code +3 juv}, {@code ad+2juv}} */
    static List<Word> apart(List<Word> words) {
        List<Word> apart = new ArrayList<>();
        for (int i = 0; i < words.size(); i++) {
            Word word = words.get(i);
            boolean ageFollows = i + 1 < words.size()
                    && phrase(words.subList(i + 1, words.size()))
                            .filter(phrase -> isAge(phrase.meaning()))
                            .isPresent();
            if (word.text().matches("\\+\\d{1,2}") && ageFollows) {
                apart.add(part(word, 0, 1));
                apart.add(part(word, 1, word.text().length()));
            } else {
                apart.addAll(pieces(word));
            }
        }
        return apart;
    }

    private static boolean isAge(Meaning meaning) {
        return meaning instanceof Meaning.Aged || meaning instanceof Meaning.Depends;
    }

    private static List<Word> pieces(Word word) {
        String text = word.text();
        boolean groups = text.matches("(?i)\\+?(\\d{0,2}[a-z]+)(\\+\\d{0,2}[a-z]+)*") && text.matches(".*[\\d+].*");
        if (!groups) {
            return List.of(word);
        }
        List<Word> pieces = new ArrayList<>();
        int start = 0;
        for (int i = 1; i <= text.length(); i++) {
            if (i == text.length() || kind(text.charAt(i)) != kind(text.charAt(i - 1))) {
                pieces.add(part(word, start, i));
                start = i;
            }
        }
        boolean known = pieces.stream()
                .map(Word::text)
                .filter(piece -> Character.isLetter(piece.charAt(0)))
                .allMatch(piece -> MEANINGS.containsKey(Word.plain(piece)));
        return known && !MEANINGS.containsKey(Word.plain(text)) ? pieces : List.of(word);
    }

    private static int kind(char c) {
        return Character.isDigit(c) ? 0 : Character.isLetter(c) ? 1 : 2;
    }

    private static Word part(Word word, int from, int to) {
        return new Word(word.text().substring(from, to), word.from() + from, word.from() + to);
    }
}
