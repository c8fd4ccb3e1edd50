package org.ouzelbook.ui.app;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Direction;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.river.RiverNetwork;

/**
 * A visit with what it covered and showed, and what it looked for and did not see.
 *
 * @param key its key
 * @param visit its label
 * @param date the local date
 * @param river name of the river
 * @param fromKm lower end of the stretch covered
 * @param toKm upper end of the stretch covered
 * @param lengthKm its length, in km
 * @param start local time of the start
 * @param end local time of the end; empty while it is open
 * @param minutes how long it took, in minutes
 * @param direction which way it went
 * @param observers who went
 * @param lookedFor the species that were looked for
 * @param sightings how many sightings it has
 * @param notSeen the species that were looked for and not seen: absent on the stretch covered, and only there; none while
 *     the visit is open, or if it could not have found birds
 */
public record VisitAnswer(
        UUID key,
        String visit,
        LocalDate date,
        String river,
        Optional<Chainage> fromKm,
        Optional<Chainage> toKm,
        Optional<Double> lengthKm,
        Optional<LocalTime> start,
        Optional<LocalTime> end,
        Optional<Long> minutes,
        Optional<Direction> direction,
        List<String> observers,
        List<Species> lookedFor,
        int sightings,
        List<Species> notSeen) {
    /** Copies the lists. */
    public VisitAnswer {
        observers = List.copyOf(observers);
        lookedFor = List.copyOf(lookedFor);
        notSeen = List.copyOf(notSeen);
    }

    static VisitAnswer of(Visit visit, RiverNetwork network, List<Sighting> seen) {
        boolean shows =
                visit.end().isPresent() && visit.effective() && visit.walked().isPresent();
        List<Species> notSeen = visit.lookedFor().stream()
                .filter(species -> shows && seen.stream().noneMatch(sighting -> isOnVisit(sighting, species, visit)))
                .toList();
        return new VisitAnswer(
                visit.id(),
                visit.label(),
                visit.date(),
                network.river(visit.riverId()).name(),
                visit.walked().map(Stretch::lower),
                visit.walked().map(Stretch::upper),
                visit.walked().map(walked -> walked.length() / 1000),
                visit.start(),
                visit.end(),
                visit.start()
                        .flatMap(start -> visit.end()
                                .map(end -> Duration.between(start, end).toMinutes())),
                visit.direction(),
                visit.observers(),
                visit.lookedFor(),
                seen.size(),
                notSeen);
    }

    private static boolean isOnVisit(Sighting sighting, Species species, Visit visit) {
        return sighting.species().equals(species)
                && sighting.place().riverId().equals(visit.riverId())
                && visit.walked().orElseThrow().contains(sighting.place().chainage());
    }

    /** {@return the visit in words, one sentence each} */
    public List<String> words() {
        List<String> first = new ArrayList<>();
        first.add(Texts.of("log.visit.date", date, visit));
        fromKm.ifPresent(from ->
                first.add(Texts.of("log.visit.stretch", river, from, toKm.orElseThrow(), lengthKm.orElseThrow())));
        direction.ifPresent(way -> first.add(Texts.word(way)));
        if (start.isPresent()) {
            first.add(
                    end.isPresent()
                            ? Texts.of(
                                    "log.visit.times",
                                    start.get(),
                                    end.get(),
                                    minutes.orElse(0L) / 60,
                                    minutes.orElse(0L) % 60)
                            : Texts.of("log.visit.from", start.get()));
        }
        if (!observers.isEmpty()) {
            first.add(Texts.word(observers));
        }
        first.add(Texts.of("log.visit.lookingFor", lookedFor));
        List<String> words = new ArrayList<>(List.of(String.join(" · ", first)));
        if (end.isEmpty()) {
            words.add(Texts.of("log.visit.open"));
        } else {
            words.add(Texts.of("log.visit.sightings", sightings));
        }
        if (!notSeen.isEmpty()) {
            words.add(Texts.of("log.visit.notSeen", notSeen, fromKm.orElseThrow(), toKm.orElseThrow()));
        }
        return words;
    }
}
