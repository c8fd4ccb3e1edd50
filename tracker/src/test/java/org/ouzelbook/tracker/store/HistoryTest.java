package org.ouzelbook.tracker.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.ouzelbook.tracker.store.BookFixture.*;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.Year;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.DecisionKind;
import org.ouzelbook.tracker.domain.Entry;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;

class HistoryTest {
    @TempDir
    Path folder;

    private Book book;

    @BeforeEach
    void create() {
        book = Book.create(folder.resolve("arrel"));
    }

    @AfterEach
    void everyBookIsSoundAtTheEnd() {
        assertThat(book.check(Progress.NONE)).isEmpty();
        book.close();
    }

    private void restart() {
        book.close();
        book = Book.open(folder.resolve("arrel"));
    }

    private void edit(java.util.function.Consumer<BookEdit> work) {
        book.change(SOMETHING, "ina", edit -> {
            work.accept(edit);
            return null;
        });
    }

    private Optional<String> note() {
        return book.read(view -> view.visit(VISIT.id())).map(Visit::note);
    }

    private List<Sighting> sightings() {
        return book.read(view -> view.sightings(SightingQuery.ALL));
    }

    private Optional<Entry> record(Sighting sighting) {
        return book.read(view -> view.record(new TouchedRecord(Sighting.class, sighting.id())));
    }

    private Step undo() {
        return book.undo("ina", Progress.NONE);
    }

    private Step undo(long step) {
        return book.undo(step, "ina", Progress.NONE);
    }

    private static void refuses(Runnable work, String key, Object... facts) {
        assertThatThrownBy(work::run)
                .isInstanceOfSatisfying(
                        BookException.class, e -> assertThat(e.told()).isEqualTo(Message.of(key, facts)));
    }

    @Test
    void tellsWhatWasDoneWhenAndByWhom() {
        Message what = Message.of(
                "test.all",
                "text",
                12L,
                1.5,
                LocalDate.of(2026, 3, 16),
                Year.of(2026),
                Chainage.ofKm(8.35),
                Stretch.ofKm(6, 10.4),
                Species.KINGFISHER,
                Bank.LEFT,
                List.of("a", "b"),
                Message.of("test.inner", 3L));
        book.change(what, "ina", edit -> {
            edit.add(WATER);
            edit.add(BECK);
            edit.remove(BECK);
            return null;
        });
        restart();

        Step step = book.history(5).get(0);
        assertThat(step.what()).isEqualTo(what);
        assertThat(step.who()).isEqualTo("ina");
        assertThat(List.of(step.nr(), step.added(), step.replaced(), step.removed()))
                .containsExactly(1L, 2L, 0L, 1L);
    }

    @Test
    void makesNoStepOfAChangeThatChangesNothing() {
        addEverything(book);
        edit(edit -> edit.replace(VISIT));

        assertThat(book.history(5)).hasSize(1);
    }

    /** "I delete visit 17 by mistake; … restart after the laptop died; then it is back with its registrations." */
    @Test
    void bringsARemovedVisitBackWithItsSightingsAfterARestart() {
        addEverything(book);
        List<Sighting> before = sightings();
        edit(edit -> {
            edit.sightings(SightingQuery.ALL.during(VISIT)).forEach(edit::remove);
            edit.remove(VISIT);
        });
        assertThat(sightings()).isEmpty();
        restart();

        undo();

        assertThat(note()).contains(VISIT.note());
        assertThat(sightings()).isEqualTo(before);
    }

    @Test
    void undoesStepAfterStepAndDoesThemAgain() {
        addEverything(book);
        edit(edit -> edit.replace(noted("first")));
        edit(edit -> edit.replace(noted("second")));

        undo();
        assertThat(note()).contains("first");
        undo();
        assertThat(note()).contains(VISIT.note());
        restart();
        undo();
        assertThat(note()).isEmpty();
        refuses(this::undo, "book.undo.nothing");

        book.redo("ina", Progress.NONE);
        book.redo("ina", Progress.NONE);
        restart();
        assertThat(note()).contains("first");
        book.redo("ina", Progress.NONE);
        assertThat(note()).contains("second");
        refuses(() -> book.redo("ina", Progress.NONE), "book.redo.nothing");
        undo();
        assertThat(note()).contains("first");
    }

    @Test
    void doesNothingAgainOnceSomethingElseWasChanged() {
        addEverything(book);
        edit(edit -> edit.replace(noted("first")));
        undo();
        edit(edit -> edit.replace(noted("other")));

        refuses(() -> book.redo("ina", Progress.NONE), "book.redo.nothing");
        assertThat(note()).contains("other");
    }

    @Test
    void undoesAnEarlierStepThatNoLaterOneTouched() {
        addEverything(book);
        Sighting third = sighting("s3", 9.5, Set.of(SINGER.id()));
        add(book, third);
        edit(edit -> edit.replace(noted("later")));

        undo(2);

        assertThat(sightings()).extracting(Sighting::label).containsExactlyInAnyOrder("s1", "s2");
        assertThat(note()).contains("later");
        assertThat(book.undoneSteps()).containsExactly(2L);
        refuses(() -> undo(2), "book.undo.already", 2L, SOMETHING);
    }

    @Test
    void namesTheLaterStepThatChangedItsRows() {
        addEverything(book);
        edit(edit -> edit.replace(noted("first")));
        edit(edit -> edit.replace(noted("second")));

        refuses(() -> undo(2), "book.undo.later", 2L, SOMETHING, 3L, SOMETHING);
        assertThat(note()).contains("second");
    }

    @Test
    void namesTheLaterStepThatRemovedItsRows() {
        addEverything(book);
        Sighting third = sighting("s3", 9.5, Set.of());
        add(book, third);
        add(book, sighting("s4", 9.6, Set.of()));
        edit(edit -> edit.remove(third));

        refuses(() -> undo(2), "book.undo.later", 2L, SOMETHING, 4L, SOMETHING);
    }

    @Test
    void namesTheLaterStepThatNeedsItsRows() {
        add(book, WATER, VISIT);
        add(book, SINGER);
        add(book, OTHER);

        refuses(() -> undo(1), "book.undo.later", 1L, SOMETHING, 2L, SOMETHING);
        refuses(() -> undo(2), "book.undo.later", 2L, SOMETHING, 3L, SOMETHING);
        assertThat(sightings()).hasSize(2);
    }

    @Test
    void namesTheLaterStepThatTookTheLabelOfOneOfItsRows() {
        add(book, WATER, NEST);
        edit(edit -> edit.remove(NEST));
        Entry another = new org.ouzelbook.tracker.domain.Nest(
                java.util.UUID.randomUUID(),
                NEST.label(),
                NEST.place(),
                NEST.species(),
                NEST.site(),
                NEST.heightMetres(),
                NEST.found(),
                "");
        add(book, another);

        refuses(() -> undo(2), "book.undo.later", 2L, SOMETHING, 3L, SOMETHING);
    }

    @Test
    void namesTheLaterStepThatRemovedWhatItsRowsNeed() {
        addEverything(book);
        edit(edit -> edit.remove(CHECK));
        edit(edit -> edit.remove(NEST));

        refuses(() -> undo(2), "book.undo.later", 2L, SOMETHING, 3L, SOMETHING);
    }

    @Test
    void refusesToBringBackADecisionThatALaterOneContradicts() {
        addEverything(book);
        Decision boundary = decision(DecisionKind.BOUNDARY, 8.6, 8.6, "ditch");
        edit(edit -> edit.remove(DECISION));
        add(book, boundary);

        assertThatThrownBy(() -> undo(2))
                .isInstanceOfSatisfying(
                        BookException.class, e -> assertThat(e.told().key()).isEqualTo("book.decisions.contradict"));
        List<Decision> kept = book.read(BookView::decisions);
        assertThat(kept).containsExactly(boundary);
    }

    @Test
    void refusesAStepThatIsNotThere() {
        addEverything(book);

        refuses(() -> undo(7), "book.undo.noStep", 7L);
    }

    @Test
    void leavesEverythingAsItWasWhenAskedToStop() {
        addEverything(book);

        assertThatThrownBy(() -> book.undo("ina", (done, total) -> false)).isInstanceOf(CancellationException.class);
        assertThat(sightings()).hasSize(2);
        assertThat(book.history(5)).hasSize(1);
    }

    @Test
    void tellsWhichRecordsLaterStepsTouchedWithBothEndsOfALink() {
        edit(edit -> EVERYTHING.forEach(edit::add));
        long before = book.read(BookView::lastStep);
        edit(edit -> edit.remove(OTHER));

        Set<TouchedRecord> touched =
                book.read(view -> view.touchedAfter(before, 100)).orElseThrow();

        assertThat(touched)
                .containsExactlyInAnyOrder(
                        new TouchedRecord(Sighting.class, OTHER.id()), new TouchedRecord(Sighting.class, SINGER.id()));
        assertThat(record(OTHER)).isEmpty();
        assertThat(record(SINGER)).contains(SINGER);

        undo();

        assertThat(record(SINGER))
                .get()
                .extracting(entry -> ((Sighting) entry).simultaneousWith())
                .isEqualTo(Set.of(OTHER.id()));
    }

    @Test
    void doesNotListWhatIsBetterReadAnew() {
        edit(edit -> EVERYTHING.forEach(edit::add));

        Optional<Set<TouchedRecord>> many = book.read(view -> view.touchedAfter(0, 5));
        Optional<Set<TouchedRecord>> none = book.read(view -> view.touchedAfter(view.lastStep(), 5));

        assertThat(many).isEmpty();
        assertThat(none).contains(Set.of());
    }

    private List<String> labels() {
        return sightings().stream().map(Sighting::label).toList();
    }

    @Test
    void goesBackOverSeveralStepsAtOnceAndForwardAgain() {
        edit(edit -> List.of(FILE, WATER, BECK, LINE, ROCK, REACH, VISIT).forEach(edit::add));
        edit(edit -> edit.add(SINGER));
        edit(edit -> edit.add(OTHER));
        edit(edit -> edit.remove(OTHER));

        assertThat(book.goTo(2, "ina", Progress.NONE)).hasSize(2);
        assertThat(labels()).containsExactly("s1");
        assertThat(book.goTo(2, "ina", Progress.NONE)).isEmpty();

        assertThat(book.goTo(3, "ina", Progress.NONE)).hasSize(1);
        assertThat(labels()).containsExactlyInAnyOrder("s1", "s2");

        assertThat(book.goTo(1, "ina", Progress.NONE)).hasSize(2);
        assertThat(labels()).isEmpty();
        restart();
        assertThat(book.goTo(4, "ina", Progress.NONE)).hasSize(3);
        assertThat(labels()).containsExactly("s1");
    }

    @Test
    void goesNowhereWhereAStepIsMissingOrAnUndoing() {
        edit(edit -> EVERYTHING.forEach(edit::add));
        undo();

        assertThatThrownBy(() -> book.goTo(9, "ina", Progress.NONE)).isInstanceOf(BookException.class);
        assertThatThrownBy(() -> book.goTo(2, "ina", Progress.NONE)).isInstanceOf(BookException.class);
        assertThat(sightings()).isEmpty();
    }

    @Test
    void tellsWhatRecordsWereAndAre() {
        edit(edit -> EVERYTHING.forEach(edit::add));
        long sealed = book.read(BookView::lastStep);
        Sighting added = BookFixture.sighting("s3", 9.5, Set.of());
        edit(edit -> edit.add(added));
        edit(edit -> edit.remove(OTHER));
        edit(edit -> edit.remove(added));

        List<ChangedRecord> changed =
                book.read(view -> view.changesAfter(sealed, 100)).orElseThrow();

        assertThat(changed).hasSize(1);
        assertThat(changed.get(0).now()).isEmpty();
        assertThat(changed.get(0).either().id()).isEqualTo(OTHER.id());
        Optional<List<ChangedRecord>> tooMany = book.read(view -> view.changesAfter(0, 3));
        assertThat(tooMany).isEmpty();
    }
}
