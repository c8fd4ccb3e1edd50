package org.ouzelbook.tracker.store;

import org.ouzelbook.tracker.domain.Species;

/** The species by the scientific name that rows hold. */
final class SpeciesNames {
    private SpeciesNames() {}

    static Species species(String scientificName) {
        return Species.named(scientificName)
                .orElseThrow(() -> BookException.of("book.species.unknown", scientificName));
    }
}
