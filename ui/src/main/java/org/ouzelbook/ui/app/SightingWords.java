package org.ouzelbook.ui.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.river.RiverNetwork;

/** A sighting read back in words: {@code km 9.05 ± 20 m · 07:12 · two adult dippers, singing · visit of 11 May 2026}. */
public final class SightingWords {
    private SightingWords() {}

    /**
     * {@return the words}
     *
     * @param sighting a sighting
     * @param network the rivers of its book
     * @param visit its visit
     */
    public static String of(Sighting sighting, RiverNetwork network, Optional<Visit> visit) {
        List<String> words = new ArrayList<>();
        words.add(place(sighting.place(), network));
        sighting.time().ifPresent(time -> words.add(Texts.word(time)));
        words.add(birds(sighting));
        sighting.flewTo()
                .ifPresent(
                        to -> words.add(Texts.of(sighting.turnedBack() ? "log.words.back" : "log.words.flewTo", to)));
        if (!sighting.rings().isEmpty()) {
            words.add(Texts.of("log.words.rings", sighting.rings()));
        }
        sighting.breedingCode().ifPresent(code -> words.add(Texts.of("log.words.code", code.number())));
        if (!sighting.simultaneousWith().isEmpty()) {
            words.add(Texts.of("log.words.atOnce"));
        }
        if (!sighting.note().isEmpty()) {
            words.add(Texts.of("log.words.note", sighting.note()));
        }
        words.add(
                visit.isPresent()
                        ? Texts.of(
                                "log.words.visit", sighting.date(), visit.get().label())
                        : Texts.of("log.words.casual", sighting.date()));
        return String.join(" · ", words);
    }

    private static String place(Place place, RiverNetwork network) {
        String km = network.rivers().size() == 1
                ? Texts.of("log.words.place", place.chainage(), place.uncertaintyMetres())
                : Texts.of(
                        "log.words.placeOn",
                        network.river(place.riverId()).name(),
                        place.chainage(),
                        place.uncertaintyMetres());
        return place.bank() == Bank.UNKNOWN ? km : km + ", " + Texts.word(place.bank());
    }

    private static String birds(Sighting sighting) {
        String which = (sighting.sex() == Sex.UNKNOWN ? "" : Texts.word(sighting.sex()) + " ")
                + (sighting.age() == Age.UNKNOWN ? "" : Texts.word(sighting.age()) + " ");
        List<String> birds = new ArrayList<>();
        birds.add(Texts.of("log.words.birds", sighting.count(), which + Texts.word(sighting.species())));
        sighting.activities().stream()
                .sorted()
                .map((Activity activity) -> Texts.word(activity))
                .forEach(birds::add);
        return String.join(", ", birds);
    }
}
