package org.ouzelbook.ui.strip;

import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.tracker.domain.BreedingCode.EvidenceClass;
import org.ouzelbook.ui.app.Texts;

/** How sure a territory is, as colour and as words: a counted one is filled, the deeper the surer; the rest are hollow. */
final class TerritoryInk {
    private TerritoryInk() {}

    static boolean isCounted(Territory territory) {
        return territory.standing() == Territory.Standing.COUNTED;
    }

    static Ink fill(Territory territory) {
        EvidenceClass evidence = territory
                .evidence()
                .flatMap(highest -> highest.code().evidenceClass())
                .orElse(EvidenceClass.POSSIBLE);
        return switch (evidence) {
            case CONFIRMED -> Ink.CONFIRMED;
            case PROBABLE -> Ink.PROBABLE;
            case POSSIBLE -> Ink.POSSIBLE;
        };
    }

    /** The surer breeding is, the higher the bar, so that nobody needs colours to tell: its share of the highest. */
    static double height(Ink fill) {
        return fill == Ink.CONFIRMED ? 1 : fill == Ink.PROBABLE ? 0.7 : 0.42;
    }

    static Ink letter(Territory territory) {
        return isCounted(territory) && fill(territory) == Ink.CONFIRMED ? Ink.ON_CONFIRMED : Ink.INK;
    }

    static String words(Territory territory) {
        return switch (territory.standing()) {
            case EDGE, ELSEWHERE, OUTSIDE, NOT_ACCEPTED -> Texts.of("strip.standing." + territory.standing());
            case COUNTED ->
                territory
                        .evidence()
                        .flatMap(highest -> highest.code().evidenceClass())
                        .map(Texts::word)
                        .orElseGet(() -> Texts.of("strip.noEvidence"));
        };
    }
}
