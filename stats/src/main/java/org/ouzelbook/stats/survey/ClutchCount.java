package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.ouzelbook.tracker.domain.Species;

/** How many eggs a clutch had, where that is known: counted twice unchanged, or during incubation. */
final class ClutchCount {
    private ClutchCount() {}

    static OptionalInt of(List<NestLook> looks, Species species, BreedingPace pace) {
        int most = looks.stream().mapToInt(NestLook::eggs).max().orElse(0);
        Optional<LocalDate> lastEgg = looks.stream()
                .filter(look -> look.hasYoung() && look.isActive())
                .map(look -> look.date()
                        .minusDays(
                                YoungAge.of(look, species).map(YoungAge::from).orElse(0)))
                .min(LocalDate::compareTo)
                .map(hatched -> hatched.minusDays(pace.incubationFrom()));
        boolean complete = looks.stream()
                .filter(look -> look.eggs() == most)
                .anyMatch(look -> look.tellsOfIncubation()
                        || lastEgg.filter(day -> !look.date().isBefore(day)).isPresent()
                        || looks.stream()
                                .anyMatch(again ->
                                        again.eggs() == most && again.date().isAfter(look.date())));
        return most > 0 && complete ? OptionalInt.of(most) : OptionalInt.empty();
    }
}
