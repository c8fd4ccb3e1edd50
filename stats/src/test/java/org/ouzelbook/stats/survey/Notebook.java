package org.ouzelbook.stats.survey;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.UUID;
import java.util.function.UnaryOperator;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.DecisionKind;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.NestOutcome;
import org.ouzelbook.tracker.domain.NestSite;
import org.ouzelbook.tracker.domain.NestStage;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.river.RiverNetwork;

/** A notebook for tests: visits, birds and nests on the invented Arrel Water and its tributary Sorn Beck. */
final class Notebook {
    static final River ARREL = new River(key("Arrel Water"), "Arrel Water", Optional.empty());
    static final River SORN = new River(
            key("Sorn Beck"), "Sorn Beck", Optional.of(new River.Confluence(ARREL.id(), Chainage.ofKm(16.4))));

    private final List<River> rivers = new ArrayList<>(List.of(ARREL));
    private final List<Landmark> landmarks = new ArrayList<>();
    private final List<Reach> reaches = new ArrayList<>();
    private final List<Visit> visits = new ArrayList<>();
    private final List<Sighting> sightings = new ArrayList<>();
    private final List<Nest> nests = new ArrayList<>();
    private final List<NestCheck> checks = new ArrayList<>();
    private final List<Decision> decisions = new ArrayList<>();

    static UUID key(String name) {
        return UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8));
    }

    static Place at(River river, double km) {
        return new Place(river.id(), Chainage.ofKm(km), Bank.UNKNOWN, 20, 1);
    }

    Notebook withSornBeck() {
        rivers.add(SORN);
        return this;
    }

    Notebook reach(String name, River river, double fromKm, double toKm) {
        reaches.add(new Reach(key(name), name, river.id(), Stretch.ofKm(fromKm, toKm)));
        return this;
    }

    Notebook landmark(Landmark landmark) {
        landmarks.add(landmark);
        return this;
    }

    /** An effective visit that looked for dippers. */
    Notebook visit(String label, String date, River river, double fromKm, double toKm) {
        return visit(label, date, river, fromKm, toKm, true);
    }

    Notebook visit(String label, String date, River river, double fromKm, double toKm, boolean effective) {
        visits.add(new Visit(
                key(label),
                label,
                river.id(),
                LocalDate.parse(date),
                Optional.empty(),
                Optional.empty(),
                Optional.of(Stretch.ofKm(fromKm, toKm)),
                Optional.empty(),
                Optional.empty(),
                List.of("AB"),
                List.of(Species.DIPPER),
                "",
                "",
                effective,
                ""));
        return this;
    }

    /** Forgets a visit and everything seen on it. */
    Notebook withoutVisit(String label) {
        visits.removeIf(visit -> visit.label().equals(label));
        sightings.removeIf(sighting -> sighting.visitId().equals(Optional.of(key(label))));
        return this;
    }

    /** A bird seen on a visit. */
    Bird bird(String label, String visit, double km) {
        Visit on = visits.stream()
                .filter(one -> one.label().equals(visit))
                .findFirst()
                .orElseThrow();
        return new Bird(label, Optional.of(on.id()), on.date(), at(river(on.riverId()), km));
    }

    /** A bird met by chance. */
    Bird casual(String label, String date, River river, double km) {
        return new Bird(label, Optional.empty(), LocalDate.parse(date), at(river, km));
    }

    private static River river(UUID id) {
        return id.equals(ARREL.id()) ? ARREL : SORN;
    }

    Notebook nest(String label, River river, double km) {
        nests.add(new Nest(
                key(label),
                label,
                at(river, km),
                Species.DIPPER,
                NestSite.BRIDGE,
                OptionalDouble.empty(),
                Optional.empty(),
                ""));
        return this;
    }

    Notebook check(String nest, String date, NestStage stage) {
        return check(nest, date, stage, Optional.empty());
    }

    Notebook check(String nest, String date, NestStage stage, Optional<NestOutcome> outcome) {
        checks.add(new NestCheck(
                key(nest + date),
                key(nest),
                LocalDate.parse(date),
                Optional.empty(),
                stage,
                "",
                OptionalInt.empty(),
                OptionalInt.empty(),
                OptionalInt.empty(),
                outcome,
                ""));
        return this;
    }

    /** Rewrites one sighting. */
    Notebook change(String label, UnaryOperator<Bird> change) {
        for (int i = 0; i < sightings.size(); i++) {
            Sighting sighting = sightings.get(i);
            if (sighting.label().equals(label)) {
                sightings.set(i, change.apply(new Bird(sighting)).record());
            }
        }
        return this;
    }

    /** Writes down what the surveyor decided about the Arrel Water, the same day each time. */
    Notebook decide(int season, DecisionKind kind, double fromKm, double toKm, String note) {
        decisions.add(new Decision(
                key(kind + " " + fromKm),
                Species.DIPPER,
                season,
                ARREL.id(),
                kind,
                Stretch.ofKm(fromKm, toKm),
                Optional.of(note),
                "Ina Brekke",
                LocalDate.of(season, 8, 1)));
        return this;
    }

    SurveyRecords records() {
        return new SurveyRecords(
                RiverNetwork.of(rivers, List.of()),
                landmarks,
                reaches,
                visits,
                sightings,
                nests,
                checks,
                List.of(),
                List.of(),
                decisions);
    }

    TerritoryMap map(int season) {
        return map(season, MapSettings.usualFor(Species.DIPPER));
    }

    TerritoryMap map(int season, MapSettings settings) {
        return TerritoryMap.of(records(), Species.DIPPER, season, settings, Water.ALL);
    }

    /** A sighting in the making. */
    final class Bird {
        private final String label;
        private final Optional<UUID> visitId;
        private final LocalDate date;
        private final Place place;
        private int count = 1;
        private Age age = Age.UNKNOWN;
        private final Set<Activity> activities = EnumSet.noneOf(Activity.class);
        private Optional<BreedingCode> code = Optional.empty();
        private String rings = "";
        private final Set<UUID> simultaneous = new HashSet<>();
        private Optional<Chainage> flewTo = Optional.empty();
        private boolean turnedBack;
        private Optional<LocalTime> time = Optional.empty();

        private Bird(String label, Optional<UUID> visitId, LocalDate date, Place place) {
            this.label = label;
            this.visitId = visitId;
            this.date = date;
            this.place = place;
        }

        private Bird(Sighting sighting) {
            this(sighting.label(), sighting.visitId(), sighting.date(), sighting.place());
            count = sighting.count();
            age = sighting.age();
            activities.addAll(sighting.activities());
            code = sighting.breedingCode();
            rings = sighting.rings();
            simultaneous.addAll(sighting.simultaneousWith());
            flewTo = sighting.flewTo();
            turnedBack = sighting.turnedBack();
            time = sighting.time();
        }

        Bird doing(Activity... what) {
            activities.addAll(List.of(what));
            return this;
        }

        Bird pair() {
            count = 2;
            return this;
        }

        Bird aged(Age told) {
            age = told;
            return this;
        }

        Bird coded(int number) {
            code = Optional.of(new BreedingCode(number));
            return this;
        }

        Bird ringed(String reading) {
            rings = reading;
            return this;
        }

        Bird at(String clock) {
            time = Optional.of(LocalTime.parse(clock));
            return this;
        }

        Bird sameTimeAs(String other) {
            simultaneous.add(key(other));
            return this;
        }

        Bird notSimultaneous() {
            simultaneous.clear();
            return this;
        }

        Bird turnedBackAt(double km) {
            flewTo = Optional.of(Chainage.ofKm(km));
            turnedBack = true;
            return this;
        }

        Bird flewTo(double km) {
            flewTo = Optional.of(Chainage.ofKm(km));
            return this;
        }

        Bird stayed() {
            flewTo = Optional.empty();
            turnedBack = false;
            return this;
        }

        /** Writes it down. */
        Notebook noted() {
            sightings.add(record());
            return Notebook.this;
        }

        private Sighting record() {
            return new Sighting(
                    key(label),
                    label,
                    visitId,
                    date,
                    time,
                    place,
                    Species.DIPPER,
                    count,
                    age,
                    Sex.UNKNOWN,
                    activities,
                    code,
                    rings,
                    simultaneous,
                    flewTo,
                    turnedBack,
                    "AB",
                    "");
        }
    }
}
