package org.ouzelbook.tracker.notebook;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.place.Word;

/**
 * What may be meant by the word that is being typed into a notebook line: landmarks, words for what birds do, birds, ringed
 * birds, and the parts of a line that opens or closes a visit. It only helps to write; what a line means is for
 * {@link NotebookLine} and {@link VisitLine} to read.
 */
public final class Completion {
    private static final int MOST = 7;
    private static final int LONGEST = 3;

    /** What else a line of birds may say: what is written, and the key of what it means. */
    private static final Map<String, String> LINE_PARTS = ordered(
            "flew up", "flewUp",
            "flew down", "flewDown",
            "flew to ", "flewTo",
            "flushed up", "flewUp",
            "flushed down", "flewDown",
            "back at ", "back",
            "tb ", "back",
            "turned back at ", "back",
            "LB", "leftBank",
            "RB", "rightBank",
            "midstream", "channel",
            "rings ", "rings",
            "code ", "code",
            "by ", "by");

    /** What else a line that opens a visit may say. */
    private static final Map<String, String> VISIT_PARTS = ordered(
            "looking for ", "lookingFor",
            "upstream", "upstream",
            "downstream", "downstream",
            "foot", "foot",
            "canoe", "canoe",
            "level ", "level",
            "weather ", "weather",
            "not effective", "notEffective",
            "by ", "by");

    private static final Map<String, String> LINES = ordered("visit ", "visit", "end ", "end");

    private final String before;
    private final List<Landmark> landmarks;
    private final List<RingedBird> ringed;
    private final Map<String, Suggestion> found = new LinkedHashMap<>();

    private Completion(String before, List<Landmark> landmarks, List<RingedBird> ringed) {
        this.before = before;
        this.landmarks = landmarks;
        this.ringed = ringed;
    }

    /**
     * A text to write in the stead of what was typed.
     *
     * @param from index of the first character to replace
     * @param to index after the last one
     * @param text what to write; it ends with a blank where more has to follow
     * @param meaning what it means
     */
    public record Suggestion(int from, int to, String text, Message meaning) {}

    /**
     * {@return what may be meant, the likeliest first; nothing inside a note, or where no word is begun}
     *
     * @param line what was typed so far
     * @param cursor where the next character goes, 0 to the length of the line
     * @param landmarks the landmarks of the book, those of the visit's river first
     * @param ringed the ringed birds of the book
     */
    public static List<Suggestion> of(String line, int cursor, List<Landmark> landmarks, List<RingedBird> ringed) {
        String before = line.substring(0, Math.max(0, Math.min(cursor, line.length())));
        boolean inNote = before.contains("//") || before.indexOf('"') >= 0;
        return inNote ? List.of() : new Completion(before, landmarks, ringed).suggestions();
    }

    private List<Suggestion> suggestions() {
        boolean visit = VisitLine.opens(before) && before.stripLeading().length() > "visit".length();
        int start = visit
                ? Math.max(
                        before.lastIndexOf(',') + 1,
                        before.toLowerCase(Locale.ROOT).indexOf("visit") + 5)
                : before.lastIndexOf('=') + 1;
        List<Word> words = new ArrayList<>();
        for (Word word : Word.of(before.substring(start))) {
            words.add(new Word(word.text(), word.from() + start, word.to() + start));
        }
        boolean begun = !words.isEmpty() && words.get(words.size() - 1).to() == before.length();
        if (visit) {
            visitPart(words, begun, before.indexOf(',') >= 0);
        } else if (begun || isAfterRings(words)) {
            birds(words, begun);
        }
        // What takes in more of the words that were typed is likelier: Mill Bridge for “mill br”, before brooding for
        // “br”.
        return found.values().stream()
                .sorted(Comparator.comparingInt(Suggestion::from))
                .limit(MOST)
                .toList();
    }

    private void visitPart(List<Word> words, boolean begun, boolean later) {
        String part = Word.plain(String.join(" ", words.stream().map(Word::text).toList()));
        if (part.startsWith("looking for")) {
            String named =
                    begun && words.size() > 2 ? words.get(words.size() - 1).text() : "";
            int from = named.isEmpty()
                    ? before.length()
                    : words.get(words.size() - 1).from();
            Species.all().stream()
                    .filter(species -> begins(named, species.englishName()))
                    .filter(species -> !part.contains(Word.plain(species.englishName())))
                    .forEach(species -> add(from, species.englishName(), Message.of("log.part.word", species)));
            return;
        }
        if (!begun || part.matches("(level|weather|by)( .*)?")) {
            return;
        }
        if (later) {
            named(words, VISIT_PARTS);
        }
        landmarks(words, riverBefore(words));
    }

    /** The river of the landmark that the part names already: the other end of a stretch lies on it. */
    private Optional<UUID> riverBefore(List<Word> words) {
        String part = " " + Word.plain(text(words)) + " ";
        return landmarks.stream()
                .filter(landmark -> part.contains(" " + Word.plain(landmark.name()) + " "))
                .findFirst()
                .map(landmark -> landmark.place().riverId());
    }

    private void birds(List<Word> words, boolean begun) {
        if (isAfterRings(words) || (begun && words.get(words.size() - 1).text().contains("/"))) {
            Word last = words.get(words.size() - 1);
            rings(begun && !isRings(last) ? Optional.of(last) : Optional.empty());
            return;
        }
        boolean placeFirst = words.size() == 1
                || Stream.of("at", "to", "below", "above", "of", "tb")
                        .anyMatch(words.get(words.size() - 2).lower()::equals);
        if (words.size() == 1
                && words.get(0).from()
                        == before.length() - before.stripLeading().length()) {
            named(words, LINES);
        }
        if (placeFirst) {
            landmarks(words);
        }
        vocabulary(words);
        named(words, LINE_PARTS);
        landmarks(words);
    }

    private static boolean isRings(Word word) {
        return word.lower().matches("rings?");
    }

    private static boolean isAfterRings(List<Word> words) {
        int last = words.size() - 1;
        return last >= 0 && (isRings(words.get(last)) || (last >= 1 && isRings(words.get(last - 1))));
    }

    private void rings(Optional<Word> typed) {
        String begun = typed.map(Word::text).orElse("");
        int from = typed.map(Word::from).orElse(before.length());
        if (typed.isEmpty() && !before.endsWith(" ")) {
            return;
        }
        for (RingedBird bird : ringed) {
            String reading =
                    legs(bird.leftUpper(), bird.leftLower()) + "/" + legs(bird.rightUpper(), bird.rightLower());
            boolean fits = reading.startsWith(begun) || begins(begun, bird.label());
            if (fits && BirdLine.isRingReading(reading)) {
                add(from, reading, Message.of("log.complete.ringed", bird.label(), bird.sex()));
            }
        }
    }

    private static String legs(String upper, String lower) {
        return upper.isBlank() || lower.isBlank() ? upper.strip() + lower.strip() : upper.strip() + "·" + lower.strip();
    }

    private void landmarks(List<Word> words) {
        landmarks(words, Optional.empty());
    }

    private void landmarks(List<Word> words, Optional<UUID> onlyOn) {
        for (int count = Math.min(LONGEST, words.size()); count > 0; count--) {
            List<Word> last = words.subList(words.size() - count, words.size());
            for (Landmark landmark : landmarks) {
                boolean there = onlyOn.filter(
                                river -> !river.equals(landmark.place().riverId()))
                        .isEmpty();
                boolean fits = begins(text(last), landmark.name())
                        || landmark.aliases().stream().anyMatch(alias -> begins(text(last), alias));
                if (fits && there) {
                    add(
                            last.get(0).from(),
                            landmark.name(),
                            Message.of(
                                    "log.complete.landmark",
                                    landmark.kind(),
                                    landmark.place().chainage()));
                }
            }
        }
    }

    private void vocabulary(List<Word> words) {
        for (int count = Math.min(LONGEST, words.size()); count > 0; count--) {
            List<Word> last = words.subList(words.size() - count, words.size());
            String typed = Word.plain(text(last));
            Set<Vocabulary.Meaning> told = new HashSet<>();
            List<Map.Entry<String, Vocabulary.Meaning>> usual = new ArrayList<>();
            List<Map.Entry<String, Vocabulary.Meaning>> others = new ArrayList<>();
            for (Map.Entry<String, Vocabulary.Meaning> phrase :
                    Vocabulary.phrases().entrySet()) {
                boolean first = told.add(phrase.getValue());
                if (phrase.getKey().startsWith(typed) && phrase.getKey().length() > 2) {
                    (first ? usual : others).add(phrase);
                }
            }
            usual.addAll(others);
            Set<Vocabulary.Meaning> offered = new HashSet<>();
            for (Map.Entry<String, Vocabulary.Meaning> phrase : usual) {
                Optional<Message> meaning = word(phrase.getValue());
                if (meaning.isPresent() && offered.add(phrase.getValue())) {
                    add(last.get(0).from(), phrase.getKey(), meaning.get());
                }
            }
        }
    }

    private static Optional<Message> word(Vocabulary.Meaning meaning) {
        if (meaning instanceof Vocabulary.Meaning.Did did) {
            return Optional.of(Message.of("log.part.word", did.activity()));
        }
        if (meaning instanceof Vocabulary.Meaning.Aged aged) {
            return Optional.of(Message.of("log.part.word", aged.age()));
        }
        if (meaning instanceof Vocabulary.Meaning.Sexed sexed) {
            return Optional.of(Message.of("log.part.word", sexed.sex()));
        }
        if (meaning instanceof Vocabulary.Meaning.Pair) {
            return Optional.of(Message.of("log.part.pair"));
        }
        return meaning instanceof Vocabulary.Meaning.Named named
                ? Optional.of(Message.of("log.part.word", named.species()))
                : Optional.empty();
    }

    private void named(List<Word> words, Map<String, String> offered) {
        for (int count = Math.min(LONGEST, words.size()); count > 0; count--) {
            List<Word> last = words.subList(words.size() - count, words.size());
            offered.forEach((text, key) -> {
                if (text.toLowerCase(Locale.ROOT).startsWith(text(last).toLowerCase(Locale.ROOT))) {
                    add(last.get(0).from(), text, Message.of("log.complete.part." + key));
                }
            });
        }
    }

    /** Adds what is not written there already. */
    private void add(int from, String text, Message meaning) {
        if (!before.substring(from).equalsIgnoreCase(text.strip())) {
            found.putIfAbsent(text, new Suggestion(from, before.length(), text, meaning));
        }
    }

    private static String text(List<Word> words) {
        return String.join(" ", words.stream().map(Word::text).toList());
    }

    /** Whether a text begins a name, or the beginnings of its words do: {@code ott st} for Otter Stone. */
    private static boolean begins(String typed, String name) {
        String[] begun = Word.plain(typed).split(" ", -1);
        String[] whole = Word.plain(name).split(" ", -1);
        return begun.length <= whole.length
                && Arrays.stream(begun).allMatch(word -> !word.isEmpty() || typed.isEmpty())
                && IntStream.range(0, begun.length).allMatch(i -> whole[i].startsWith(begun[i]));
    }

    private static Map<String, String> ordered(String... pairs) {
        Map<String, String> map = new LinkedHashMap<>();
        for (int i = 0; i < pairs.length; i += 2) {
            map.put(pairs[i], pairs[i + 1]);
        }
        return map;
    }
}
