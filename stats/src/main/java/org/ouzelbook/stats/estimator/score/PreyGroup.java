package org.ouzelbook.stats.estimator.score;

import java.util.Optional;

/**
 * A group of animals that dippers eat, as far as a kick sample shows it: the families that S. J. Ormerod and S. J. Tyler (1991)
 * and others found in the food of adults and nestlings, from memory. Descriptive only.
 */
public enum PreyGroup {
    /** Net-spinning caddis flies. */
    HYDROPSYCHIDAE("Hydropsychidae"),
    /** Caseless caddis flies, and those merged with them. */
    RHYACOPHILIDAE("Rhyacophilidae"),
    /** Large cased caddis flies. */
    LIMNEPHILIDAE("Limnephilidae"),
    /** All other caddis flies. */
    OTHER_CADDIS(""),
    /** Swimming mayflies. */
    BAETIDAE("Baetidae"),
    /** Flat-bodied mayflies. */
    HEPTAGENIIDAE("Heptageniidae"),
    /** Freshwater shrimps. */
    GAMMARIDAE("Gammaridae");

    private static final String CADDIS = "Trichoptera";

    private final String scoredAs;

    PreyGroup(String scoredAs) {
        this.scoredAs = scoredAs;
    }

    /** {@return the group of a taxon; empty if it is no prey that counts} */
    static Optional<PreyGroup> of(ScoreTable.Taxon taxon) {
        for (PreyGroup group : values()) {
            if (group != OTHER_CADDIS && taxon.scoredAs().equals(Optional.of(group.scoredAs))) {
                return Optional.of(group);
            }
        }
        return taxon.order().equals(Optional.of(CADDIS)) ? Optional.of(OTHER_CADDIS) : Optional.empty();
    }
}
