package org.ouzelbook.ui.app;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.function.Function;
import org.ouzelbook.stats.estimator.segmentation.LinePosterior.Ground;
import org.ouzelbook.stats.survey.ModelCount;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap.RiverMap;
import org.ouzelbook.stats.survey.TerritoryModel;
import org.ouzelbook.stats.survey.TerritoryModel.Influence;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Stretch;

/** What the model says of one river in one season, and of each territory by rule. */
final class RiverByModel {
    private static final double LEAST_SHOWN = 0.0005;

    /** A record hangs on the model's count where the expected number changes by this much without it. */
    private static final double CHANGE_TOLD = 0.3;

    /** Two territories by rule that are one with this probability are told so, and so is one that reaches into another river. */
    private static final double TOGETHER_TOLD = 0.05;

    private final RiverMap map;
    private final Optional<ModelCount> count;
    private final double level;
    private final Influence influence;
    private final Function<UUID, String> names;

    private RiverByModel(
            RiverMap map, Optional<ModelCount> count, double level, Influence influence, Function<UUID, String> names) {
        this.map = map;
        this.count = count;
        this.level = level;
        this.influence = influence;
        this.names = names;
    }

    static RiverByModel of(int season, RiverMap map, TerritoryModel model, Water water, double level) {
        UUID river = map.river().id();
        return new RiverByModel(
                map, model.count(season, river, water), level, model.influence(season, river, water), model::riverName);
    }

    ByModel answer() {
        return count.map(this::answer)
                .orElseGet(() -> ByModel.none(
                        level,
                        Message.of(map.surveyed().isEmpty() ? "map.model.notWalked" : "map.model.contradiction")));
    }

    private ByModel answer(ModelCount found) {
        return new ByModel(
                OptionalDouble.of(found.expected()),
                OptionalDouble.of(found.lower(level)),
                OptionalDouble.of(found.upper(level)),
                level,
                Optional.of(distribution(found)),
                OptionalDouble.of(found.expectedUnseen()),
                found.mostProbable().stream().map(this::ground).toList(),
                found.roomForUnseen().stream()
                        .map(room -> new ByModel.Room(
                                room.stretch().lower().km(),
                                room.stretch().upper().km(),
                                room.probability()))
                        .toList(),
                found.foundByVisit().stream()
                        .map(visit -> new ByModel.Found(visit.date(), visit.passed(), visit.found()))
                        .toList(),
                Optional.empty());
    }

    private ByModel.Ground ground(ModelCount.Mapped territory) {
        return new ByModel.Ground(
                territory.stretch().lower().km(),
                territory.stretch().upper().km(),
                territory
                        .arm()
                        .map(arm -> new ByModel.Arm(
                                names.apply(arm.riverId()),
                                arm.stretch().lower().km(),
                                arm.stretch().upper().km())));
    }

    private static Map<String, Double> distribution(ModelCount found) {
        Map<String, Double> distribution = new LinkedHashMap<>();
        List<Double> law = found.distribution();
        for (int number = 0; number < law.size(); number++) {
            if (law.get(number) >= LEAST_SHOWN) {
                distribution.put(String.valueOf(number), law.get(number));
            }
        }
        return distribution;
    }

    /**
     * What the model knows of the territory that holds the centre of one by rule; empty where there is no count.
     *
     * @param territory a territory by rule
     */
    Optional<Ground> ground(Territory territory) {
        return count.map(found -> found.ground(territory.centre(), level));
    }

    static ByModel.End end(List<Double> metres) {
        return new ByModel.End(metres.get(0) / 1000, metres.get(1) / 1000, metres.get(2) / 1000);
    }

    /** Why a territory stands, by the rules, then by the model. */
    List<Message> because(Territory territory, Optional<Ground> ground) {
        List<Message> because = new ArrayList<>(territory.because());
        ground.ifPresent(known -> because.add(Message.of(
                "map.model.stands", known.probability(), limits(known.lower()), limits(known.upper()), level)));
        count.ifPresent(found -> found.reaching(territory.centre()).stream()
                .filter(reach -> reach.probability() >= TOGETHER_TOLD)
                .forEach(reach ->
                        because.add(Message.of("map.model.reaches", names.apply(reach.river()), reach.probability()))));
        count.ifPresent(found -> neighbour(territory).ifPresent(next -> {
            double one = found.together(territory.centre(), next.centre());
            if (one >= TOGETHER_TOLD) {
                because.add(Message.of("map.model.oneWith", next.id(), one));
            }
        }));
        return because;
    }

    private static Stretch limits(List<Double> metres) {
        return new Stretch(new Chainage(metres.get(0)), new Chainage(metres.get(2)));
    }

    private Optional<Territory> neighbour(Territory territory) {
        int place = map.territories().indexOf(territory);
        return place + 1 < map.territories().size()
                ? Optional.of(map.territories().get(place + 1))
                : Optional.empty();
    }

    /** On what the answer hangs, by the rules, then the record on which the model's count hangs most. */
    List<Message> hangsOn(Territory territory) {
        List<Message> hangs = new ArrayList<>(
                territory.hangsOn().stream().map(Territory.HangsOn::otherwise).toList());
        Sighting most = null;
        double change = CHANGE_TOLD;
        for (Sighting sighting : territory.registrations()) {
            Double without = influence.without().get(sighting.id());
            if (without != null && Math.abs(without - influence.withAll()) >= change) {
                most = sighting;
                change = Math.abs(without - influence.withAll());
            }
        }
        if (most != null) {
            hangs.add(Message.of(
                    "map.model.hangsOn",
                    MapAnswer.name(most),
                    influence.without().getOrDefault(most.id(), 0.0),
                    influence.withAll()));
        }
        return hangs;
    }
}
