package org.ouzelbook.ui.window;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.TrendWords;
import org.ouzelbook.ui.strip.Subject;

/** What there is to say of a sighting, a visit, a known place. */
final class WhyRecords {
    private final BookContents contents;

    WhyRecords(BookContents contents) {
        this.contents = contents;
    }

    /** {@return what there is to say of a subject; empty if it is none of these, or is no longer there} */
    Optional<Explanation> of(Subject subject) {
        if (subject instanceof Subject.OfSighting sighting) {
            return sighting(sighting.id()).map(this::sighting);
        }
        if (subject instanceof Subject.OfVisit visit) {
            return visit(visit.id()).map(this::visit);
        }
        if (subject instanceof Subject.OfLandmark wanted) {
            return contents.records().landmarks().stream()
                    .filter(landmark -> landmark.id().equals(wanted.id()))
                    .findFirst()
                    .map(this::landmark);
        }
        return Optional.empty();
    }

    private Optional<Sighting> sighting(UUID id) {
        return contents.records().sightings().stream()
                .filter(sighting -> sighting.id().equals(id))
                .findFirst();
    }

    private Optional<Visit> visit(UUID id) {
        return contents.records().visits().stream()
                .filter(visit -> visit.id().equals(id))
                .findFirst();
    }

    private String river(UUID id) {
        return contents.records().rivers().river(id).name();
    }

    /** {@return a record as one line of the notebook} */
    static String line(Sighting sighting) {
        List<String> words = new ArrayList<>();
        words.add(Texts.of("window.why.line", sighting.date(), sighting.place().chainage(), sighting.count()));
        if (!sighting.activities().isEmpty()) {
            words.add(Texts.word(sighting.activities().stream().sorted().toList()));
        }
        if (!sighting.label().isBlank()) {
            words.add(sighting.label());
        }
        return String.join(" · ", words);
    }

    private Explanation sighting(Sighting sighting) {
        List<String> seen = new ArrayList<>();
        seen.add(Texts.of(
                "window.why.seen",
                sighting.count(),
                sighting.species(),
                sighting.age(),
                sighting.sex(),
                sighting.activities().isEmpty()
                        ? Texts.of("window.why.noActivity")
                        : Texts.word(sighting.activities().stream().sorted().toList())));
        sighting.flewTo()
                .ifPresent(to ->
                        seen.add(Texts.of(sighting.turnedBack() ? "window.why.turnedBack" : "window.why.flew", to)));
        for (UUID other : sighting.simultaneousWith()) {
            sighting(other).ifPresent(bird -> seen.add(Texts.of("window.why.atOnce", line(bird))));
        }
        if (!sighting.rings().isBlank()) {
            seen.add(Texts.of("window.why.rings", sighting.rings()));
        }
        if (!sighting.note().isBlank()) {
            seen.add(Texts.of("window.why.note", sighting.note()));
        }
        String observer = sighting.observer();
        seen.add(Texts.of("window.why.source", observer.isBlank() ? 0 : 1, observer, visitWords(sighting)));
        return new Explanation(
                sighting.label().isBlank()
                        ? Texts.of("window.why.sighting")
                        : Texts.of("window.why.sightingLabelled", sighting.label()),
                Texts.of(
                        "window.why.sightingPlace",
                        sighting.date(),
                        sighting.time()
                                .map(Texts::word)
                                .map(time -> ", " + time)
                                .orElse(""),
                        river(sighting.place().riverId()),
                        sighting.place().chainage(),
                        sighting.place().uncertaintyMetres()),
                List.of(
                        new Explanation.Section("", seen),
                        new Explanation.Section(Texts.of("window.why.part"), List.of(part(sighting)))));
    }

    private String visitWords(Sighting sighting) {
        return sighting.visitId()
                .flatMap(this::visit)
                .map(visit -> Texts.of("window.why.onVisit", visit.label()))
                .orElseGet(() -> Texts.of("window.why.casual"));
    }

    private String part(Sighting sighting) {
        Optional<TerritoryMap> map =
                Optional.ofNullable(contents.maps().get(sighting.date().getYear()));
        for (TerritoryMap.RiverMap river : map.map(TerritoryMap::rivers).orElse(List.of())) {
            for (Territory territory : river.territories()) {
                if (territory.registrations().stream().anyMatch(one -> one.id().equals(sighting.id()))) {
                    return Texts.of("window.why.inTerritory", territory.id(), territory.standing());
                }
            }
            for (TerritoryMap.SetAside aside : river.setAside()) {
                if (aside.sighting().id().equals(sighting.id())) {
                    return TrendWords.sentence(Texts.of("window.why.setAside", Texts.of(aside.because())));
                }
            }
        }
        return Texts.of("window.why.inNone");
    }

    private Explanation visit(Visit visit) {
        List<String> walked = new ArrayList<>();
        walked.add(visit.walked()
                .map(stretch -> Texts.of("window.why.walked", stretch, stretch.length() / 1000))
                .orElseGet(() -> Texts.of("window.why.walkedUnknown")));
        if (visit.start().isPresent() && visit.end().isPresent()) {
            walked.add(Texts.of(
                    "window.why.times", visit.start().get(), visit.end().get()));
        }
        if (!visit.observers().isEmpty()) {
            walked.add(Texts.of("window.why.observers", visit.observers()));
        }
        if (!(visit.level() + visit.weather()).isBlank()) {
            walked.add(Texts.of("window.why.conditions", (visit.level() + " " + visit.weather()).strip()));
        }
        if (!visit.effective()) {
            walked.add(Texts.of("window.why.notEffective"));
        }
        if (!visit.note().isBlank()) {
            walked.add(Texts.of("window.why.note", visit.note()));
        }
        List<String> found =
                visit.lookedFor().stream().map(species -> found(visit, species)).toList();
        return new Explanation(
                Texts.of("window.why.visit", visit.date()),
                river(visit.riverId()) + " · " + visit.label(),
                List.of(
                        new Explanation.Section("", walked),
                        new Explanation.Section(Texts.of("window.why.lookedFor"), found)));
    }

    private String found(Visit visit, Species species) {
        long sightings = contents.records().sightings().stream()
                .filter(sighting -> sighting.visitId().equals(Optional.of(visit.id()))
                        && sighting.species().equals(species))
                .count();
        if (sightings == 0 && visit.start().isPresent() && visit.end().isEmpty()) {
            return Texts.of("window.why.noneSoFar", species);
        }
        boolean absence = sightings == 0 && visit.effective() && visit.walked().isPresent();
        return absence
                ? Texts.of("window.why.absent", species, visit.walked().get())
                : Texts.of("window.why.found", species, sightings);
    }

    private Explanation landmark(Landmark landmark) {
        List<String> lines = new ArrayList<>();
        lines.add(Texts.of("window.why.landmarkKind", landmark.kind()));
        if (!landmark.aliases().isEmpty()) {
            lines.add(Texts.of("window.why.aliases", landmark.aliases()));
        }
        return new Explanation(
                landmark.name(),
                Texts.of(
                        "window.why.landmarkPlace",
                        river(landmark.place().riverId()),
                        landmark.place().chainage()),
                List.of(new Explanation.Section("", lines)));
    }
}
