package org.ouzelbook.tracker.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.ouzelbook.tracker.store.BookFixture.*;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.DecisionKind;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Origin;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Visit;

class BookTest {
    @TempDir
    Path folder;

    private Book book;

    @BeforeEach
    void create() {
        book = Book.create(folder.resolve("arrel"));
    }

    @AfterEach
    void close() {
        book.close();
    }

    private void reopen() {
        book.close();
        book = Book.open(folder.resolve("arrel.mv.db"));
    }

    @Test
    void keepsEveryKindOfRecordAsItWas() {
        addEverything(book);
        reopen();

        book.read(view -> {
            assertThat(view.rivers()).containsExactly(WATER, BECK);
            assertThat(view.lines()).containsExactly(LINE);
            assertThat(view.landmarks()).containsExactly(ROCK);
            assertThat(view.reaches()).containsExactly(REACH);
            assertThat(view.visits()).containsExactly(VISIT);
            assertThat(view.sighting(OTHER.id())).contains(OTHER);
            assertThat(view.nests()).containsExactly(NEST);
            assertThat(view.nestChecks()).containsExactly(CHECK);
            assertThat(view.ringedBirds()).containsExactly(BIRD);
            assertThat(view.kickSamples()).containsExactly(SAMPLE);
            assertThat(view.importedFiles()).containsExactly(FILE);
            assertThat(view.decisions()).containsExactly(DECISION);
            assertThat(view.decisions(Species.DIPPER, 2026)).containsExactly(DECISION);
            assertThat(view.decisions(Species.DIPPER, 2025)).isEmpty();
            assertThat(view.decisions(Species.KINGFISHER, 2026)).isEmpty();
            return null;
        });
    }

    @Test
    void makesSimultaneousLinksMutual() {
        addEverything(book);

        assertThat(book.read(view -> view.sighting(SINGER.id())).orElseThrow().simultaneousWith())
                .containsExactly(OTHER.id());
    }

    @Test
    void letsASightingNameOneThatComesLaterInTheSameChange() {
        Sighting later = sighting("later", 9, Set.of());
        Sighting first = sighting("first", 8, Set.of(later.id()));
        add(book, WATER, VISIT, first, later);

        assertThat(book.read(view -> view.sighting(later.id())).orElseThrow().simultaneousWith())
                .containsExactly(first.id());
        assertThatThrownBy(() -> add(book, sighting("lost", 8, Set.of(NEST.id()))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("simultaneous");
    }

    @Test
    void findsSightingsBySpeciesDatesRiverStretchAndVisit() {
        addEverything(book);
        SightingQuery dippers = SightingQuery.ALL
                .of(Species.DIPPER)
                .between(VISIT.date(), VISIT.date())
                .on(WATER.id(), REACH.stretch());

        assertThat(labels(dippers)).containsExactly("s2", "s1");
        assertThat(labels(dippers.during(VISIT))).containsExactly("s2", "s1");
        assertThat(labels(dippers.of(Species.KINGFISHER))).isEmpty();
        assertThat(labels(dippers.on(BECK.id()))).isEmpty();
        assertThat(labels(dippers.between(VISIT.date().plusDays(1), VISIT.date().plusDays(2))))
                .isEmpty();
    }

    private List<String> labels(SightingQuery query) {
        return book.read(view -> view.sightings(query)).stream()
                .map(Sighting::label)
                .toList();
    }

    @Test
    void findsByLabel() {
        addEverything(book);

        book.read(view -> {
            assertThat(view.river("ARREL water")).contains(WATER);
            assertThat(view.visit("2026-1")).contains(VISIT);
            assertThat(view.sightings("s2")).containsExactly(OTHER);
            assertThat(view.nest("N1")).contains(NEST);
            assertThat(view.ringedBird("RN")).contains(BIRD);
            assertThat(view.kickSample("K1")).contains(SAMPLE);
            assertThat(view.visit("none")).isEmpty();
            return null;
        });
    }

    @Test
    void refusesALabelThatIsTaken() {
        addEverything(book);

        assertThatThrownBy(() -> book.change(SOMETHING, "ina", edit -> {
                    edit.add(new RingedBird(
                            UUID.randomUUID(),
                            "RN",
                            "",
                            "",
                            "",
                            "",
                            "",
                            Sex.UNKNOWN,
                            Optional.empty(),
                            Optional.empty(),
                            ""));
                    return null;
                }))
                .isInstanceOfSatisfying(
                        BookException.class, e -> assertThat(e.told().key()).isEqualTo("book.taken"));
    }

    @Test
    void remembersWhereAnImportedRecordCameFrom() {
        book.change(SOMETHING, "ina", edit -> {
            edit.add(FILE);
            edit.add(WATER, new Origin(FILE, 2));
            edit.add(VISIT, new Origin(FILE, 41));
            edit.replace(noted("corrected by hand"));
            edit.add(SINGER);
            return null;
        });

        book.read(view -> {
            assertThat(view.origin(VISIT)).contains(new Origin(FILE, 41));
            assertThat(view.origin(SINGER)).isEmpty();
            assertThat(view.importedFile(FILE.sha256())).contains(FILE);
            return null;
        });
    }

    @Test
    void findsARecordThatSaysTheSame() {
        addEverything(book);
        Sighting again = sighting("s1", 8.35, Set.of());

        book.read(view -> {
            assertThat(view.identical(again)).containsExactly(SINGER.id());
            assertThat(view.identical(sighting("s1", 8.36, Set.of()))).isEmpty();
            assertThat(view.identical(noted("another"))).isEmpty();
            return null;
        });
    }

    @Test
    void leavesNothingOfAChangeThatFails() {
        assertThatThrownBy(() -> book.change(SOMETHING, "ina", edit -> {
                    edit.add(WATER);
                    throw new IllegalStateException("row 812");
                }))
                .hasMessage("row 812");

        List<River> rivers = book.read(BookView::rivers);
        assertThat(rivers).isEmpty();
        assertThat(book.history(10)).isEmpty();
    }

    @Test
    void rehearsesWithoutATrace() {
        int seen = book.rehearse(edit -> {
            EVERYTHING.forEach(edit::add);
            return edit.sightings(SightingQuery.ALL).size();
        });

        assertThat(seen).isEqualTo(2);
        List<Visit> visits = book.read(BookView::visits);
        assertThat(visits).isEmpty();
        assertThat(book.history(10)).isEmpty();
    }

    @Test
    void refusesADecisionThatContradictsAnother() {
        addEverything(book);
        Decision boundary = decision(DecisionKind.BOUNDARY, 8.6, 8.6, "ditch");

        assertThatThrownBy(() -> add(book, boundary))
                .isInstanceOfSatisfying(
                        BookException.class,
                        e -> assertThat(e.told())
                                .isEqualTo(Message.of(
                                        "book.decisions.contradict",
                                        EntryWords.of(DECISION),
                                        EntryWords.of(boundary))));
        List<Decision> kept = book.read(BookView::decisions);
        assertThat(kept).containsExactly(DECISION);

        book.change(SOMETHING, "ina", edit -> {
            edit.add(boundary);
            edit.remove(DECISION);
            return null;
        });
        List<Decision> now = book.read(BookView::decisions);
        assertThat(now).containsExactly(boundary);
    }

    @Test
    void refusesToRemoveWhatOthersNeed() {
        addEverything(book);

        assertThatThrownBy(() -> book.change(SOMETHING, "ina", edit -> {
                    edit.remove(VISIT);
                    return null;
                }))
                .isInstanceOfSatisfying(
                        BookException.class, e -> assertThat(e.told().key()).isEqualTo("book.needed"));
        Optional<Visit> visit = book.read(view -> view.visit(VISIT.id()));
        assertThat(visit).contains(VISIT);
    }
}
