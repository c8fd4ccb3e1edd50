package org.ouzelbook.stats.survey;

import java.util.Optional;
import org.ouzelbook.tracker.domain.BreedingCode.EvidenceClass;
import org.ouzelbook.tracker.domain.Species;

/**
 * What a site is, when a visit counts for it, and what counts as a detection; printed with each answer.
 *
 * @param kind what the sites are
 * @param stretchMetres length of a site that is a stretch
 * @param placeMetres water on either side of a landmark that belongs to it, where sites are landmarks
 * @param found what counts as a detection
 * @param coveredShare the share of a site that a visit must cover to count for it; less is no visit, whatever was seen
 * @param season which days are in season, and how the age of a bird is read
 */
public record SiteSettings(
        Kind kind, double stretchMetres, double placeMetres, Found found, double coveredShare, MapSettings season) {
    /** What the sites are. */
    public enum Kind {
        /** Stretches of one length, counted from the mouth. */
        STRETCHES,
        /** The named reaches of the book. */
        REACHES,
        /** The landmarks of the book, each with the water next to it. */
        PLACES
    }

    /** What counts as a detection. */
    public enum Found {
        /** Any living bird that may hold ground: the sightings that mapping admits. */
        ADULT(Optional.empty()),
        /** A record that alone shows probable breeding or better: breeding code 3 or more. */
        PROBABLE(Optional.of(EvidenceClass.PROBABLE)),
        /** A record that alone shows confirmed breeding: breeding code 10 or more. */
        CONFIRMED(Optional.of(EvidenceClass.CONFIRMED));

        private final Optional<EvidenceClass> least;

        Found(Optional<EvidenceClass> least) {
            this.least = least;
        }

        boolean holds(Optional<EvidenceClass> evidence) {
            return least.isEmpty()
                    || evidence.filter(shown -> shown.compareTo(least.get()) >= 0)
                            .isPresent();
        }
    }

    /**
     * Checks the numbers.
     *
     * @throws IllegalArgumentException if a length is not positive, or the share not above 0 and at most 1
     */
    public SiteSettings {
        if (!(stretchMetres > 0 && placeMetres > 0 && Double.isFinite(stretchMetres + placeMetres))) {
            throw new IllegalArgumentException("A site has a length");
        }
        if (!(coveredShare > 0 && coveredShare <= 1)) {
            throw new IllegalArgumentException("A visit covers a share above 0 and up to 1, not " + coveredShare);
        }
    }

    /**
     * {@return stretches of 500 m, any adult, four fifths covered: common practice, no source}
     *
     * @param species whose season it is
     */
    public static SiteSettings usualFor(Species species) {
        return new SiteSettings(Kind.STRETCHES, 500, 100, Found.ADULT, 0.8, MapSettings.usualFor(species));
    }

    /** These settings with the season of others. */
    SiteSettings withSeason(MapSettings other) {
        return new SiteSettings(kind, stretchMetres, placeMetres, found, coveredShare, other);
    }
}
