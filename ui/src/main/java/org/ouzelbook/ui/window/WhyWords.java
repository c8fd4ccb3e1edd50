package org.ouzelbook.ui.window;

import java.time.Year;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.IntFunction;
import org.ouzelbook.stats.survey.CountTrend;
import org.ouzelbook.stats.survey.RiverStory;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.ui.app.ModelShading;
import org.ouzelbook.ui.app.StoryWords;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.TrendWords;
import org.ouzelbook.ui.strip.Subject;

/** Why a thing on the strip is as it is, in sentences. */
final class WhyWords {
    /** Reasons that keep a territory apart from its neighbour. */
    private static final Set<String> APART = Set.of(
            "map.because.simultaneous",
            "map.because.twoNests",
            "map.because.otherTurnedBack",
            "map.because.decidedBoundary",
            "map.because.decidedBetween",
            "map.because.tooLong");

    private final BookContents contents;
    private final IntFunction<Optional<ModelShading>> model;
    private final IntFunction<Optional<RiverStory>> stories;

    /**
     * @param contents what the book holds
     * @param model what the model makes of a season; empty while it counts
     * @param stories the story of a year; empty while it is worked out
     */
    WhyWords(
            BookContents contents,
            IntFunction<Optional<ModelShading>> model,
            IntFunction<Optional<RiverStory>> stories) {
        this.contents = contents;
        this.model = model;
        this.stories = stories;
    }

    /**
     * {@return what there is to say of a subject; empty if it is no longer there}
     *
     * @param subject something on the strip
     */
    Optional<Explanation> of(Subject subject) {
        if (subject instanceof Subject.OfTerritory territory) {
            return riverMap(territory.season(), territory.riverId())
                    .flatMap(map -> map.territories().stream()
                            .filter(one -> one.id().equals(territory.id()))
                            .findFirst()
                            .map(one -> territory(territory.season(), map, one)));
        }
        if (subject instanceof Subject.OfSighting sighting) {
            return sighting(sighting.id()).map(this::sighting);
        }
        if (subject instanceof Subject.OfVisit visit) {
            return visit(visit.id()).map(this::visit);
        }
        if (subject instanceof Subject.OfSeason season) {
            return Optional.ofNullable(contents.maps().get(season.season())).map(this::season);
        }
        if (!(subject instanceof Subject.OfLandmark wanted)) {
            return new WhyMarks(contents).of(subject);
        }
        return contents.records().landmarks().stream()
                .filter(landmark -> landmark.id().equals(wanted.id()))
                .findFirst()
                .map(this::landmark);
    }

    private Optional<TerritoryMap.RiverMap> riverMap(int season, UUID riverId) {
        return Optional.ofNullable(contents.maps().get(season))
                .flatMap(map -> map.rivers().stream()
                        .filter(river -> river.river().id().equals(riverId))
                        .findFirst());
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

    private Explanation territory(int season, TerritoryMap.RiverMap map, Territory territory) {
        List<String> stands = new ArrayList<>();
        List<String> apart = new ArrayList<>();
        for (Message because : territory.because()) {
            (APART.contains(because.key()) ? apart : stands).add(sentence(Texts.of(because)));
        }
        List<String> hangs = territory.hangsOn().stream()
                .map(one -> sentence(Texts.of(one.otherwise())))
                .toList();
        List<Explanation.Section> sections = new ArrayList<>();
        sections.add(new Explanation.Section("", stands));
        sections.add(new Explanation.Section(
                "", WhyMarks.byModel(model.apply(season), map.river().id(), territory.id())));
        if (!apart.isEmpty()) {
            sections.add(new Explanation.Section(Texts.of("window.why.apart"), apart));
        }
        sections.add(new Explanation.Section(
                Texts.of("window.why.hangsOn"),
                hangs.isEmpty() ? List.of(Texts.of("window.why.nothingSingle")) : hangs));
        sections.add(new Explanation.Section(
                Texts.of("window.why.registrations"),
                territory.registrations().stream().map(this::line).toList()));
        return new Explanation(
                Texts.of("window.why.territory", territory.id()),
                Texts.of(
                        "window.why.territoryPlace",
                        map.river().name(),
                        territory.stretch(),
                        territory.standing(),
                        Year.of(season)),
                sections);
    }

    /** A record as one line of the notebook. */
    private String line(Sighting sighting) {
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
                    return sentence(Texts.of("window.why.setAside", Texts.of(aside.because())));
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

    /**
     * {@return what there is to say of a season}
     *
     * @param map its territories
     */
    Explanation season(TerritoryMap map) {
        List<Explanation.Section> sections = new ArrayList<>();
        sections.add(new Explanation.Section(
                Texts.of("window.why.story"),
                stories.apply(map.season())
                        .map(story ->
                                story.findings().stream().map(StoryWords::whole).toList())
                        .orElse(List.of(Texts.of("window.why.workedOut")))));
        sections.addAll(decided(map));
        for (TerritoryMap.RiverMap river : map.rivers()) {
            List<String> lines = new ArrayList<>();
            lines.add(Texts.of(
                    "window.why.count",
                    river.count().likely(),
                    river.count().min(),
                    river.count().max(),
                    river.surveyedKm(),
                    river.effectiveVisits(),
                    river.visits(),
                    river.count().min() < river.count().max() ? 1 : 0));
            lines.addAll(
                    WhyMarks.byModel(model.apply(map.season()), river.river().id()));
            if (river.count().edge() + river.count().unassigned() > 0) {
                lines.add(Texts.of(
                        "window.why.left", river.count().edge(), river.count().unassigned()));
            }
            river.count().readings().stream()
                    .filter(reading -> reading.count() != river.count().likely())
                    .map(reading -> Texts.of("window.why.reading", Texts.of(reading.rule()), reading.count()))
                    .forEach(lines::add);
            sections.add(new Explanation.Section(river.river().name(), lines));
        }
        if (!map.warnings().isEmpty()) {
            sections.add(new Explanation.Section(
                    Texts.of("window.why.warnings"),
                    map.warnings().stream()
                            .map(Texts::of)
                            .map(WhyWords::sentence)
                            .toList()));
        }
        return new Explanation(
                Texts.of("window.why.season", Year.of(map.season())),
                Texts.of("window.why.byRule", map.species()),
                sections);
    }

    /** What surveyors decided of a season, and the answer by the rules alone beside it; nothing where nobody decided anything. */
    private List<Explanation.Section> decided(TerritoryMap map) {
        TerritoryMap without = contents.undecided().get(map.season());
        if (without == null) {
            return List.of();
        }
        List<String> lines = new ArrayList<>();
        contents.records()
                .decisions(map.species(), map.season())
                .forEach(decision -> lines.add(Texts.of(
                        "window.why.decision",
                        decision.kind(),
                        decision.stretch().length() > 0
                                ? decision.stretch()
                                : decision.stretch().lower(),
                        contents.records().rivers().river(decision.riverId()).name(),
                        decision.by(),
                        decision.on(),
                        decision.note().map(note -> 1).orElse(0),
                        decision.note().orElse(""))));
        without.total()
                .ifPresent(
                        total -> lines.add(Texts.of("window.why.undecided", total.likely(), total.min(), total.max())));
        return List.of(new Explanation.Section(Texts.of("window.why.decisions"), lines));
    }

    /**
     * {@return what there is to say of all seasons}
     *
     * @param trend the trend of their counts
     */
    Explanation seasons(CountTrend trend) {
        List<Explanation.Section> sections = new ArrayList<>();
        Optional<RiverStory> worked = stories.apply(contents.maps().lastKey());
        worked.ifPresentOrElse(
                story -> {
                    sections.add(new Explanation.Section("", told(story, RiverStory.Topic.DIRECTION)));
                    List<String> sure = new ArrayList<>(told(story, RiverStory.Topic.TREND));
                    sure.addAll(told(story, RiverStory.Topic.CHANGE));
                    sections.add(new Explanation.Section(Texts.of("window.why.sure"), sure));
                },
                () -> sections.add(new Explanation.Section("", List.of(Texts.of("window.why.workedOut")))));
        if (!trend.warnings().isEmpty()) {
            sections.add(new Explanation.Section(
                    Texts.of("window.why.warnings"),
                    trend.warnings().stream()
                            .map(Texts::of)
                            .map(WhyWords::sentence)
                            .toList()));
        }
        List<CountTrend.SeasonTotals> seasons = trend.seasons();
        return new Explanation(
                Texts.of(
                        "window.finding.seasons",
                        Year.of(seasons.get(0).season()),
                        Year.of(seasons.get(seasons.size() - 1).season())),
                Texts.of("window.why.byRule", trend.species()),
                sections.stream()
                        .filter(section -> !section.sentences().isEmpty())
                        .toList());
    }

    private static List<String> told(RiverStory story, RiverStory.Topic topic) {
        return story.about(topic).stream().map(StoryWords::whole).toList();
    }

    private static String sentence(String words) {
        return TrendWords.sentence(words);
    }
}
