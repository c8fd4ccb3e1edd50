package org.ouzelbook.tracker.rings;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.RingedBird;

/**
 * The birds that carry colour rings, and which of them a reading fits. A reading is never changed to fit: a partial one fits every bird
 * that may have been read so, a wrong one fits none.
 */
public final class RingRegister {
    private final List<RingedBird> birds;

    private RingRegister(List<RingedBird> birds) {
        this.birds = birds;
    }

    /**
     * {@return the register of some birds}
     *
     * @param birds the birds, each with its letters
     */
    public static RingRegister of(List<RingedBird> birds) {
        return new RingRegister(List.copyOf(birds));
    }

    /**
     * {@return the birds that may have been read so, ringed on that day or before, in the order of the register}
     *
     * @param reading what was read
     * @param on when
     */
    public List<RingedBird> candidates(RingReading reading, LocalDate on) {
        return birds.stream()
                .filter(bird -> bird.ringed().map(ringed -> !ringed.isAfter(on)).orElse(true))
                .filter(bird -> reading.left().fits(letters(bird.leftUpper()), letters(bird.leftLower())))
                .filter(bird -> reading.right().fits(letters(bird.rightUpper()), letters(bird.rightLower())))
                .toList();
    }

    /** {@return the letters that the birds carry: the alphabet of the project} */
    public Set<Character> alphabet() {
        return birds.stream()
                .flatMapToInt(bird -> (letters(bird.leftUpper())
                                + letters(bird.leftLower())
                                + letters(bird.rightUpper())
                                + letters(bird.rightLower()))
                        .chars())
                .mapToObj(letter -> (char) letter)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** {@return letters of a reading that no bird carries, most often a colour read wrong or written in another alphabet} */
    public Set<Character> strange(RingReading reading) {
        Set<Character> alphabet = alphabet();
        return reading.rings()
                .filter(ring -> ring.certainty() == Ring.Certainty.CERTAIN)
                .map(Ring::letter)
                .filter(letter -> !alphabet.contains(letter))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static String letters(String position) {
        return position.replaceAll("[^A-Za-z]", "");
    }
}
