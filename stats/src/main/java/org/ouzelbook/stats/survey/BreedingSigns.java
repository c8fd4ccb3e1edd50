package org.ouzelbook.stats.survey;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.NestOutcome;
import org.ouzelbook.tracker.domain.Sighting;

/**
 * What one record shows of breeding: the codes of the European atlases behind activities, pairs and nest contents.
 *
 * <p>Code 4 needs two records and is found where a territory is graded. Song is code 2 whatever the bird's sex; both sexes
 * of dipper sing. Source of the codes: second European Breeding Bird Atlas, atlas codes; which activity shows which code is
 * our reading of that list.
 */
final class BreedingSigns {
    private static final Map<Activity, Integer> CODES = new EnumMap<>(Map.of(
            Activity.SINGING, 2,
            Activity.DISPLAY, 5,
            Activity.AT_NEST_SITE, 6,
            Activity.ALARM, 7,
            Activity.CARRYING_MATERIAL, 9,
            Activity.BUILDING, 9,
            Activity.DEPENDENT_YOUNG, 12,
            Activity.INCUBATING, 13,
            Activity.CARRYING_FOOD, 14,
            Activity.CARRYING_FAECAL_SAC, 14));

    static {
        CODES.put(Activity.FEEDING_YOUNG, 14);
    }

    private static final Set<Activity> TERRITORIAL = Set.of(Activity.SINGING, Activity.DISPLAY, Activity.AGGRESSION);

    private BreedingSigns() {}

    /** The highest code that a sighting in season shows alone. */
    static BreedingCode of(Sighting sighting, MapSettings settings) {
        int highest = sighting.breedingCode().map(BreedingCode::number).orElse(1);
        for (Activity activity : sighting.activities()) {
            highest = Math.max(highest, CODES.getOrDefault(activity, 1));
        }
        if (sighting.age() == Age.DEPENDENT_JUVENILE) {
            highest = Math.max(highest, 12);
        }
        if (isPair(sighting, settings)) {
            highest = Math.max(highest, 3);
        }
        return new BreedingCode(highest);
    }

    private static boolean isPair(Sighting sighting, MapSettings settings) {
        boolean adults =
                sighting.age() == Age.ADULT || (sighting.age() == Age.UNKNOWN && !settings.youngAbout(sighting.date()));
        return adults && sighting.count() >= 2;
    }

    /** What a check of a nest shows; empty for an empty or unseen nest, which may be an old one. */
    static Optional<BreedingCode> of(NestCheck check) {
        return numberOf(check).map(BreedingCode::new);
    }

    private static Optional<Integer> numberOf(NestCheck check) {
        if (check.young().orElse(0) > 0) {
            return Optional.of(16);
        }
        if (check.eggs().orElse(0) > 0) {
            return Optional.of(15);
        }
        return switch (check.stage()) {
            case YOUNG -> Optional.of(16);
            case EGGS -> Optional.of(15);
            case BUILDING -> Optional.of(9);
            case UNKNOWN -> check.adults().orElse(0) > 0 ? Optional.of(13) : Optional.empty();
            case COMPLETE, EMPTY ->
                check.outcome()
                        .filter(outcome -> outcome != NestOutcome.UNKNOWN)
                        .map(outcome -> 11);
        };
    }

    /** Whether a sighting shows that its place is held: song, display, a chase, a bird that turned back. */
    static boolean isTerritorial(Sighting sighting) {
        return sighting.turnedBack()
                || sighting.activities().stream().anyMatch(TERRITORIAL::contains)
                || sighting.breedingCode()
                        .filter(code -> code.number() == 2 || code.number() == 4 || code.number() == 5)
                        .isPresent();
    }

    /** Whether the bird may be a young of the year for all that is written down. */
    static boolean ageInDoubt(Sighting sighting, MapSettings settings) {
        if (sighting.age() == Age.JUVENILE) {
            return true;
        }
        return sighting.age() == Age.UNKNOWN
                && settings.youngAbout(sighting.date())
                && !isTerritorial(sighting)
                && of(sighting, settings).number() <= 1;
    }
}
