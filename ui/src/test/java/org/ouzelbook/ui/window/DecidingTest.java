package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.DecisionKind;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.BookView;
import org.ouzelbook.ui.app.BookHistory;
import org.ouzelbook.ui.strip.SampleRiver;
import org.ouzelbook.ui.strip.Subject;

/** A winter evening over the map: decisions from the strip, the history, and the seal, without a window. */
class DecidingTest {
    @TempDir
    private Path folder;

    private Book book;
    private BookViewModel viewModel;
    private NotebookViewModel notebook;

    @BeforeEach
    void openABook() {
        book = SampleBook.create(folder.resolve("arrel"));
        viewModel = new BookViewModel(book, new DirectWork(), "HB");
        viewModel.strip().resize(1040, 600);
        viewModel.read(Optional.empty());
        notebook = viewModel.notebook();
    }

    @AfterEach
    void closeIt() {
        book.close();
    }

    private void select(String letter) {
        viewModel.strip().select(Optional.of(new Subject.OfTerritory(2026, SampleRiver.ARREL.id(), letter)));
    }

    private TerritoryMap map() {
        return Objects.requireNonNull(
                viewModel.contents().get().orElseThrow().maps().get(2026));
    }

    private int count() {
        return map().total().orElseThrow().likely();
    }

    private Territory territory(String letter) {
        return map().rivers().stream()
                .filter(river -> river.river().id().equals(SampleRiver.ARREL.id()))
                .flatMap(river -> river.territories().stream())
                .filter(one -> one.id().equals(letter))
                .findFirst()
                .orElseThrow();
    }

    private List<Decision> decisions() {
        return book.read(BookView::decisions);
    }

    private String told() {
        return viewModel.explanation().get().orElseThrow().sections().stream()
                .map(section -> section.heading() + "\n" + String.join("\n", section.sentences()))
                .collect(Collectors.joining("\n"));
    }

    @Test
    void beginsADecisionAboutTheTerritorySelectedAndSaysWhatItChanges() {
        int before = count();
        Stretch ground = territory("B").stretch();
        select("B");

        assertThat(viewModel.decide(Decisions::none)).isTrue();
        assertThat(notebook.line().get())
                .startsWith("no territory from Arrel Water ")
                .endsWith(" because ");
        assertThat(notebook.clear().get()).as("a reason may be left out").isTrue();
        assertThat(notebook.readBack().get()).startsWith("Enter decides:").contains("with it");

        notebook.line().set(notebook.line().get() + "the pair of C fed here");
        notebook.save();

        assertThat(decisions()).hasSize(1);
        assertThat(decisions().get(0).kind()).isEqualTo(DecisionKind.NO_TERRITORY);
        assertThat(decisions().get(0).stretch().contains(ground.lower())).isTrue();
        assertThat(decisions().get(0).stretch().contains(ground.upper())).isTrue();
        assertThat(decisions().get(0).note()).contains("the pair of C fed here");
        assertThat(count()).isEqualTo(before - 1);
        assertThat(viewModel.notice().get()).startsWith("Decided: no territory");

        viewModel.strip().select(Optional.empty());
        assertThat(told()).contains("the pair of C fed here").contains("Without these decisions: " + before);

        viewModel.undo();

        assertThat(count()).isEqualTo(before);
        assertThat(told()).doesNotContain("Without these decisions");
    }

    @Test
    void splitsATerritoryWhereItIsWidestAndJoinsItWithTheNext() {
        select("B");
        viewModel.decide(Decisions::boundary);
        assertThat(notebook.line().get()).matches("boundary at Arrel Water \\d+\\.\\d\\d because ");
        double km = Double.parseDouble(notebook.line().get().replaceAll("[^0-9.]", ""));
        assertThat(territory("B").stretch().contains(Chainage.ofKm(km))).isTrue();

        viewModel.decide(Decisions::one);
        notebook.save();

        assertThat(viewModel.notice().get())
                .as("B and C were seen at once; the surveyor knows better")
                .startsWith("Decided");
        assertThat(decisions()).extracting(Decision::kind).containsExactly(DecisionKind.TOGETHER);
    }

    @Test
    void asksForATerritoryFirstAndRefusesWhatContradicts() {
        viewModel.strip().select(Optional.empty());
        assertThat(viewModel.decide(Decisions::boundary)).isFalse();
        assertThat(viewModel.notice().get()).contains("Select a territory");

        notebook.begin("one territory from Arrel Water 7.5 to Arrel Water 9.5");
        notebook.save();
        notebook.begin("boundary at Arrel Water 8.5");
        notebook.save();

        assertThat(decisions()).hasSize(1);
        assertThat(notebook.readBack().get()).contains("one territory").contains("boundary");
        assertThat(notebook.line().get()).isEqualTo("boundary at Arrel Water 8.5");
    }

    @Test
    void takesThePlaceOfABoundaryFromTheStrip() {
        notebook.begin(Decisions.boundaryAt("Arrel Water", Chainage.ofKm(8.513)) + Decisions.BECAUSE);
        assertThat(notebook.line().get()).isEqualTo("boundary at Arrel Water 8.51 because ");

        notebook.place("Arrel Water 8.70");

        assertThat(notebook.line().get()).isEqualTo("boundary at Arrel Water 8.70 because ");
    }

    private static Subject.OfEnd upperEnd(String letter) {
        return new Subject.OfEnd(2026, SampleRiver.ARREL.id(), letter, true);
    }

    @Test
    void movesAnEndTellsTheCountAndDecidesABoundaryWhenItIsLetGo() {
        EndMove ends = viewModel.ends();
        Stretch ground = territory("B").stretch();
        assertThat(ends.take(upperEnd("B"))).isTrue();
        assertThat(ends.told(false).get(1)).isEqualTo("Upper end of territory B");

        ends.to(new Chainage(ground.middle().metres() + 3));

        Chainage at = ends.held().get().orElseThrow().at();
        assertThat(at.metres() % 10).isZero();
        assertThat(ends.told(false).get(0)).startsWith("Boundary at km " + at.km());
        assertThat(ends.count().get()).startsWith("Arrel Water: ");
        assertThat(decisions()).as("nothing is decided before it is let go").isEmpty();

        ends.leave();

        assertThat(ends.held().get()).isEmpty();
        ends.letGo();
        assertThat(decisions()).as("it was left where it was").isEmpty();

        ends.take(upperEnd("B"));
        ends.to(ground.middle());
        int before = count();
        String told = ends.count().get();
        ends.letGo();

        assertThat(decisions()).extracting(Decision::kind).containsExactly(DecisionKind.BOUNDARY);
        assertThat(decisions().get(0).stretch().lower().distanceTo(ground.middle()))
                .isLessThanOrEqualTo(5);
        assertThat(told).as("what it told is what came of it").containsPattern("\\b" + onArrel() + "\\b");
        assertThat(notebook.line().get()).startsWith("boundary at Arrel Water ").endsWith(" because ");
        assertThat(notebook.readBack().get()).startsWith("That stands already");

        notebook.line().set(notebook.line().get() + "two males sang across it");
        notebook.save();

        assertThat(decisions()).as("the reason of the same decision").hasSize(1);
        assertThat(decisions().get(0).note()).contains("two males sang across it");
        assertThat(notebook.line().get()).as("it is asked once").isEmpty();

        viewModel.undo();
        viewModel.undo();

        assertThat(decisions()).isEmpty();
        assertThat(count()).isEqualTo(before);
    }

    @Test
    void takesANeighboursRecordsInWhenAnEndIsMovedOutOverThemInOneStep() {
        EndMove ends = viewModel.ends();
        Territory b = territory("B");
        Territory c = territory("C");
        List<Double> ofC = c.registrations().stream()
                .map(sighting -> sighting.place().chainage().metres())
                .sorted()
                .distinct()
                .toList();
        double past = (ofC.get(0) + ofC.get(1)) / 2;
        int before = count();
        int steps = book.history(100).size();

        ends.take(upperEnd("B"));
        ends.to(new Chainage(past));
        Chainage at = ends.held().get().orElseThrow().at();
        String told = ends.count().get();
        ends.letGo();

        assertThat(decisions())
                .extracting(Decision::kind)
                .containsExactlyInAnyOrder(DecisionKind.BOUNDARY, DecisionKind.TOGETHER);
        assertThat(book.history(100)).as("one step").hasSize(steps + 1);
        assertThat(told).as("what it told is what came of it").containsPattern("\\b" + onArrel() + "\\b");
        Territory now = map().rivers().stream()
                .flatMap(river -> river.territories().stream())
                .filter(one -> one.registrations().containsAll(b.registrations()))
                .findFirst()
                .orElseThrow();
        assertThat(now.registrations())
                .as("the records that the end went over, and no others")
                .containsExactlyInAnyOrderElementsOf(Stream.concat(
                                b.registrations().stream(),
                                c.registrations().stream()
                                        .filter(one -> one.place().chainage().metres() < at.metres()))
                        .toList());
        assertThat(notebook.line().get()).contains(" and one territory from ").endsWith(" because ");

        notebook.line().set(notebook.line().get() + "the ringed pair of B fed there");
        notebook.save();

        assertThat(decisions())
                .as("one reason for both")
                .hasSize(2)
                .allMatch(one -> one.note().equals(Optional.of("the ringed pair of B fed there")));
        assertThat(book.history(100)).hasSize(steps + 2);

        viewModel.undo();
        viewModel.undo();

        assertThat(decisions()).isEmpty();
        assertThat(count()).isEqualTo(before);
        assertThat(territory("B").registrations()).isEqualTo(b.registrations());
    }

    private int onArrel() {
        return map().rivers().stream()
                .filter(river -> river.river().id().equals(SampleRiver.ARREL.id()))
                .findFirst()
                .orElseThrow()
                .count()
                .likely();
    }

    @Test
    void leavesADecisionWithoutAReasonAndKeepsAHalfWrittenLine() {
        viewModel.ends().take(upperEnd("B"));
        viewModel.ends().by(-100);
        viewModel.ends().letGo();
        assertThat(notebook.line().get()).endsWith(" because ");

        notebook.leaveUnreasoned();

        assertThat(notebook.line().get()).isEmpty();
        assertThat(decisions()).hasSize(1);

        notebook.line().set("otter stone 0712");
        viewModel.ends().take(upperEnd("C"));
        viewModel.ends().by(-100);
        viewModel.ends().letGo();

        assertThat(notebook.line().get()).isEqualTo("otter stone 0712");
        assertThat(decisions()).hasSize(2);
    }

    @Test
    void movesAnEndNoFartherThanTheWater() {
        EndMove ends = viewModel.ends();
        ends.take(upperEnd("B"));
        ends.by(1_000_000);

        assertThat(ends.held().get().orElseThrow().at())
                .isEqualTo(viewModel
                        .strip()
                        .water(SampleRiver.ARREL.id())
                        .orElseThrow()
                        .extent()
                        .upper());
        assertThat(ends.take(new Subject.OfEnd(2026, SampleRiver.ARREL.id(), "Z", true)))
                .isFalse();
        assertThat(ends.told(true)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            boundary at 8.5 because of song,             8.7, boundary at 8.7 because of song
            note at 8.5: ringed,                         8.7, note at 8.7: ringed
            one territory from 8.0 to 9.0,               8.7, one territory from 8.0 to 8.7
            no territory from 8.0 to 9.0 because quiet,  7.7, no territory from 7.7 to 9.0 because quiet
            otter stone song,                            7.7, otter stone song
            boundary at 8.7 and one territory from 8.2 to 8.66 because of song, 8.9, boundary at 8.7 and one territory from 8.2 to 8.66 because of song
            """)
    void movesTheNearerPlaceOfADecision(String line, String place, String moved) {
        assertThat(Decisions.moved(line, place)).isEqualTo(moved);
    }

    @Test
    void tellsTheHistoryAndGoesBackOverSeveralStepsAtOnce() {
        int before = count();
        notebook.begin("no territory from Arrel Water 7.5 to Arrel Water 8.6");
        notebook.save();
        notebook.begin("note at Arrel Water 9.0: ringed pair");
        notebook.save();
        HistoryViewModel history = new HistoryViewModel(viewModel, new DirectWork());
        history.read();

        assertThat(history.steps().get()).hasSize(3);
        BookHistory.Line first = history.steps().get().get(2);
        history.goTo(first);

        assertThat(decisions()).isEmpty();
        assertThat(count()).isEqualTo(before);
        assertThat(history.here()).contains(first);
        assertThat(history.steps().get()).extracting(BookHistory.Line::undone).containsExactly(true, true, false);
        assertThat(viewModel.notice().get()).contains("2 steps were played back");

        history.turn(history.steps().get().get(0));

        assertThat(decisions()).extracting(Decision::kind).containsExactly(DecisionKind.NOTE);

        history.goTo(history.steps().get().get(0));

        assertThat(decisions()).hasSize(2);
    }

    @Test
    void sealsTheSeasonShownAndTellsWhatDiffersLater() {
        SealViewModel seal = new SealViewModel(viewModel, new DirectWork());
        seal.read();
        assertThat(seal.sealed().get()).isFalse();
        assertThat(seal.told().get().orElseThrow().subtitle()).isEqualTo("Not sealed");

        seal.turn();

        assertThat(seal.sealed().get()).isTrue();
        assertThat(words(seal)).contains("by HB").contains("is the same");

        notebook.begin("no territory from Arrel Water 7.5 to Arrel Water 8.6");
        notebook.save();
        seal.read();

        assertThat(words(seal)).contains("when sealed").contains("1 added, 0 corrected, 0 removed");

        seal.turn();

        assertThat(seal.sealed().get()).isFalse();
        viewModel.undo();
        seal.read();
        assertThat(seal.sealed().get()).as("undo brings the seal back").isTrue();
        UUID key = book.read(view -> view.seals().get(0).id());
        assertThat(key).isNotNull();
    }

    private static String words(SealViewModel seal) {
        Explanation told = seal.told().get().orElseThrow();
        return told.subtitle() + "\n"
                + told.sections().stream()
                        .flatMap(section -> section.sentences().stream())
                        .collect(Collectors.joining("\n"));
    }
}
