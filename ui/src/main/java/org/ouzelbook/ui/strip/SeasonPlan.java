package org.ouzelbook.ui.strip;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Stream;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;

/** One season made ready: its rows, and who stands where, found once for every distance from which it is looked at. */
final class SeasonPlan implements ReadyStrip {
    private static final double CLOSEST_METRES = 200;

    private final SeasonScene scene;
    private final List<OnWater> waters = new ArrayList<>();
    private final Set<UUID> ofTerritories = new HashSet<>();
    private final Map<UUID, Sighting> sightings = new HashMap<>();
    private final StripTelling words;

    /** What one river shows. */
    record OnWater(
            Water water,
            Rounds rounds,
            SortedSet<LocalDate> dates,
            Map<LocalDate, List<Visit>> visits,
            Map<LocalDate, SightingRow> rows,
            List<Territory> territories) {}

    SeasonPlan(SeasonScene scene) {
        this.scene = scene;
        this.words = new StripTelling(StripWords.title(scene), () -> StripWords.description(scene));
        scene.sightings().forEach(sighting -> sightings.put(sighting.id(), sighting));
        for (Water water : scene.waters().list()) {
            waters.add(onWater(water));
        }
        for (OnWater one : waters) {
            one.territories().stream()
                    .filter(Territory::accepted)
                    .flatMap(territory -> territory.registrations().stream())
                    .forEach(sighting -> ofTerritories.add(sighting.id()));
        }
    }

    private OnWater onWater(Water water) {
        UUID river = water.river().id();
        List<Visit> visits = scene.visits().stream()
                .filter(visit -> visit.riverId().equals(river))
                .toList();
        List<Sighting> own = scene.sightings().stream()
                .filter(sighting -> sighting.place().riverId().equals(river))
                .toList();
        Rounds rounds = Rounds.of(visits, own);
        Map<LocalDate, List<Visit>> visitsByRow = new TreeMap<>();
        visits.forEach(visit -> visitsByRow
                .computeIfAbsent(rounds.row(visit.date()), date -> new ArrayList<>())
                .add(visit));
        Map<LocalDate, List<Sighting>> byRow = new TreeMap<>();
        own.forEach(sighting -> byRow.computeIfAbsent(rounds.row(sighting.date()), date -> new ArrayList<>())
                .add(sighting));
        Map<LocalDate, SightingRow> rows = new TreeMap<>();
        byRow.forEach((date, list) -> rows.put(
                date,
                SightingRow.of(list, sighting -> water.metres(sighting.place().chainage()))));
        return new OnWater(
                water,
                rounds,
                rounds.rows(),
                visitsByRow,
                rows,
                scene.mapOf(river).map(TerritoryMap.RiverMap::territories).orElse(List.of()));
    }

    SeasonScene scene() {
        return scene;
    }

    StripTelling words() {
        return words;
    }

    List<OnWater> waters() {
        return waters;
    }

    /** {@return keys of the sightings that belong to an accepted territory} */
    Set<UUID> ofTerritories() {
        return ofTerritories;
    }

    @Override
    public StripDrawing drawing(Frame frame) {
        return new SeasonLayout(this, frame).drawing();
    }

    @Override
    public Frame farthest(double width, double height) {
        return Frame.fitting(scene.waters(), width, height);
    }

    @Override
    public double closest() {
        return CLOSEST_METRES;
    }

    @Override
    public List<Sighting> recordsOf(Subject subject) {
        if (!(subject instanceof Subject.OfTerritory chosen)
                || chosen.season() != scene.map().season()) {
            return List.of();
        }
        return waters.stream()
                .filter(one -> one.water().river().id().equals(chosen.riverId()))
                .flatMap(one -> one.territories().stream())
                .filter(territory -> territory.id().equals(chosen.id()))
                .flatMap(territory -> territory.hangsOn().stream())
                .flatMap(hangs -> hangs.records().stream())
                .distinct()
                .flatMap(id -> Stream.ofNullable(sightings.get(id)))
                .toList();
    }
}
