package org.ouzelbook.stats.survey;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.Species;

/**
 * The age that words give to young in the nest. The words are those of public nest cards (Maritimes nest record cards, code
 * sheet); the ages of dippers that go with them are common practice, no source, and drawn wide.
 *
 * @param from days since hatching, at least
 * @param to days since hatching, at most
 */
record YoungAge(int from, int to) {
    private record Word(Pattern pattern, YoungAge age) {}

    private static final List<Word> WORDS = List.of(
            new Word(Pattern.compile("\\b(ready to fledge|feathered|large)\\b"), new YoungAge(13, 30)),
            new Word(Pattern.compile("\\bin pin\\b"), new YoungAge(8, 15)),
            new Word(Pattern.compile("\\beyes open\\b"), new YoungAge(5, 10)),
            new Word(Pattern.compile("\\b(naked|blind|just hatched)\\b"), new YoungAge(0, 6)));

    /** The age of a dipper's young; empty if no words tell it, or the species is another. */
    static Optional<YoungAge> of(NestLook look, Species species) {
        if (!look.hasYoung() || !species.equals(Species.DIPPER)) {
            return Optional.empty();
        }
        return WORDS.stream()
                .filter(word -> word.pattern.matcher(look.words()).find())
                .map(Word::age)
                .findFirst();
    }
}
