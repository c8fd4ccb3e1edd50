package org.ouzelbook.tracker.store;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * One way in which people wrote somebody's name, and what it is compared by.
 *
 * @param written as it was written
 * @param words its letters and digits without accents and in lower case, word by word, the surname last; at least one
 */
record PersonName(String written, List<String> words) {
    /** The name that tells most comes first: more letters, then proper capitals, then accents. */
    static final Comparator<PersonName> FULLEST = Comparator.comparingInt(
                    (PersonName name) -> -name.letters().length())
            .thenComparing(name -> !name.isMixed())
            .thenComparingInt(name -> name.written().length())
            .thenComparing(PersonName::written, Comparator.reverseOrder());

    private static final Pattern SEVERAL = Pattern.compile("[;&+|/\\n]|\\band\\b");
    private static final Pattern BETWEEN_WORDS = Pattern.compile("[^\\p{L}\\p{N}]+");
    private static final int LONGEST_INITIALS = 4;

    PersonName {
        words = List.copyOf(words);
    }

    /** {@return the name; empty if the text names nobody, or several people} */
    static Optional<PersonName> of(String written) {
        List<String> words = new ArrayList<>(words(written));
        boolean surnameFirst = words.size() > 1 && isInitial(words.get(words.size() - 1)) && !isInitial(words.get(0));
        if (words.isEmpty() || SEVERAL.matcher(written).find() || (written.contains(",") && !surnameFirst)) {
            return Optional.empty();
        }
        if (surnameFirst) {
            int initials =
                    (int) words.stream().dropWhile(word -> !isInitial(word)).count();
            Collections.rotate(words, initials);
        }
        return Optional.of(new PersonName(written, words));
    }

    private static List<String> words(String written) {
        String plain = Normalizer.normalize(written, Normalizer.Form.NFD).replaceAll("[\\p{M}'’‘`]", "");
        return BETWEEN_WORDS
                .splitAsStream(plain.toLowerCase(Locale.ROOT))
                .filter(word -> !word.isEmpty())
                .toList();
    }

    private static boolean isInitial(String word) {
        return word.length() == 1;
    }

    private boolean isMixed() {
        return !written.equals(written.toLowerCase(Locale.ROOT)) && !written.equals(written.toUpperCase(Locale.ROOT));
    }

    /** {@return its letters and digits in one word} */
    String letters() {
        return String.join("", words);
    }

    /** {@return the first letters of its words} */
    String initials() {
        return words.stream().map(word -> word.substring(0, 1)).collect(Collectors.joining());
    }

    private String surname() {
        return words.get(words.size() - 1);
    }

    /** {@return whether first name and surname are both written out} */
    boolean isFull() {
        return words.size() > 1 && !isInitial(words.get(0)) && !isInitial(surname());
    }

    /** {@return whether it is a set of initials: single letters, or two to four capitals in one word} */
    boolean isOnlyInitials() {
        boolean capitals = words.size() == 1 && written.equals(written.toUpperCase(Locale.ROOT));
        int count = letters().length();
        return count > 1
                && count <= LONGEST_INITIALS
                && (capitals || words.stream().allMatch(PersonName::isInitial));
    }

    /** {@return whether the surnames are the same and the first names fit, as far as both are told: an initial fits a name} */
    boolean fits(PersonName other) {
        int told = Math.min(words.size(), other.words.size()) - 1;
        boolean fits = told > 0 && !isInitial(surname()) && surname().equals(other.surname());
        for (int i = 0; fits && i < told; i++) {
            String mine = words.get(i);
            String theirs = other.words.get(i);
            fits = mine.equals(theirs)
                    || (isInitial(mine) && theirs.startsWith(mine))
                    || (isInitial(theirs) && mine.startsWith(theirs));
        }
        return fits;
    }
}
