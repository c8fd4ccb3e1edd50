package org.ouzelbook.tracker.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.ouzelbook.tracker.store.BookFixture.*;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.DecisionKind;
import org.ouzelbook.tracker.domain.Entry;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.LandmarkKind;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;

/** Books of several people, put together. */
class MergeTest {
    @RegisterExtension
    final VolunteerBooks books = new VolunteerBooks();

    private Book mine;

    @BeforeEach
    void takeTheFirstBook() {
        mine = books.start();
    }

    private static void replace(Book book, Entry entry) {
        book.change(SOMETHING, "someone", edit -> {
            edit.replace(entry);
            return null;
        });
    }

    private static void remove(Book book, Entry entry) {
        book.change(SOMETHING, "someone", edit -> {
            edit.remove(entry);
            return null;
        });
    }

    private MergeResult merge(Book from, String name, MergeAnswers answers) {
        return Volunteers.merge(mine, Volunteers.bundle(from, name), answers);
    }

    private static <T> List<T> list(Book book, Function<BookView, List<T>> what) {
        return book.read(what);
    }

    private static <T> Map<UUID, T> map(Book book, Function<BookView, Map<UUID, T>> what) {
        return book.read(what);
    }

    private static boolean has(Book book, Sighting sighting) {
        return book.read(view -> view.sighting(sighting.id())).isPresent();
    }

    private static MergeAnswers all(MergeAnswer answer) {
        return new MergeAnswers(Map.of(MergeAnswers.ALL, answer));
    }

    @Test
    void bringsEveryRecordUnderItsKeyAndSaysWhoseItIs() {
        Book anna = books.started();

        assertThat(Volunteers.content(anna)).isEqualTo(Volunteers.content(mine));
        assertThat(anna.check(Progress.NONE)).isEmpty();
        assertThat(map(anna, BookView::owners))
                .containsEntry(SINGER.id(), "Ina")
                .containsEntry(NEST.id(), "Ina");
        assertThat(map(mine, BookView::owners)).isEmpty();
    }

    @Test
    void changesNothingTheSecondTime() {
        Book anna = books.started();
        add(anna, casual(WATER, "a1", 7.7));
        merge(anna, "Anna", MergeAnswers.NONE);
        int steps = mine.history(100).size();

        MergeResult again = merge(anna, "Anna", MergeAnswers.NONE);

        assertThat(again.addedInAll()).isZero();
        assertThat(again.changed()).isEmpty();
        assertThat(again.questions()).isEmpty();
        assertThat(mine.history(100)).hasSize(steps);
    }

    @Test
    void takesALaterEditAsAChangeAndTellsIt() {
        Book anna = books.started();
        replace(anna, noted("a dipper sang under the ice"));

        MergeResult result = merge(anna, "Anna", MergeAnswers.NONE);

        assertThat(result.changed()).hasSize(1);
        assertThat(result.addedInAll()).isZero();
        assertThat(mine.read(view -> view.visit(VISIT.id())).orElseThrow().note())
                .isEqualTo("a dipper sang under the ice");
        assertThat(map(mine, BookView::owners)).isEmpty();
        assertThat(mine.history(1).get(0).replaced()).isEqualTo(1);
    }

    @Test
    void keepsTheNewerStateOfThisBook() {
        Book anna = books.started();
        replace(mine, noted("mended here"));

        MergeResult result = merge(anna, "Anna", MergeAnswers.NONE);

        assertThat(result.older()).isEqualTo(1);
        assertThat(mine.read(view -> view.visit(VISIT.id())).orElseThrow().note())
                .isEqualTo("mended here");
    }

    @Test
    void asksWhenBothChangedARecordAndNeverAgainAfterAnAnswer() {
        Book anna = books.started();
        replace(mine, noted("mended here"));
        replace(anna, noted("mended there"));

        MergeResult asked =
                mine.rehearse(edit -> edit.merge(Volunteers.bundle(anna, "Anna"), MergeAnswers.NONE, Progress.NONE));
        assertThat(asked.questions()).hasSize(1);
        MergeQuestion question = asked.questions().get(0);
        assertThat(question.about()).isEqualTo(MergeQuestion.About.CHANGED_IN_BOTH);
        assertThat(question.details().get(0).facts()).contains("mended here", "mended there");

        merge(anna, "Anna", new MergeAnswers(Map.of(question.code(), MergeAnswer.MINE)));
        assertThat(mine.read(view -> view.visit(VISIT.id())).orElseThrow().note())
                .isEqualTo("mended here");
        assertThat(merge(anna, "Anna", MergeAnswers.NONE).questions()).isEmpty();

        MergeResult back = Volunteers.merge(anna, Volunteers.bundle(mine, "Ina"), MergeAnswers.NONE);
        assertThat(back.questions()).isEmpty();
        assertThat(anna.read(view -> view.visit(VISIT.id())).orElseThrow().note())
                .isEqualTo("mended here");
    }

    @Test
    void proposesWhatWasRemovedThereAndRemembersTheAnswer() {
        Book anna = books.started();
        remove(anna, SAMPLE);
        remove(anna, CHECK);

        MergeResult asked =
                mine.rehearse(edit -> edit.merge(Volunteers.bundle(anna, "Anna"), MergeAnswers.NONE, Progress.NONE));
        assertThat(asked.questions()).extracting(MergeQuestion::about).containsOnly(MergeQuestion.About.REMOVED_THERE);
        String sample = asked.questions().stream()
                .filter(question -> question.told().facts().toString().contains("book.entry.sample"))
                .findFirst()
                .orElseThrow()
                .code();

        MergeResult result = merge(
                anna, "Anna", new MergeAnswers(Map.of(sample, MergeAnswer.THEIRS, MergeAnswers.ALL, MergeAnswer.MINE)));

        assertThat(result.removed()).hasSize(1);
        assertThat(list(mine, BookView::kickSamples)).isEmpty();
        assertThat(list(mine, BookView::nestChecks)).hasSize(1);
        assertThat(merge(anna, "Anna", MergeAnswers.NONE).questions()).isEmpty();
    }

    @Test
    void asksWhetherToBringBackWhatWasRemovedHereAndChangedThere() {
        Book anna = books.started();
        remove(mine, OTHER);
        assertThat(merge(anna, "Anna", MergeAnswers.NONE).questions()).isEmpty();
        assertThat(has(mine, OTHER)).isFalse();
        replace(anna, moved(OTHER, 9.0));

        MergeResult asked = merge(anna, "Anna", all(MergeAnswer.MINE));
        assertThat(has(mine, OTHER)).isFalse();
        assertThat(asked.questions()).isEmpty();
        assertThat(merge(anna, "Anna", MergeAnswers.NONE).questions()).isEmpty();
        replace(anna, moved(OTHER, 9.05));
        merge(anna, "Anna", all(MergeAnswer.THEIRS));

        assertThat(mine.read(view -> view.sighting(OTHER.id()))
                        .orElseThrow()
                        .place()
                        .chainage()
                        .km())
                .isEqualTo(9.05);
    }

    private static Sighting moved(Sighting sighting, double km) {
        return changed(sighting, km, sighting.note());
    }

    private static Sighting changed(Sighting sighting, double km, String note) {
        return new Sighting(
                sighting.id(),
                sighting.label(),
                sighting.visitId(),
                sighting.date(),
                sighting.time(),
                at(km),
                sighting.species(),
                sighting.count(),
                sighting.age(),
                sighting.sex(),
                sighting.activities(),
                sighting.breedingCode(),
                sighting.rings(),
                sighting.simultaneousWith(),
                sighting.flewTo(),
                sighting.turnedBack(),
                sighting.observer(),
                note);
    }

    @Test
    void isUndoneInOneStepAndThenComesInAgain() {
        Book anna = books.started();
        add(anna, casual(WATER, "a1", 7.7), casual(BECK, "a2", 0.4));
        replace(anna, noted("of Anna"));
        remove(anna, SAMPLE);
        List<String> before = Volunteers.content(mine);
        merge(anna, "Anna", all(MergeAnswer.THEIRS));
        List<String> after = Volunteers.content(mine);

        mine.undo("ina", Progress.NONE);

        assertThat(Volunteers.content(mine)).isEqualTo(before);
        assertThat(mine.check(Progress.NONE)).isEmpty();
        MergeResult again = merge(anna, "Anna", all(MergeAnswer.THEIRS));
        assertThat(again.addedInAll()).isEqualTo(2);
        assertThat(again.changed()).hasSize(1);
        assertThat(Volunteers.content(mine)).isEqualTo(after);
        mine.undo("ina", Progress.NONE);
        mine.redo("ina", Progress.NONE);
        assertThat(Volunteers.content(mine)).isEqualTo(after);
        assertThat(merge(anna, "Anna", MergeAnswers.NONE).addedInAll()).isZero();
    }

    @Test
    void matchesRiversLandmarksAndRecordsThatTwoPeopleMadeAlike() {
        Book ben = books.empty();
        River water = new River(UUID.randomUUID(), "arrel water", Optional.empty());
        add(ben, water, new RiverLine(water.id(), 1, LINE.lowerEnd(), LINE.points(), "from a map"));
        Place place =
                new Place(water.id(), ROCK.place().chainage(), ROCK.place().bank(), 20, 1);
        add(
                ben,
                new Landmark(UUID.randomUUID(), ROCK.name(), ROCK.kind(), place, ROCK.aliases(), ROCK.nestSite()),
                new Landmark(UUID.randomUUID(), "Kirk Bridge", LandmarkKind.BRIDGE, place, List.of(), false),
                casual(water, "ben 1", 7.2));

        MergeResult result = merge(ben, "Ben", MergeAnswers.NONE);

        assertThat(result.questions()).isEmpty();
        assertThat(result.matched()).isEqualTo(1);
        assertThat(result.duplicates()).isEqualTo(1);
        assertThat(list(mine, BookView::rivers)).hasSize(2);
        assertThat(list(mine, BookView::landmarks)).hasSize(2);
        assertThat(mine.read(view -> view.sightings("ben 1")).get(0).place().riverId())
                .isEqualTo(WATER.id());
        assertThat(merge(ben, "Ben", MergeAnswers.NONE).addedInAll()).isZero();
        Volunteers.merge(ben, Volunteers.bundle(mine, "Ina"), MergeAnswers.NONE);
        assertThat(Volunteers.content(ben)).hasSameSizeAs(Volunteers.content(mine));
        assertThat(list(ben, BookView::landmarks)).hasSize(2);
    }

    @Test
    void asksAboutALandmarkThatIsDescribedInTwoWays() {
        Book ben = books.started();
        Landmark here = new Landmark(UUID.randomUUID(), "Weir", LandmarkKind.WEIR, at(7.0), List.of(), false);
        Landmark there = new Landmark(UUID.randomUUID(), "weir", LandmarkKind.WEIR, at(7.02), List.of("dam"), false);
        add(mine, here);
        add(ben, there);

        MergeResult asked =
                mine.rehearse(edit -> edit.merge(Volunteers.bundle(ben, "Ben"), MergeAnswers.NONE, Progress.NONE));
        assertThat(asked.questions()).extracting(MergeQuestion::about).containsExactly(MergeQuestion.About.ONE_THING);

        merge(ben, "Ben", all(MergeAnswer.THEIRS));
        assertThat(list(mine, BookView::landmarks)).hasSize(2);
        assertThat(list(mine, BookView::landmarks))
                .extracting(Landmark::aliases)
                .contains(List.of("dam"));
        assertThat(list(mine, BookView::landmarks)).extracting(Landmark::id).contains(here.id());
        MergeResult again = merge(ben, "Ben", MergeAnswers.NONE);
        assertThat(again.questions()).isEmpty();
        assertThat(again.addedInAll()).isZero();
    }

    @Test
    void measuresPlacesAnewWhereTheLinesOfOneRiverDiffer() {
        Book ben = books.empty();
        River water = new River(UUID.randomUUID(), "Arrel Water", Optional.empty());
        List<GeoPoint> longer = new ArrayList<>(List.of(new GeoPoint(57.1143234567890, -6.695)));
        longer.addAll(LINE.points());
        add(ben, water, new RiverLine(water.id(), 1, LINE.lowerEnd(), longer, "another map"), casual(water, "b", 8.0));

        assertThat(merge(ben, "Ben", MergeAnswers.NONE).questions())
                .extracting(MergeQuestion::about)
                .containsExactly(MergeQuestion.About.ONE_RIVER);
        assertThat(list(mine, view -> view.sightings("b"))).isEmpty();
        merge(ben, "Ben", all(MergeAnswer.SAME));

        // the other line starts 1.06 km farther down, so km 8.0 there is about km 6.9 here
        double km =
                mine.read(view -> view.sightings("b")).get(0).place().chainage().km();
        assertThat(km).isBetween(6.9, 7.0);
        assertThat(merge(ben, "Ben", MergeAnswers.NONE).changed()).isEmpty();
    }

    @Test
    void keepsLabelsApartWhicheverBookComesFirst() {
        Book anna = books.started();
        Book ben = books.started();
        Book other = books.started();
        add(anna, visit("9"));
        add(ben, visit("9"));

        for (Book first : List.of(anna, ben)) {
            Book into = first == anna ? mine : other;
            Volunteers.merge(into, Volunteers.bundle(first, first == anna ? "Anna" : "Ben"), MergeAnswers.NONE);
            Book second = first == anna ? ben : anna;
            Volunteers.merge(into, Volunteers.bundle(second, second == anna ? "Anna" : "Ben"), MergeAnswers.NONE);
        }

        assertThat(list(mine, BookView::visits)).extracting(Visit::label).contains("9 (Anna)", "9 (Ben)");
        assertThat(Volunteers.content(mine)).isEqualTo(Volunteers.content(other));
        MergeResult again = merge(anna, "Anna", MergeAnswers.NONE);
        assertThat(again.questions()).isEmpty();
        assertThat(again.changed()).isEmpty();
    }

    private static Visit visit(String label) {
        Visit plain = noted("by " + UUID.randomUUID());
        return new Visit(
                UUID.randomUUID(),
                label,
                plain.riverId(),
                plain.date().plusDays(3),
                plain.start(),
                plain.end(),
                plain.walked(),
                plain.direction(),
                plain.mode(),
                plain.observers(),
                plain.lookedFor(),
                plain.level(),
                plain.weather(),
                plain.effective(),
                plain.note());
    }

    @Test
    void proposesOneBirdThatTwoPeopleSawAndRemembersWhatWasDecided() {
        Book anna = books.started();
        add(mine, seen(7.50, 1, "08:10"));
        Sighting same = seen(7.54, 1, "08:15");
        add(anna, same, seen(7.54, 2, "08:15"), seen(7.70, 1, "08:15"), seen(7.50, 1, "08:30"));

        merge(anna, "Anna", MergeAnswers.NONE);

        List<SamePair> pairs = mine.read(BookView::openPairs);
        assertThat(pairs).hasSize(1);
        assertThat(Set.of(pairs.get(0).one(), pairs.get(0).other())).contains(same.id());
        mine.change(SOMETHING, "ina", edit -> {
            edit.decide(pairs.get(0), true, "Ina", LocalDate.of(2026, 9, 1));
            return null;
        });
        assertThat(list(mine, BookView::openPairs)).isEmpty();
        assertThat(map(mine, BookView::sameSightings)).containsOnlyKeys(same.id());
        assertThat(has(mine, same)).isTrue();
        Volunteers.merge(anna, Volunteers.bundle(mine, "Ina"), MergeAnswers.NONE);
        assertThat(list(anna, BookView::openPairs)).isEmpty();
        mine.undo("ina", Progress.NONE);
        assertThat(list(mine, BookView::openPairs)).hasSize(1);
    }

    private static Sighting seen(double km, int count, String time) {
        Sighting plain = casual(WATER, "", km);
        return new Sighting(
                UUID.randomUUID(),
                "",
                Optional.empty(),
                plain.date(),
                Optional.of(LocalTime.parse(time)),
                at(km),
                plain.species(),
                count,
                plain.age(),
                plain.sex(),
                plain.activities(),
                plain.breedingCode(),
                "",
                Set.of(),
                Optional.empty(),
                false,
                "",
                "");
    }

    @Test
    void asksAboutDecisionsThatContradictEachOther() {
        Book anna = books.started();
        Decision apart = decision(DecisionKind.BOUNDARY, 8.7, 8.7, "two males");
        anna.change(SOMETHING, "anna", edit -> {
            edit.remove(DECISION);
            edit.add(apart);
            return null;
        });

        MergeResult asked =
                mine.rehearse(edit -> edit.merge(Volunteers.bundle(anna, "Anna"), MergeAnswers.NONE, Progress.NONE));
        assertThat(asked.questions()).extracting(MergeQuestion::about).contains(MergeQuestion.About.CONTRADICTION);
        merge(anna, "Anna", all(MergeAnswer.MINE));
        assertThat(list(mine, BookView::decisions)).containsExactly(DECISION);
        assertThat(merge(anna, "Anna", MergeAnswers.NONE).questions()).isEmpty();
    }

    /** The answers of somebody whose choice does not depend on which book is whose. */
    private static MergeAnswer fairly(MergeQuestion question) {
        return switch (question.about()) {
            case REMOVED_THERE -> MergeAnswer.THEIRS;
            case REMOVED_HERE -> MergeAnswer.MINE;
            default -> {
                List<Object> facts = question.details().get(0).facts();
                yield facts.get(1).toString().compareTo(facts.get(2).toString()) < 0
                        ? MergeAnswer.THEIRS
                        : MergeAnswer.MINE;
            }
        };
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void comesToTheSameInEveryOrderAndEverybodyAgreesInTheEnd(long seed) {
        Random random = new Random(seed);
        List<Sighting> base = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            base.add(sighting("m" + i, 6.1 + 0.4 * i, Set.of()));
        }
        add(mine, base.toArray(Entry[]::new));
        List<String> names = List.of("Anna", "Ben", "Cora");
        List<Book> theirs = names.stream().map(name -> books.started()).toList();
        for (int i = 0; i < theirs.size(); i++) {
            edit(theirs.get(i), base, random, names.get(i));
        }
        Bundle start = Volunteers.bundle(mine, "Ina");
        int[][] orders = {{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}};
        List<List<String>> contents = new ArrayList<>();
        Book last = mine;
        for (int[] order : orders) {
            last = books.empty();
            Volunteers.merge(last, start, MergeAnswers.NONE);
            for (int who : order) {
                Volunteers.merge(last, Volunteers.bundle(theirs.get(who), names.get(who)), MergeTest::fairly);
            }
            assertThat(last.check(Progress.NONE)).isEmpty();
            contents.add(Volunteers.content(last));
        }

        assertThat(contents).allMatch(contents.get(0)::equals);
        assertThat(contents.get(0)).isNotEqualTo(Volunteers.content(mine));
        for (int i = 0; i < theirs.size(); i++) {
            MergeResult back = Volunteers.merge(
                    theirs.get(i),
                    Volunteers.bundle(last, "all"),
                    new MergeAnswers(Map.of(MergeAnswers.ALL, MergeAnswer.THEIRS)));
            assertThat(Volunteers.content(theirs.get(i))).as(names.get(i)).isEqualTo(contents.get(0));
            assertThat(back.questions()).isEmpty();
        }
    }

    private static void edit(Book book, List<Sighting> base, Random random, String name) {
        for (int i = 0; i < 14; i++) {
            Sighting one = base.get(random.nextInt(base.size()));
            boolean there = book.read(view -> view.sighting(one.id())).isPresent();
            switch (random.nextInt(6)) {
                case 0 ->
                    add(book, casual(random.nextBoolean() ? WATER : BECK, name + i, 1 + random.nextInt(50) / 10.0));
                case 1 -> {
                    if (there) {
                        remove(book, one);
                    }
                }
                case 2 -> replace(book, noted(name + " " + random.nextInt(4)));
                case 3 -> add(book, decision(DecisionKind.NOTE, 7, 7, name + i));
                default -> {
                    if (there) {
                        replace(book, changed(one, 6 + random.nextInt(40) / 10.0, name + " " + random.nextInt(3)));
                    }
                }
            }
            if (random.nextInt(8) == 0) {
                book.undo("someone", Progress.NONE);
            }
        }
    }

    @Test
    void refusesWhatIsDamagedForeignOrNewer() {
        Map<String, byte[]> parts = Volunteers.parts(mine, "Ina");
        assertRefused(parts, "bundle.json", text -> text.replace("\"form\":1", "\"form\":2"), "bundle.newer");
        assertRefused(parts, "bundle.json", text -> text.replace("org.ouzelbook", "com.example"), "bundle.foreign");
        assertRefused(parts, "bundle.json", text -> text.substring(0, 20), "bundle.damaged");
        assertRefused(parts, "bundle.json", text -> "[[[[[[".repeat(100_000), "bundle.damaged");
        assertRefused(parts, "sighting.jsonl", text -> text.replace("s2", "s3"), "bundle.damaged");
        assertRefused(parts, "sighting.jsonl", text -> text.lines().findFirst().orElseThrow(), "bundle.damaged");
        assertRefused(parts, "sighting.jsonl", text -> text.replace("CARRYING_FOOD", "DANCING"), "bundle.damaged");
        assertRefused(
                parts,
                "visit.jsonl",
                text -> text.replace(WATER.id().toString(), NEST.id().toString()),
                "bundle.damaged");
        assertRefused(
                parts, "nest.jsonl", text -> text.replace("chainage_m", "x\\\"; DROP TABLE nest"), "bundle.damaged");
        assertRefused(parts, "river.jsonl", text -> "", "bundle.damaged");
        assertThat(mine.check(Progress.NONE)).isEmpty();
    }

    private static void assertRefused(
            Map<String, byte[]> parts, String part, java.util.function.UnaryOperator<String> harm, String why) {
        Map<String, byte[]> harmed = new java.util.LinkedHashMap<>(parts);
        String text = new String(parts.get(part), StandardCharsets.UTF_8);
        harmed.put(part, harm.apply(text).getBytes(StandardCharsets.UTF_8));
        assertThatThrownBy(() -> Volunteers.read(harmed))
                .isInstanceOfSatisfying(
                        BookException.class, e -> assertThat(e.told().key()).isEqualTo(why));
    }

    @Test
    void writesTheSameBytesForTheSameBook() {
        Map<String, byte[]> once = Volunteers.parts(mine, "Ina");
        Map<String, byte[]> twice = Volunteers.parts(mine, "Ina");

        assertThat(twice).hasSameSizeAs(once);
        once.forEach((part, bytes) -> assertThat(twice.get(part)).as(part).isEqualTo(bytes));
    }
}
