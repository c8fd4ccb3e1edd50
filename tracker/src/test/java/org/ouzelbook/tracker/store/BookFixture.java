package org.ouzelbook.tracker.store;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.Year;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.DecisionKind;
import org.ouzelbook.tracker.domain.Direction;
import org.ouzelbook.tracker.domain.Entry;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.ImportedFile;
import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.LandmarkKind;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.NestOutcome;
import org.ouzelbook.tracker.domain.NestSite;
import org.ouzelbook.tracker.domain.NestStage;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.domain.Seal;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.TravelMode;
import org.ouzelbook.tracker.domain.Visit;

/** An invented river with one record of each kind, every field filled. */
final class BookFixture {
    static final Message SOMETHING = Message.of("test.something");

    static final River WATER = new River(UUID.randomUUID(), "Arrel Water", Optional.empty());
    static final River BECK = new River(
            UUID.randomUUID(), "Sorn Beck", Optional.of(new River.Confluence(WATER.id(), Chainage.ofKm(6.2))));
    static final RiverLine LINE = new RiverLine(
            WATER.id(),
            1,
            new Chainage(0),
            List.of(new GeoPoint(57.1234567890123, -6.7), new GeoPoint(57.3, -6.799999999999999)),
            "arrel.geojson");
    static final Landmark ROCK = new Landmark(
            UUID.randomUUID(), "Otter Stone", LandmarkKind.ROCK, at(8.35), List.of("Otter", "big, flat stone"), true);
    static final Reach REACH = new Reach(UUID.randomUUID(), "Mill to weir", WATER.id(), Stretch.ofKm(6.0, 10.4));
    static final Visit VISIT = new Visit(
            UUID.randomUUID(),
            "2026-1",
            WATER.id(),
            LocalDate.of(2026, 3, 16),
            Optional.of(LocalTime.of(7, 5)),
            Optional.of(LocalTime.of(9, 40)),
            Optional.of(Stretch.ofKm(6.0, 10.4)),
            Optional.of(Direction.UPSTREAM),
            Optional.of(TravelMode.FOOT),
            List.of("Ina Brekke", "T. O’Dell"),
            List.of(Species.DIPPER, Species.GREY_WAGTAIL),
            "low, clear",
            "still",
            true,
            "ice at the edges");
    static final Sighting SINGER = sighting("s1", 8.35, Set.of());
    static final Sighting OTHER = new Sighting(
            UUID.randomUUID(),
            "s2",
            Optional.of(VISIT.id()),
            VISIT.date(),
            Optional.of(LocalTime.of(7, 12)),
            at(8.9),
            Species.DIPPER,
            2,
            Age.ADULT,
            Sex.FEMALE,
            Set.of(Activity.CARRYING_FOOD, Activity.ALARM),
            Optional.of(new BreedingCode(14)),
            "R/N · m/W",
            Set.of(SINGER.id()),
            Optional.of(Chainage.ofKm(9.1)),
            true,
            "Ina Brekke",
            "flew up, came back");
    static final Nest NEST = new Nest(
            UUID.randomUUID(),
            "N1",
            at(8.36),
            Species.DIPPER,
            NestSite.BRIDGE,
            OptionalDouble.of(1.8),
            Optional.of(LocalDate.of(2026, 4, 2)),
            "second arch");
    static final NestCheck CHECK = new NestCheck(
            UUID.randomUUID(),
            NEST.id(),
            LocalDate.of(2026, 4, 12),
            Optional.of(LocalTime.of(10, 0)),
            NestStage.EGGS,
            "warm",
            OptionalInt.of(4),
            OptionalInt.empty(),
            OptionalInt.of(1),
            Optional.of(NestOutcome.UNKNOWN),
            "female off");
    static final RingedBird BIRD = new RingedBird(
            UUID.randomUUID(),
            "RN",
            "",
            "R/N",
            "m",
            "W",
            "ZZ00001",
            Sex.MALE,
            Optional.of(Year.of(2024)),
            Optional.of(LocalDate.of(2025, 5, 3)),
            "ringed at the mill");
    static final KickSample SAMPLE = new KickSample(
            UUID.randomUUID(),
            "K1",
            LocalDate.of(2026, 4, 20),
            at(7.0),
            OptionalDouble.of(3),
            "standard net",
            "T. O’Dell",
            "",
            List.of(new KickSample.Taxon("Baetidae", "C"), new KickSample.Taxon("Heptageniidae", "12")));
    static final Decision DECISION = decision(DecisionKind.TOGETHER, 8.0, 9.4, "one male sang along all of it");
    static final Seal SEAL = new Seal(
            UUID.randomUUID(),
            Species.DIPPER,
            2026,
            "0.9",
            1,
            List.of(new Seal.Figure("minimumSpreadDays", "10")),
            List.of(new Seal.Figure("Arrel Water / count", "7"), new Seal.Figure("Arrel Water / min", "6")),
            List.of("Counted: 7 territories.", "Judged: cannot tell yet; too few seasons."),
            "Ina Brekke",
            LocalDate.of(2026, 11, 25));
    static final ImportedFile FILE =
            new ImportedFile(UUID.randomUUID(), "season 2026.csv", "0123456789abcdef".repeat(4));

    /** One record of each kind, each after those it points to; two sightings, of which the first names none. */
    static final List<Entry> EVERYTHING = List.of(
            FILE, WATER, BECK, LINE, ROCK, REACH, VISIT, SINGER, OTHER, NEST, CHECK, BIRD, SAMPLE, DECISION, SEAL);

    private BookFixture() {}

    static Place at(double km) {
        return new Place(WATER.id(), Chainage.ofKm(km), Bank.LEFT, 20, 1);
    }

    static Sighting sighting(String label, double km, Set<UUID> simultaneousWith) {
        return new Sighting(
                UUID.randomUUID(),
                label,
                Optional.of(VISIT.id()),
                VISIT.date(),
                Optional.empty(),
                at(km),
                Species.DIPPER,
                1,
                Age.UNKNOWN,
                Sex.UNKNOWN,
                Set.of(Activity.SINGING),
                Optional.empty(),
                "",
                simultaneousWith,
                Optional.empty(),
                false,
                "",
                "");
    }

    /** {@return a casual sighting on a river} */
    static Sighting casual(River river, String label, double km) {
        return new Sighting(
                UUID.randomUUID(),
                label,
                Optional.empty(),
                VISIT.date(),
                Optional.empty(),
                new Place(river.id(), Chainage.ofKm(km), Bank.UNKNOWN, 20, 1),
                Species.DIPPER,
                1,
                Age.UNKNOWN,
                Sex.UNKNOWN,
                Set.of(),
                Optional.empty(),
                "",
                Set.of(),
                Optional.empty(),
                false,
                "",
                "");
    }

    /** {@return a decision about the dippers of 2026} */
    static Decision decision(DecisionKind kind, double fromKm, double toKm, String note) {
        return new Decision(
                UUID.randomUUID(),
                Species.DIPPER,
                2026,
                WATER.id(),
                kind,
                Stretch.ofKm(fromKm, toKm),
                Optional.of(note),
                "Ina Brekke",
                LocalDate.of(2026, 7, 3));
    }

    /** {@return the visit with another note} */
    static Visit noted(String note) {
        return new Visit(
                VISIT.id(),
                VISIT.label(),
                VISIT.riverId(),
                VISIT.date(),
                VISIT.start(),
                VISIT.end(),
                VISIT.walked(),
                VISIT.direction(),
                VISIT.mode(),
                VISIT.observers(),
                VISIT.lookedFor(),
                VISIT.level(),
                VISIT.weather(),
                VISIT.effective(),
                note);
    }

    static void add(Book book, Entry... entries) {
        book.change(SOMETHING, "ina", edit -> {
            List.of(entries).forEach(edit::add);
            return null;
        });
    }

    static void addEverything(Book book) {
        add(book, EVERYTHING.toArray(Entry[]::new));
    }
}
