package org.ouzelbook.tracker.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ouzelbook.tracker.store.BookFixture.*;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.DecisionKind;
import org.ouzelbook.tracker.domain.Entry;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.domain.Seal;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;

/** Random small books of three people, put together in every order and grouping: all come to the same. */
class MergeOrderTest {
    private static final List<String> NAMES = List.of("Anna", "Ben", "Cora");

    @RegisterExtension
    final VolunteerBooks books = new VolunteerBooks();

    private Book start;

    @BeforeEach
    void takeTheFirstBook() {
        start = books.start();
    }

    private static MergeResult merge(Book into, Book from, String name) {
        return Volunteers.merge(into, Volunteers.bundle(from, name), MergeOrderTest::fairly);
    }

    /** Answers by what is asked alone, so that everybody would answer alike. */
    private static MergeAnswer fairly(MergeQuestion question) {
        return switch (question.about()) {
            case REMOVED_THERE -> MergeAnswer.THEIRS;
            case REMOVED_HERE -> MergeAnswer.MINE;
            case ONE_THING -> MergeAnswer.BOTH;
            case ONE_RIVER -> MergeAnswer.SAME;
            default -> {
                List<Object> facts = question.details().isEmpty()
                        ? question.told().facts()
                        : question.details().get(0).facts();
                int one = question.details().isEmpty() ? 0 : 1;
                int other = facts.size() - 1;
                yield facts.get(one).toString().compareTo(facts.get(other).toString()) < 0
                        ? MergeAnswer.THEIRS
                        : MergeAnswer.MINE;
            }
        };
    }

    private static void change(Book book, java.util.function.Consumer<BookEdit> edits) {
        book.change(SOMETHING, "someone", edit -> {
            edits.accept(edit);
            return null;
        });
    }

    /** Edits a book as one person would: new records, corrections, removals, a line drawn better, decisions, a seal. */
    private static void edit(Book book, List<Sighting> base, Random random, String name) {
        for (int i = 0; i < 16; i++) {
            Sighting one = base.get(random.nextInt(base.size()));
            boolean there = book.read(view -> view.sighting(one.id())).isPresent();
            switch (random.nextInt(9)) {
                case 0 -> add(book, casual(WATER, name + i, 6 + random.nextInt(40) / 10.0));
                case 1 -> {
                    if (there) {
                        change(book, edit -> edit.remove(one));
                    }
                }
                case 2 -> change(book, edit -> edit.replace(noted(name + " " + random.nextInt(4))));
                case 3 -> add(book, decision(DecisionKind.NOTE, 7, 7, name + i));
                case 4 -> add(book, corrected(book, random));
                case 5 -> {
                    int season = 1990 + NAMES.indexOf(name) * 10 + i;
                    add(
                            book,
                            new Seal(
                                    UUID.randomUUID(),
                                    Species.DIPPER,
                                    season,
                                    "0.9",
                                    1,
                                    List.of(),
                                    List.of(new Seal.Figure("Arrel Water / count", "" + i)),
                                    List.of(name),
                                    name,
                                    LocalDate.of(2026, 11, 25)));
                }
                default -> {
                    if (there) {
                        Sighting moved = moved(one, 6 + random.nextInt(40) / 10.0, name + i);
                        change(book, edit -> edit.replace(moved));
                    }
                }
            }
            if (random.nextInt(8) == 0) {
                book.undo("someone", Progress.NONE);
            }
        }
    }

    private static RiverLine corrected(Book book, Random random) {
        List<RiverLine> lines = book.read(view -> RiverStore.lines(view.database(), WATER.id()));
        RiverLine last = lines.get(lines.size() - 1);
        List<GeoPoint> points = new ArrayList<>(last.points());
        points.add(1, new GeoPoint(57.2, -6.75 - random.nextInt(1000) / 1e5));
        return new RiverLine(WATER.id(), last.version() + 1, new Chainage(0), points, "drawn better");
    }

    private static Sighting moved(Sighting sighting, double km, String note) {
        Place place = at(km);
        return new Sighting(
                sighting.id(),
                sighting.label(),
                sighting.visitId(),
                sighting.date(),
                sighting.time(),
                place,
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

    private List<Book> edited(long seed) {
        Random random = new Random(seed);
        List<Sighting> base = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            base.add(sighting("m" + i, 6.1 + 0.4 * i, Set.of()));
        }
        add(start, base.toArray(Entry[]::new));
        List<Book> theirs = new ArrayList<>();
        for (String name : NAMES) {
            Book book = books.started();
            edit(book, base, random, name);
            theirs.add(book);
        }
        return theirs;
    }

    private Book copy(Book book, String name) {
        Book copy = books.started();
        merge(copy, book, name);
        return copy;
    }

    @ParameterizedTest
    @ValueSource(longs = {2, 3})
    void comesToTheSameInEveryOrderAndGrouping(long seed) {
        List<Book> theirs = edited(seed);
        int[][] orders = {{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}};
        List<List<String>> contents = new ArrayList<>();
        for (int[] order : orders) {
            Book all = books.started();
            for (int who : order) {
                merge(all, theirs.get(who), NAMES.get(who));
            }
            contents.add(settled(all, theirs));
            // the last two first, then the first takes what they came to
            Book two = copy(theirs.get(order[1]), NAMES.get(order[1]));
            merge(two, theirs.get(order[2]), NAMES.get(order[2]));
            Book grouped = copy(theirs.get(order[0]), NAMES.get(order[0]));
            merge(grouped, two, NAMES.get(order[1]));
            contents.add(settled(grouped, theirs));
        }

        for (int i = 1; i < contents.size(); i++) {
            assertThat(contents.get(i)).as("way " + i).isEqualTo(contents.get(0));
        }
        assertThat(contents.get(0)).isNotEqualTo(Volunteers.content(start));
    }

    /**
     * {@return the contents, after a look that taking every book once more alters no record and asks nothing; a book that came by way of
     * another may still tell which states of its records are old, and after that not even a step is made}
     */
    private static List<String> settled(Book all, List<Book> theirs) {
        assertThat(all.check(Progress.NONE)).isEmpty();
        List<String> content = Volunteers.content(all);
        for (int i = 0; i < theirs.size(); i++) {
            MergeResult again = merge(all, theirs.get(i), NAMES.get(i));
            assertThat(again.questions()).isEmpty();
            assertThat(again.changed()).isEmpty();
            assertThat(again.added()).as(again.toString()).isEmpty();
        }
        assertThat(Volunteers.content(all)).isEqualTo(content);
        int steps = all.history(1000).size();
        for (int i = 0; i < theirs.size(); i++) {
            merge(all, theirs.get(i), NAMES.get(i));
        }
        assertThat(all.history(1000)).hasSize(steps);
        return content;
    }

    @ParameterizedTest
    @ValueSource(longs = {7})
    void undoGivesExactlyWhatWasBefore(long seed) {
        List<Book> theirs = edited(seed);
        Book all = books.started();
        List<List<String>> before = new ArrayList<>();
        for (int i = 0; i < theirs.size(); i++) {
            before.add(Volunteers.content(all));
            merge(all, theirs.get(i), NAMES.get(i));
        }
        for (int i = theirs.size() - 1; i >= 0; i--) {
            all.undo("someone", Progress.NONE);
            assertThat(Volunteers.content(all)).isEqualTo(before.get(i));
            assertThat(all.check(Progress.NONE)).isEmpty();
        }
    }

    /** Two people corrected one line apart: both lines are kept, one is the newest everywhere, and no place moves. */
    @Test
    void takesOneOfTwoCorrectionsEverywhereAndKeepsTheOther() {
        Book anna = books.started();
        Book ben = books.started();
        RiverLine annas = line(2, -6.76);
        RiverLine bens = line(2, -6.77);
        add(anna, annas);
        add(ben, bens);
        Sighting onBens = casual(WATER, "b", 8.0);
        add(ben, moved(onBens, 8.0, "on the new line"));

        MergeResult annaTook = merge(anna, ben, "Ben");
        MergeResult benTook = merge(ben, anna, "Anna");

        assertThat(newest(anna)).isEqualTo(newest(ben));
        assertThat(Volunteers.content(anna)).isEqualTo(Volunteers.content(ben));
        assertThat(annaTook.notes()).extracting(Message::key).contains("merge.note.twoLines");
        assertThat(new LinkedHashSet<>(points(anna))).contains(annas.points(), bens.points());
        assertThat(merge(anna, ben, "Ben").addedInAll()).isZero();
        assertThat(merge(ben, anna, "Anna").addedInAll()).isZero();
        assertThat(benTook.questions()).isEmpty();
    }

    /** A correction of a correction is newer than both that were made apart before. */
    @Test
    void takesALaterCorrectionThatKnewTheOthers() {
        Book anna = books.started();
        Book ben = books.started();
        add(anna, line(2, -6.76));
        add(ben, line(2, -6.77));
        merge(anna, ben, "Ben");
        List<RiverLine> known = anna.read(view -> RiverStore.lines(view.database(), WATER.id()));
        RiverLine last = line(known.get(known.size() - 1).version() + 1, -6.70001);
        add(anna, last);

        merge(ben, anna, "Anna");

        assertThat(newest(ben)).isEqualTo(last.points());
    }

    /** Anna and Ben corrected apart, and Cora had Anna's correction only when she drew hers: one line is the newest in every order. */
    @Test
    void takesTheSameLineInEveryOrderWhereOneKnewOnlyOneOfTwoCorrections() {
        Book anna = books.started();
        Book ben = books.started();
        Book cora = books.started();
        add(anna, line(2, -6.76, -6.765, -6.77));
        add(ben, line(2, -6.75, -6.755));
        merge(cora, anna, "Anna");
        RiverLine coras = line(3, -6.74);
        add(cora, coras);
        List<Book> theirs = List.of(anna, ben, cora);
        int[][] orders = {{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}};
        Set<List<GeoPoint>> newest = new LinkedHashSet<>();
        Set<List<String>> contents = new LinkedHashSet<>();
        for (int[] order : orders) {
            Book all = books.started();
            for (int who : order) {
                merge(all, theirs.get(who), NAMES.get(who));
            }
            newest.add(newest(all));
            contents.add(settled(all, theirs));
            Book two = copy(theirs.get(order[1]), NAMES.get(order[1]));
            merge(two, theirs.get(order[2]), NAMES.get(order[2]));
            Book grouped = copy(theirs.get(order[0]), NAMES.get(order[0]));
            merge(grouped, two, NAMES.get(order[1]));
            newest.add(newest(grouped));
            contents.add(settled(grouped, theirs));
        }

        assertThat(newest).containsExactly(newest(ben));
        assertThat(contents).hasSize(1);
    }

    /** Who takes up an old line again has had the later ones: it is the newest for everybody, and undoing that lets the later one be it. */
    @Test
    void takesALineThatWasTakenUpAgain() {
        Book anna = books.started();
        RiverLine better = line(2, -6.76);
        add(anna, better);
        Book ben = copy(anna, "Anna");
        assertThat(newest(ben)).isEqualTo(better.points());
        add(anna, new RiverLine(WATER.id(), 3, LINE.lowerEnd(), LINE.points(), "as before"));

        merge(ben, anna, "Anna");
        assertThat(newest(ben)).isEqualTo(LINE.points());
        merge(anna, ben, "Ben");
        assertThat(newest(anna)).isEqualTo(LINE.points());
        assertThat(merge(ben, anna, "Anna").addedInAll()).isZero();

        ben.undo("someone", Progress.NONE);
        assertThat(newest(ben)).isEqualTo(better.points());
    }

    private static RiverLine line(int version, double... longitudes) {
        List<GeoPoint> points = new ArrayList<>(List.of(LINE.points().get(0)));
        for (double longitude : longitudes) {
            points.add(new GeoPoint(57.2, longitude));
        }
        points.add(LINE.points().get(1));
        return new RiverLine(WATER.id(), version, new Chainage(0), points, "drawn better");
    }

    private static List<GeoPoint> newest(Book book) {
        List<List<GeoPoint>> all = points(book);
        return all.get(all.size() - 1);
    }

    private static List<List<GeoPoint>> points(Book book) {
        return book.read(view -> RiverStore.lines(view.database(), WATER.id()).stream()
                .map(RiverLine::points)
                .toList());
    }
}
