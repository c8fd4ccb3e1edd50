package org.ouzelbook.ui.strip;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.LandmarkKind;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.river.RiverNetwork;

/** An invented river with a tributary, ten seasons of visits and one season of sightings, for drawing. */
public final class SampleRiver {
    public static final River ARREL = new River(key("Arrel Water"), "Arrel Water", Optional.empty());
    public static final River SORN = new River(
            key("Sorn Beck"), "Sorn Beck", Optional.of(new River.Confluence(ARREL.id(), Chainage.ofKm(11.8))));

    private static final Message BECAUSE = Message.of("strip.territories");

    private final List<Landmark> landmarks = new ArrayList<>();
    private final List<Visit> visits = new ArrayList<>();
    private final List<Sighting> sightings = new ArrayList<>();

    public static UUID key(String name) {
        return UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8));
    }

    public static SampleRiver of2026() {
        SampleRiver sample = new SampleRiver();
        sample.landmarks();
        sample.season2026();
        return sample;
    }

    public SurveyRecords records() {
        RiverNetwork network = RiverNetwork.of(List.of(ARREL, SORN), List.of());
        return new SurveyRecords(
                network, landmarks, List.of(), visits, sightings, List.of(), List.of(), List.of(), List.of(),
                List.of());
    }

    private void landmarks() {
        landmark("Mill Bridge", LandmarkKind.BRIDGE, 6.35);
        landmark("Long Weir", LandmarkKind.WEIR, 7.9);
        landmark("Otter Stone", LandmarkKind.ROCK, 9.05);
        landmark("Heron Wall", LandmarkKind.WALL, 9.3);
        landmark("Kirk Bridge", LandmarkKind.BRIDGE, 10.2);
        landmark("Sornfoot", LandmarkKind.CONFLUENCE, 11.8);
        landmark("Stepping Stones", LandmarkKind.ROCK, 13.1);
        landmark("Black Linn", LandmarkKind.FALL, 13.9);
        landmark("Aqueduct", LandmarkKind.BRIDGE, 14.6);
        landmarks.add(new Landmark(
                key("Beck Footbridge"), "Beck Footbridge", LandmarkKind.BRIDGE, place(SORN, 1.1), List.of(), true));
    }

    private void landmark(String name, LandmarkKind kind, double km) {
        landmarks.add(new Landmark(key(name), name, kind, place(ARREL, km), List.of(), false));
    }

    private static Place place(River river, double km) {
        return new Place(river.id(), Chainage.ofKm(km), Bank.UNKNOWN, 20, 1);
    }

    private void season2026() {
        visit(ARREL, "2026-02-24", 6, 15.4, true);
        visit(ARREL, "2026-03-16", 6, 15.4, true);
        visit(ARREL, "2026-03-30", 6, 12.1, true);
        visit(ARREL, "2026-04-13", 6, 15.4, true);
        visit(ARREL, "2026-04-27", 6, 15.4, true);
        visit(ARREL, "2026-05-11", 7.4, 15.4, true);
        visit(SORN, "2026-03-17", 0, 2.6, true);
        visit(SORN, "2026-04-14", 0, 2.6, false);
        visit(SORN, "2026-05-12", 0, 2.1, true);
        see("a1", ARREL, "2026-02-24", 6.6, 1, Activity.SINGING);
        see("a2", ARREL, "2026-03-16", 6.8, 2);
        see("a3", ARREL, "2026-03-30", 6.7, 1, Activity.CARRYING_MATERIAL);
        see("a4", ARREL, "2026-04-27", 6.68, 1, Activity.CARRYING_FOOD);
        see("b1", ARREL, "2026-02-24", 8.2, 1, Activity.SINGING);
        see("b2", ARREL, "2026-03-16", 8.0, 2);
        see("b3", ARREL, "2026-04-13", 8.2, 1);
        fly("b3", 8.55, true);
        see("c1", ARREL, "2026-03-16", 8.9, 1, Activity.CALLING);
        apart("b2", "c1");
        see("c2", ARREL, "2026-03-30", 9.2, 1, Activity.SINGING);
        see("c3", ARREL, "2026-04-13", 9.05, 2);
        see("c4", ARREL, "2026-04-27", 9.1, 1, Activity.CARRYING_FOOD);
        see("c5", ARREL, "2026-05-11", 9.0, 1, Activity.CARRYING_FAECAL_SAC);
        see("c6", ARREL, "2026-05-11", 9.06, 1, Activity.ALARM);
        see("d1", ARREL, "2026-02-24", 10.15, 1);
        see("d2", ARREL, "2026-03-30", 10.22, 1, Activity.BUILDING);
        see("d3", ARREL, "2026-04-13", 10.2, 2, Activity.SINGING);
        see("d4", ARREL, "2026-04-27", 10.3, 1);
        see("e1", ARREL, "2026-02-24", 11.5, 1, Activity.SINGING);
        see("e2", ARREL, "2026-04-13", 11.75, 1);
        fly("e2", 11.3, false);
        see("f1", ARREL, "2026-02-24", 13.0, 1);
        see("f2", ARREL, "2026-03-16", 13.15, 2);
        see("f3", ARREL, "2026-04-13", 13.1, 1, Activity.CARRYING_FOOD);
        see("f4", ARREL, "2026-04-27", 13.1, 1, Activity.CARRYING_FOOD);
        see("g1", ARREL, "2026-03-16", 14.5, 1, Activity.SINGING);
        see("g2", ARREL, "2026-04-27", 14.75, 1);
        see("x1", ARREL, "2026-05-11", 12.3, 1);
        young("x2", ARREL, "2026-05-11", 15.25);
        see("s1", SORN, "2026-03-17", 0.9, 1, Activity.SINGING);
        see("s2", SORN, "2026-05-12", 1.1, 1, Activity.CARRYING_FOOD);
        see("s3", SORN, "2026-05-12", 2.05, 1);
    }

    private void visit(River river, String date, double fromKm, double toKm, boolean effective) {
        visits.add(new Visit(
                key(river.name() + date),
                river.name() + " " + date,
                river.id(),
                LocalDate.parse(date),
                Optional.empty(),
                Optional.empty(),
                Optional.of(Stretch.ofKm(fromKm, toKm)),
                Optional.empty(),
                Optional.empty(),
                List.of("HB"),
                List.of(Species.DIPPER),
                "",
                "",
                effective,
                ""));
    }

    private void see(String label, River river, String date, double km, int count, Activity... activities) {
        sightings.add(new Sighting(
                key(label),
                label,
                Optional.of(key(river.name() + date)),
                LocalDate.parse(date),
                Optional.empty(),
                place(river, km),
                Species.DIPPER,
                count,
                Age.ADULT,
                Sex.UNKNOWN,
                Set.copyOf(Arrays.asList(activities)),
                Optional.empty(),
                "",
                Set.of(),
                Optional.empty(),
                false,
                "HB",
                ""));
    }

    private void young(String label, River river, String date, double km) {
        see(label, river, date, km, 1);
        Sighting last = sightings.remove(sightings.size() - 1);
        sightings.add(changed(last, Age.INDEPENDENT_JUVENILE, last.simultaneousWith(), last.flewTo(), false));
    }

    private void fly(String label, double toKm, boolean turnedBack) {
        sightings.replaceAll(one -> one.label().equals(label)
                ? changed(one, one.age(), one.simultaneousWith(), Optional.of(Chainage.ofKm(toKm)), turnedBack)
                : one);
    }

    private void apart(String one, String other) {
        sightings.replaceAll(bird -> bird.label().equals(one)
                ? changed(bird, bird.age(), Set.of(key(other)), bird.flewTo(), bird.turnedBack())
                : bird.label().equals(other)
                        ? changed(bird, bird.age(), Set.of(key(one)), bird.flewTo(), bird.turnedBack())
                        : bird);
    }

    private static Sighting changed(
            Sighting from, Age age, Set<UUID> simultaneousWith, Optional<Chainage> flewTo, boolean turnedBack) {
        return new Sighting(
                from.id(),
                from.label(),
                from.visitId(),
                from.date(),
                from.time(),
                from.place(),
                from.species(),
                from.count(),
                age,
                from.sex(),
                from.activities(),
                from.breedingCode(),
                from.rings(),
                simultaneousWith,
                flewTo,
                turnedBack,
                from.observer(),
                from.note());
    }

    /** The same bird seen once more, elsewhere on Arrel Water. */
    static Sighting moved(Sighting from, int number, double metres) {
        Place place = new Place(ARREL.id(), new Chainage(metres), Bank.UNKNOWN, 20, 1);
        return new Sighting(
                key("moved" + number),
                from.label(),
                from.visitId(),
                from.date(),
                from.time(),
                place,
                from.species(),
                from.count(),
                from.age(),
                from.sex(),
                from.activities(),
                from.breedingCode(),
                from.rings(),
                Set.of(),
                Optional.empty(),
                false,
                from.observer(),
                from.note());
    }

    /** The territories of 2026, as a surveyor would mark them by hand. */
    public TerritoryMap map2026() {
        List<Territory> arrel = List.of(
                territory("A", Territory.Standing.COUNTED, 14, 6.6, 6.8, "a1", "a2", "a3", "a4"),
                territory("B", Territory.Standing.COUNTED, 4, 8.0, 8.55, "b1", "b2", "b3"),
                territory("C", Territory.Standing.COUNTED, 14, 8.9, 9.2, "c1", "c2", "c3", "c4", "c5", "c6"),
                territory("D", Territory.Standing.COUNTED, 9, 10.15, 10.3, "d1", "d2", "d3", "d4"),
                territory("E", Territory.Standing.COUNTED, 2, 11.3, 11.75, "e1", "e2"),
                territory("F", Territory.Standing.COUNTED, 14, 13.0, 13.15, "f1", "f2", "f3", "f4"),
                territory("G", Territory.Standing.EDGE, 2, 14.5, 14.75, "g1", "g2"));
        List<Territory> sorn = List.of(
                territory("A", Territory.Standing.COUNTED, 14, 0.9, 1.1, "s1", "s2"),
                territory("B", Territory.Standing.NOT_ACCEPTED, 0, 2.05, 2.05, "s3"));
        return new TerritoryMap(
                Species.DIPPER,
                2026,
                MapSettings.usualFor(Species.DIPPER),
                List.of(
                        riverMap(
                                ARREL,
                                Stretch.ofKm(6, 15.4),
                                6,
                                new TerritoryMap.Count(6, 6, 8, 1, 2, List.of()),
                                arrel),
                        riverMap(
                                SORN, Stretch.ofKm(0, 2.6), 2, new TerritoryMap.Count(1, 1, 2, 0, 1, List.of()), sorn)),
                List.of());
    }

    /** Ten seasons with gaps: 2024 had one visit, and part of the water was missed in 2019. */
    public List<TerritoryMap> tenSeasons() {
        List<TerritoryMap> maps = new ArrayList<>();
        double[] homes = {6.6, 7.9, 9.1, 10.2, 11.5, 13.0, 14.6};
        for (int season = 2017; season < 2026; season++) {
            List<Territory> territories = new ArrayList<>();
            for (int i = 0; i < homes.length; i++) {
                int turn = (season * 7 + i * 5) % 11;
                if (turn > 1 && season != 2024) {
                    double half = 0.15 + 0.03 * turn;
                    double at = homes[i] + 0.02 * (turn - 5);
                    Territory.Standing standing = turn == 2 ? Territory.Standing.EDGE : Territory.Standing.COUNTED;
                    territories.add(territory(
                            String.valueOf((char) ('A' + i)), standing, turn > 6 ? 14 : turn, at - half, at + half));
                }
            }
            int likely = (int) territories.stream()
                    .filter(one -> one.standing() == Territory.Standing.COUNTED)
                    .count();
            Stretch surveyed = season == 2019 ? Stretch.ofKm(6, 13.9) : Stretch.ofKm(6, 15.4);
            Stretch walked = season == 2024 ? Stretch.ofKm(10.4, 12.2) : surveyed;
            int visits = season == 2024 ? 1 : 5;
            maps.add(new TerritoryMap(
                    Species.DIPPER,
                    season,
                    MapSettings.usualFor(Species.DIPPER),
                    List.of(riverMap(
                            ARREL,
                            walked,
                            visits,
                            new TerritoryMap.Count(likely, Math.max(0, likely - 1), likely + 1, 0, 0, List.of()),
                            territories)),
                    List.of()));
        }
        maps.add(map2026());
        return maps;
    }

    private static TerritoryMap.RiverMap riverMap(
            River river, Stretch surveyed, int visits, TerritoryMap.Count count, List<Territory> territories) {
        return new TerritoryMap.RiverMap(
                river, List.of(surveyed), visits, visits, Optional.empty(), count, territories, List.of());
    }

    private Territory territory(
            String id, Territory.Standing standing, int code, double fromKm, double toKm, String... records) {
        List<Sighting> registrations = sightings.stream()
                .filter(sighting -> List.of(records).contains(sighting.label()))
                .toList();
        List<Territory.HangsOn> hangsOn = registrations.size() == 2
                ? List.of(new Territory.HangsOn(List.of(registrations.get(0).id()), BECAUSE))
                : List.of();
        return new Territory(
                id,
                Stretch.ofKm(fromKm, toKm),
                Optional.empty(),
                Chainage.ofKm((fromKm + toKm) / 2),
                standing,
                standing == Territory.Standing.EDGE,
                Optional.of(new Territory.Evidence(new BreedingCode(code), List.of(), List.of())),
                registrations,
                List.of(),
                List.of(BECAUSE),
                hangsOn);
    }
}
