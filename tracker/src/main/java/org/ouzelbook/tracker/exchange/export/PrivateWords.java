package org.ouzelbook.tracker.exchange.export;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.River;

/**
 * The words of a book that must not stand in anything public: labels of nests and ringed birds, rings and ring readings, names of
 * people; and any word for a nest. Words that are also the whole name of a landmark or river stay, since a nest may well be called
 * after its bridge, and leaving out the bridge would tell it.
 */
public final class PrivateWords {
    private static final List<String> NEST_WORDS = List.of("nest", "nests", "nestbox", "nest-box", "roost");
    private static final int SHORTEST = 2;

    private final Pattern words;

    private PrivateWords(Pattern words) {
        this.words = words;
    }

    /**
     * {@return the words that must not be told of these records}
     *
     * @param records the records of a book
     */
    public static PrivateWords of(Records records) {
        return of(records, false);
    }

    /**
     * {@return the words that must not be told of these records}
     *
     * @param records the records of a book
     * @param peopleAgreed whether the people in it agreed to be named
     */
    public static PrivateWords of(Records records, boolean peopleAgreed) {
        Set<String> words = new HashSet<>();
        records.nests().forEach(nest -> words.add(nest.label()));
        records.ringedBirds().forEach(bird -> {
            words.add(bird.label());
            words.add(bird.ring());
        });
        records.sightings().forEach(sighting -> words.add(sighting.rings()));
        if (!peopleAgreed) {
            words.addAll(people(records));
        }
        Set<String> known = new HashSet<>();
        records.rivers().rivers().stream().map(River::name).forEach(name -> known.add(lower(name)));
        for (Landmark landmark : records.landmarks()) {
            known.add(lower(landmark.name()));
            landmark.aliases().forEach(alias -> known.add(lower(alias)));
        }
        words.removeIf(word -> !tells(word) || known.contains(lower(word)));
        words.addAll(NEST_WORDS);
        String any =
                words.stream().sorted().map(word -> Pattern.quote(word.strip())).collect(Collectors.joining("|"));
        return new PrivateWords(Pattern.compile(
                "(?<![\\p{L}\\p{N}])(" + any + ")(?![\\p{L}\\p{N}])", Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE));
    }

    private static Set<String> people(Records records) {
        Set<String> people = new HashSet<>();
        records.sightings().forEach(sighting -> people.add(sighting.observer()));
        records.visits().forEach(visit -> people.addAll(visit.observers()));
        records.kickSamples().forEach(sample -> people.add(sample.sampler()));
        return people;
    }

    private static String lower(String word) {
        return word.strip().toLowerCase(Locale.ROOT);
    }

    /** A bare number or a single letter stands everywhere. */
    private static boolean tells(String word) {
        return word.strip().length() >= SHORTEST && word.chars().anyMatch(Character::isLetter);
    }

    /**
     * A private word in a text.
     *
     * @param word the word
     * @param text the text that it stands in
     */
    public record Hit(String word, String text) {}

    /**
     * {@return the private words in texts that are meant for the public, each text at most once}
     *
     * @param texts the texts
     */
    public List<Hit> in(Collection<String> texts) {
        List<Hit> hits = new ArrayList<>();
        new TreeSet<>(texts).forEach(text -> in(text).ifPresent(hits::add));
        return List.copyOf(hits);
    }

    private Optional<Hit> in(String text) {
        Matcher found = words.matcher(text);
        return found.find() ? Optional.of(new Hit(found.group(1), text)) : Optional.empty();
    }
}
