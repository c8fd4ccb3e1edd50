package org.ouzelbook.tracker.notebook;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.place.Word;

/** Which birds stand at one place of a line, and what they do: groups of one age, parted by {@code +}. */
final class Birds {
    private final BirdLine.Found found;
    private final List<Group> groups = new ArrayList<>(List.of(new Group()));
    private Optional<Species> species = Optional.empty();

    Birds(BirdLine.Found found) {
        this.found = found;
    }

    List<Group> groups() {
        return groups;
    }

    Optional<Species> species() {
        return species;
    }

    /** {@return the group that the line is telling of} */
    Group group() {
        return groups.get(groups.size() - 1);
    }

    /** Hears that further birds follow. */
    void more() {
        groups.add(new Group());
    }

    /** {@return whether birds are missing beside a +} */
    boolean lackOne() {
        return groups.size() > 1 && groups.stream().anyMatch(Group::isEmpty);
    }

    private void part(List<Word> words, String key, Object... facts) {
        found.part(words.get(0), words.get(words.size() - 1), Message.of(key, facts));
    }

    private void ask(List<Word> words, String key) {
        String text = String.join(" ", words.stream().map(Word::text).toList());
        found.question(words.get(0), words.get(words.size() - 1), Message.of(key, text), List.of());
    }

    /** Takes in a phrase of the vocabulary. */
    void understand(List<Word> told, Vocabulary.Meaning meaning) {
        Group group = group();
        if (meaning instanceof Vocabulary.Meaning.Did did) {
            Group doer = Group.isOfAdults(did.activity()) && group.isYoung()
                    ? groups.stream()
                            .filter(other -> !other.isYoung())
                            .findFirst()
                            .orElse(group)
                    : group;
            doer.activities.add(did.activity());
            part(told, "log.part.word", did.activity());
        } else if (meaning instanceof Vocabulary.Meaning.Aged aged) {
            if (group.pair && aged.age() == Age.ADULT) {
                part(told, "log.part.word", aged.age());
            } else if (group.pair || (group.age.isPresent() && group.age.get() != aged.age())) {
                ask(told, "log.secondAge");
            } else {
                group.age = Optional.of(aged.age());
                part(told, "log.part.word", aged.age());
            }
        } else if (meaning instanceof Vocabulary.Meaning.Depends depends) {
            if (group.dependent.isPresent()
                    || group.pair
                    || group.age.filter(age -> age != Age.JUVENILE).isPresent()) {
                ask(told, "log.secondAge");
            } else {
                group.dependent = Optional.of(depends.dependent());
                part(told, "log.part.word", depends.dependent() ? Age.DEPENDENT_JUVENILE : Age.INDEPENDENT_JUVENILE);
            }
        } else if (meaning instanceof Vocabulary.Meaning.Sexed sexed) {
            if (group.sex.isPresent() || group.pair) {
                ask(told, "log.secondSex");
            } else {
                group.sex = Optional.of(sexed.sex());
                part(told, "log.part.word", sexed.sex());
            }
        } else if (meaning instanceof Vocabulary.Meaning.Counted counted) {
            count(told, counted.count());
        } else if (meaning instanceof Vocabulary.Meaning.Pair) {
            if (group.count.orElse(2) != 2 || group.isYoung()) {
                ask(told, "log.secondCount");
            } else {
                group.pair = true;
                part(told, "log.part.pair");
            }
        } else if (meaning instanceof Vocabulary.Meaning.Nothing) {
            ask(told, "log.zero");
        } else if (meaning instanceof Vocabulary.Meaning.Named named) {
            if (species.filter(other -> !other.equals(named.species())).isPresent()) {
                ask(told, "log.secondSpecies");
            } else {
                species = Optional.of(named.species());
                part(told, "log.part.word", named.species());
            }
        } else {
            part(told, "log.part.joining");
        }
    }

    /** Takes in a number of birds. */
    void count(List<Word> told, int birds) {
        Group group = group();
        if (group.count.isPresent() || (group.pair && birds != 2)) {
            ask(told, "log.secondCount");
        } else {
            group.count = OptionalInt.of(birds);
            part(told, "log.part.count", birds);
        }
    }
}
