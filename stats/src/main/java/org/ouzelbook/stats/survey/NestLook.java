package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.NestOutcome;
import org.ouzelbook.tracker.domain.NestStage;

/**
 * What one check of a nest shows.
 *
 * @param check the check
 */
record NestLook(NestCheck check) {
    private static final Pattern INCUBATION = Pattern.compile("\\b(warm|incubat\\w*|sitting|hatching|pipping)\\b");

    static List<NestLook> of(List<NestCheck> checks) {
        return checks.stream()
                .sorted(Comparator.comparing(NestCheck::date)
                        .thenComparing(one ->
                                one.time().map(time -> time.toSecondOfDay()).orElse(0)))
                .map(NestLook::new)
                .toList();
    }

    LocalDate date() {
        return check.date();
    }

    boolean failed() {
        return outcome().filter(outcome -> outcome == NestOutcome.FAILURE).isPresent();
    }

    /** How the attempt ended, if this check shows it. */
    Optional<NestOutcome> outcome() {
        return check.outcome().filter(outcome -> outcome != NestOutcome.UNKNOWN);
    }

    boolean hasYoung() {
        return check.stage() == NestStage.YOUNG || check.young().orElse(0) > 0;
    }

    /** Eggs, and no young yet. */
    boolean hasEggs() {
        return !hasYoung() && (check.stage() == NestStage.EGGS || check.eggs().orElse(0) > 0);
    }

    /** Whether eggs or young were there and alive. */
    boolean isActive() {
        return (hasEggs() || hasYoung()) && !failed();
    }

    boolean isEmpty() {
        return check.stage() == NestStage.EMPTY && !isActive();
    }

    /** Looked into, with nothing in it. */
    boolean hasNothing() {
        return isEmpty()
                || ((check.stage() == NestStage.BUILDING || check.stage() == NestStage.COMPLETE) && !isActive());
    }

    /** Eggs counted; 0 if none were. */
    int eggs() {
        return hasEggs() ? check.eggs().orElse(0) : 0;
    }

    /** Young counted; 0 if none were. */
    int young() {
        return check.young().orElse(0);
    }

    boolean tellsOfIncubation() {
        return INCUBATION.matcher(words()).find();
    }

    String words() {
        return (check.stageText() + " " + check.note()).toLowerCase(Locale.ROOT);
    }
}
