package org.ouzelbook.tracker.domain;

/** Age as told in the field. */
public enum Age {
    /** Full-grown bird in adult plumage. */
    ADULT,
    /** Young bird out of the nest, still fed or led by adults. */
    DEPENDENT_JUVENILE,
    /** Young bird on its own: never makes or joins a territory. */
    INDEPENDENT_JUVENILE,
    /** Juvenile, nobody wrote whether dependent. */
    JUVENILE,
    /** Hatched last year, told in the hand or by a close photograph. */
    FIRST_YEAR,
    /** Not written down. */
    UNKNOWN
}
