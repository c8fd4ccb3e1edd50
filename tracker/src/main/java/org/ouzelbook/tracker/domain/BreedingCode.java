package org.ouzelbook.tracker.domain;

import java.util.Optional;

/**
 * The breeding-evidence codes of the European atlases, 0 to 16.
 *
 * <p>Source: second European Breeding Bird Atlas, atlas codes; the sixteen codes of Hagemeijer and Blair (1997), The EBCC
 * Atlas of European Breeding Birds, and 0.
 *
 * @param number 0 to 16
 */
public record BreedingCode(int number) implements Comparable<BreedingCode> {

    /** The three classes that the codes fall into. */
    public enum EvidenceClass {
        /** Codes 1 and 2. */
        POSSIBLE,
        /** Codes 3 to 9. */
        PROBABLE,
        /** Codes 10 to 16. */
        CONFIRMED
    }

    /**
     * Checks the range.
     *
     * @throws IllegalArgumentException if the number is not 0 to 16
     */
    public BreedingCode {
        if (number < 0 || number > 16) {
            throw new IllegalArgumentException("Breeding codes run from 0 to 16, but was " + number);
        }
    }

    /** {@return the class of the code; empty for 0, which is no evidence of breeding} */
    public Optional<EvidenceClass> evidenceClass() {
        if (number == 0) {
            return Optional.empty();
        }
        if (number <= 2) {
            return Optional.of(EvidenceClass.POSSIBLE);
        }
        return Optional.of(number <= 9 ? EvidenceClass.PROBABLE : EvidenceClass.CONFIRMED);
    }

    @Override
    public int compareTo(BreedingCode other) {
        return Integer.compare(number, other.number);
    }
}
