package org.ouzelbook.ui.app;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import org.ouzelbook.stats.survey.ModelCount;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap.RiverMap;
import org.ouzelbook.stats.survey.TerritoryModel;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Sighting;

/** What the model says of one river in one season, and of each territory by rule. */
final class RiverByModel {
    private static final double LEAST_SHOWN = 0.0005;

    /** A record hangs on the model's count where the expected number changes by this much without it. */
    private static final double CHANGE_TOLD = 0.3;

    /** Two territories by rule that are one with this probability are told so. */
    private static final double TOGETHER_TOLD = 0.05;

    private final RiverMap map;
    private final Optional<ModelCount> count;
    private final double level;
    private final Map<UUID, Double> expectedWithout;
    private final double expectedWithAll;

    private RiverByModel(
            RiverMap map,
            Optional<ModelCount> count,
            double level,
            Map<UUID, Double> expectedWithout,
            double expectedWithAll) {
        this.map = map;
        this.count = count;
        this.level = level;
        this.expectedWithout = expectedWithout;
        this.expectedWithAll = expectedWithAll;
    }

    static RiverByModel of(int season, RiverMap map, TerritoryModel model, Water water, double level) {
        UUID river = map.river().id();
        return new RiverByModel(
                map,
                model.count(season, river, water),
                level,
                model.expectedWithout(season, river, water),
                model.expectedWithAll(season, river, water));
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
                found.mostProbable().stream()
                        .map(stretch -> new ByModel.Ground(
                                stretch.lower().km(), stretch.upper().km()))
                        .toList(),
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

    OptionalDouble probability(Territory territory) {
        return count.map(found -> OptionalDouble.of(
                        found.ground(territory.centre(), level).probability()))
                .orElseGet(OptionalDouble::empty);
    }

    Optional<ByModel.End> lowerEnd(Territory territory) {
        return count.map(found -> end(found.ground(territory.centre(), level).lower()));
    }

    Optional<ByModel.End> upperEnd(Territory territory) {
        return count.map(found -> end(found.ground(territory.centre(), level).upper()));
    }

    private static ByModel.End end(List<Double> metres) {
        return new ByModel.End(metres.get(0) / 1000, metres.get(1) / 1000, metres.get(2) / 1000);
    }

    /** Why a territory stands, by the rules, then by the model. */
    List<Message> because(Territory territory) {
        List<Message> because = new ArrayList<>(territory.because());
        count.ifPresent(found -> {
            ModelCount.Reach reach = found.reach(territory.centre(), level);
            because.add(Message.of("map.model.stands", reach.probability(), reach.lower(), reach.upper(), level));
            neighbour(territory).ifPresent(next -> {
                double one = found.together(territory.centre(), next.centre());
                if (one >= TOGETHER_TOLD) {
                    because.add(Message.of("map.model.oneWith", next.id(), one));
                }
            });
        });
        return because;
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
            Double without = expectedWithout.get(sighting.id());
            if (without != null && Math.abs(without - expectedWithAll) >= change) {
                most = sighting;
                change = Math.abs(without - expectedWithAll);
            }
        }
        if (most != null) {
            hangs.add(Message.of(
                    "map.model.hangsOn",
                    MapAnswer.name(most),
                    expectedWithout.getOrDefault(most.id(), 0.0),
                    expectedWithAll));
        }
        return hangs;
    }
}
