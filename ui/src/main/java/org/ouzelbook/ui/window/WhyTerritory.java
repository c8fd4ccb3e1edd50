package org.ouzelbook.ui.window;

import java.time.Year;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.IntFunction;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.ui.app.ModelShading;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.TrendWords;
import org.ouzelbook.ui.strip.Subject;

/**
 * Why a territory stands: what the rules and the model each say, what it hangs on, what keeps it apart from its neighbours.
 * While nests are not shown, it tells that they count, and neither their names nor the days when they were looked at.
 */
final class WhyTerritory {
    /** Reasons that keep a territory apart from its neighbour. */
    private static final Set<String> APART = Set.of(
            "map.because.simultaneous",
            "map.because.twoNests",
            "map.because.otherTurnedBack",
            "map.because.decidedBoundary",
            "map.because.decidedBetween",
            "map.because.tooLong");

    /** Reasons that only tell of nests. */
    private static final Set<String> OF_NESTS = Set.of("map.because.nest", "map.because.attempts", "map.because.brood");

    /** Reasons that name every registration, and what says them shorter: the records are listed below. */
    private static final Map<String, String> SHORTER = Map.of("map.because.sightings", "window.why.sightings");

    /** Reasons that name two nests, and what says them without. */
    private static final Map<String, String> DISCREET = Map.of("map.because.twoNests", "window.why.twoNests");

    private final BookContents contents;
    private final IntFunction<Optional<ModelShading>> model;
    private final boolean nestsShown;
    private final Set<Object> nests;

    /**
     * @param contents what the book holds
     * @param model what the model makes of a season; empty while it counts
     * @param nestsShown whether nests may be told one by one
     */
    WhyTerritory(BookContents contents, IntFunction<Optional<ModelShading>> model, boolean nestsShown) {
        this.contents = contents;
        this.model = model;
        this.nestsShown = nestsShown;
        nests = contents.records().nests().stream().map(Nest::label).collect(Collectors.toUnmodifiableSet());
    }

    /** {@return what there is to say of a territory; empty if it is no longer there} */
    Optional<Explanation> of(Subject.OfTerritory wanted) {
        return Optional.ofNullable(contents.maps().get(wanted.season()))
                .flatMap(map -> map.rivers().stream()
                        .filter(river -> river.river().id().equals(wanted.riverId()))
                        .findFirst())
                .flatMap(river -> river.territories().stream()
                        .filter(one -> one.id().equals(wanted.id()))
                        .findFirst()
                        .map(one -> territory(wanted.season(), river, one)));
    }

    private Explanation territory(int season, TerritoryMap.RiverMap map, Territory territory) {
        List<String> stands = told(territory, because -> !APART.contains(because.key()));
        if (!nestsShown && !territory.nests().isEmpty()) {
            stands.add(Texts.of("window.why.nestsHidden", territory.nests().size()));
        }
        List<String> hangs = territory.hangsOn().stream()
                .map(Territory.HangsOn::otherwise)
                .map(this::sentence)
                .distinct()
                .toList();
        List<Explanation.Section> sections = Stream.of(
                        new Explanation.Section(Texts.of("window.why.rulesSay"), stands),
                        new Explanation.Section(
                                Texts.of("window.why.modelSays"),
                                byModel(season, map.river().id(), territory.id())),
                        new Explanation.Section(
                                Texts.of("window.why.hangsOn"),
                                hangs.isEmpty() ? List.of(Texts.of("window.why.nothingSingle")) : hangs),
                        new Explanation.Section(
                                Texts.of("window.why.apart"),
                                told(territory, because -> APART.contains(because.key()))),
                        new Explanation.Section(
                                Texts.of("window.why.registrations"),
                                territory.registrations().stream()
                                        .map(WhyRecords::line)
                                        .toList()))
                .filter(section -> !section.sentences().isEmpty())
                .toList();
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

    private List<String> told(Territory territory, Predicate<Message> which) {
        return territory.because().stream()
                .filter(which)
                .filter(because -> nestsShown || !OF_NESTS.contains(because.key()))
                .map(this::sentence)
                .distinct()
                .collect(Collectors.toCollection(ArrayList::new));
    }

    private List<String> byModel(int season, UUID riverId, String letter) {
        return WhyMarks.byModel(model.apply(season), riverId, letter);
    }

    private String sentence(Message reason) {
        Message told = nestsShown ? reason : (Message) discreet(reason);
        String key = SHORTER.getOrDefault(told.key(), told.key());
        return TrendWords.sentence(Texts.of(key, told.facts().toArray()));
    }

    /** A fact of a reason with no nest named in it. */
    private Object discreet(Object fact) {
        if (nests.contains(fact)) {
            return Texts.of("window.why.aNest");
        }
        if (fact instanceof Message inner) {
            return new Message(
                    DISCREET.getOrDefault(inner.key(), inner.key()),
                    inner.facts().stream().map(this::discreet).toList());
        }
        return fact instanceof List<?> several
                ? several.stream().map(this::discreet).distinct().toList()
                : fact;
    }
}
