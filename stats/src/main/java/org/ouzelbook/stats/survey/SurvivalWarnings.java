package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.ouzelbook.stats.survey.RingSighting.Outcome;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.rings.RingRegister;

/** What would mislead a reader of the survival of ringed birds who did not know it. */
final class SurvivalWarnings {
    private SurvivalWarnings() {}

    static List<Message> of(
            Species species,
            RingedSpecies ringed,
            List<RingSighting> readings,
            RingRegister register,
            List<Integer> seasons,
            List<Boolean> looked) {
        List<Message> warnings = new ArrayList<>();
        for (RingedBird bird : ringed.readAsAnotherToo(species)) {
            warnings.add(Message.of("survival.warning.twoSpecies", bird.label(), ringed.names(bird)));
        }
        int unknown = ringed.unknown(species).size();
        if (unknown > 0) {
            warnings.add(Message.of("survival.warning.speciesUnknown", unknown));
        }
        readings.forEach(reading -> addReading(warnings, reading, register));
        List<String> unlooked = IntStream.range(0, seasons.size())
                .filter(season -> !looked.get(season))
                .mapToObj(season -> String.valueOf(seasons.get(season)))
                .toList();
        if (!unlooked.isEmpty()) {
            warnings.add(Message.of("survival.warning.notLooked", unlooked));
        }
        return warnings;
    }

    private static void addReading(List<Message> warnings, RingSighting one, RingRegister register) {
        Object place = one.sighting().place().chainage();
        if (one.outcome() == Outcome.NOT_UNDERSTOOD) {
            warnings.add(Message.of(
                    "survival.warning.notUnderstood",
                    one.sighting().rings(),
                    one.sighting().date(),
                    place));
        } else if (one.outcome() == Outcome.NO_CANDIDATE) {
            Set<Character> strange = register.strange(one.reading().orElseThrow());
            warnings.add(
                    strange.isEmpty()
                            ? Message.of(
                                    "survival.warning.noBird",
                                    one.sighting().rings(),
                                    one.sighting().date(),
                                    place)
                            : Message.of(
                                    "survival.warning.strange",
                                    one.sighting().rings(),
                                    one.sighting().date(),
                                    place,
                                    strange.stream().map(String::valueOf).toList()));
        }
    }
}
