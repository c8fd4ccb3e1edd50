package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.stats.survey.ModelledCounts;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.SightingQuery;
import org.ouzelbook.ui.app.LogLine;
import org.ouzelbook.ui.app.TypedLines;

/** What the window holds of a book must be what it would hold had it read everything anew. */
class BookContentsTest {
    @TempDir
    private Path folder;

    private Book book;
    private BookContents before;

    @BeforeEach
    void openABook() {
        book = SampleBook.create(folder.resolve("arrel"));
        BookContents read = BookContents.read(book, Optional.empty());
        before = read.caughtUp(read.behind(), Progress.NONE);
    }

    @AfterEach
    void closeIt() {
        book.close();
    }

    private void log(String line) {
        LogLine.Options options = new LogLine.Options(
                Optional.empty(),
                Optional.of(LocalDate.of(2026, 5, 11)),
                Optional.empty(),
                false,
                false,
                LocalDate.of(2026, 6, 1),
                "HB");
        TypedLines.Answer answer = new LogLine(book, options).enter(line);
        assertThat(answer.stored()).as("%s", answer.questions()).isTrue();
    }

    private static Optional<TerritoryMap.Total> total(BookContents contents) {
        return Objects.requireNonNull(contents.maps().get(2026)).total();
    }

    private void isAsIfReadAnew(BookContents followed) {
        BookContents anew = BookContents.read(book, Optional.empty());
        BookContents mapped = anew.caughtUp(anew.behind(), Progress.NONE);
        SurveyRecords one = followed.records();
        SurveyRecords other = mapped.records();
        assertThat(one.visits()).isEqualTo(other.visits());
        assertThat(new HashSet<>(one.sightings())).isEqualTo(new HashSet<>(other.sightings()));
        assertThat(one.sightings()).extracting(Sighting::date).isSorted();
        assertThat(one.sightings()).hasSameSizeAs(other.sightings());
        assertThat(one.decisions()).isEqualTo(other.decisions());
        BookContents caughtUp = followed.caughtUp(followed.behind(), Progress.NONE);
        assertThat(caughtUp.maps().keySet()).isEqualTo(mapped.maps().keySet());
        assertThat(total(caughtUp)).isEqualTo(total(mapped));
        assertThat(caughtUp.step()).isEqualTo(mapped.step());
    }

    @Test
    void nothingIsBehindWhereNothingHappened() {
        BookContents followed = before.followed(book, Optional.empty());

        assertThat(followed.behind()).isEmpty();
        assertThat(followed.maps()).isEqualTo(before.maps());
    }

    @Test
    void followsALoggedLineAndItsUndoing() {
        log("14.0 pair 0812 = 14.9 song");
        BookContents followed = before.followed(book, Optional.empty());

        assertThat(followed.records().sightings())
                .hasSize(before.records().sightings().size() + 2);
        assertThat(followed.behind()).containsExactly(2026);
        isAsIfReadAnew(followed);

        book.undo("HB", Progress.NONE);

        isAsIfReadAnew(followed.followed(book, Optional.empty()));
    }

    @Test
    void followsARemovedSightingThatWasSeenAtOnceWithAnother() {
        Sighting linked = book.read(view -> view.sightings(SightingQuery.ALL).stream()
                .filter(sighting -> !sighting.simultaneousWith().isEmpty())
                .findFirst()
                .orElseThrow());
        book.change(Message.of("window.title"), "HB", edit -> {
            edit.remove(linked);
            return linked;
        });

        isAsIfReadAnew(before.followed(book, Optional.empty()));
    }

    @Test
    void followsAVisitOfANewSeason() {
        log("visit 2025-04-02 mill bridge to otter stone, 0700-0900, HB, looking for dipper");
        BookContents followed = before.followed(book, Optional.empty());

        assertThat(followed.behind()).containsExactly(2025);
        isAsIfReadAnew(followed);
    }

    /** A season that is not mapped yet is no season without birds: until all before it are there, no story of years is told. */
    @Test
    void tellsTheStoryOfAYearOnlyWhenTheYearsBeforeItAreMapped() {
        TreeSet<Integer> earlier = new TreeSet<>(List.of(2019));
        BookContents behind = new BookContents(
                before.records(),
                before.step(),
                before.speciesThere(),
                before.species(),
                before.maps(),
                before.trend(),
                before.undecided(),
                earlier);
        Stories stories = new Stories(new DirectWork(), () -> {});

        stories.about(behind, ModelledCounts.NONE);
        assertThat(stories.of(2026)).isEmpty();

        stories.about(before, ModelledCounts.NONE);
        stories.of(2026);
        assertThat(stories.of(2026)).isPresent();
    }
}
