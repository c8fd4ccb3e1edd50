package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.SeasonMaps;
import org.ouzelbook.stats.survey.SiteOccupancy;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.SightingQuery;
import org.ouzelbook.ui.app.BenthosAnswer;
import org.ouzelbook.ui.app.BookRecords;
import org.ouzelbook.ui.app.NestsAnswer;
import org.ouzelbook.ui.app.OccupancyAnswer;
import org.ouzelbook.ui.app.Scope;
import org.ouzelbook.ui.app.SurvivalAnswer;
import org.ouzelbook.ui.app.estimate.EstimateSurvival;

/** The answers from records that are read and mapped already are those of the commands, and each can be stopped inside. */
@Tag("slow")
class MappedAnswersTest {
    private static final Scope SCOPE = Scope.everything();
    private static final OccupancyAnswer.Question SITES =
            new OccupancyAnswer.Question(UnaryOperator.identity(), SiteOccupancy.Model.CONSTANT, false, Optional.of(8));
    private static final EstimateSurvival.Model RINGS = EstimateSurvival.Model.of("", "", Optional.empty(), 0.95);

    @TempDir
    private static Path folder;

    private static Book book;
    private static SeasonMaps maps;

    @BeforeAll
    static void openTheDemo() {
        Path demo = Path.of("..", "demo-territories");
        Path file = folder.resolve("arrel.mv.db");
        CommandRun.of(
                "new",
                file.toString(),
                "--river",
                demo.resolve("rivers.geojson").toString());
        CommandRun.of("import", file.toString(), demo.resolve("field-files").toString(), "--accept");
        book = Book.open(file);
        maps = SeasonMaps.of(
                book.read(view -> BookRecords.of(view, SightingQuery.ALL, day -> true)),
                Species.DIPPER,
                MapSettings.usualFor(Species.DIPPER));
    }

    @AfterAll
    static void closeIt() {
        book.close();
    }

    private static NestsAnswer nests(Progress progress) {
        return NestsAnswer.of(maps, SCOPE, progress);
    }

    private static BenthosAnswer prey(Progress progress) {
        return BenthosAnswer.of(maps, SCOPE, progress);
    }

    private static OccupancyAnswer sites(Progress progress) {
        return OccupancyAnswer.of(maps.records(), SCOPE, SITES, progress);
    }

    private static SurvivalAnswer rings(Progress progress) {
        return SurvivalAnswer.of(maps.records(), SCOPE, RINGS, progress);
    }

    @Test
    void saysWhatTheCommandsSay() {
        assertThat(nests(Progress.NONE))
                .isEqualTo(NestsAnswer.of(book, SCOPE, UnaryOperator.identity(), UnaryOperator.identity()));
        assertThat(prey(Progress.NONE)).isEqualTo(BenthosAnswer.of(book, SCOPE, UnaryOperator.identity()));
        assertThat(sites(Progress.NONE)).isEqualTo(OccupancyAnswer.of(book, SCOPE, SITES));
        assertThat(rings(Progress.NONE)).isEqualTo(SurvivalAnswer.of(book, SCOPE, RINGS));
    }

    @Test
    void stopsInsideEachAnswerAndNeverGoesBack() {
        for (Function<Progress, ?> one : List.<Function<Progress, ?>>of(
                MappedAnswersTest::nests,
                MappedAnswersTest::prey,
                MappedAnswersTest::sites,
                MappedAnswersTest::rings)) {
            assertThatThrownBy(() -> one.apply((done, total) -> false)).isInstanceOf(CancellationException.class);
        }
        for (Function<Progress, ?> one :
                List.<Function<Progress, ?>>of(MappedAnswersTest::nests, MappedAnswersTest::prey)) {
            List<Double> shares = new ArrayList<>();
            assertThat(one.apply((done, total) -> shares.add((double) done / total)))
                    .isNotNull();
            assertThat(shares).hasSizeGreaterThan(5).isSorted().allMatch(share -> share >= 0 && share < 1);
        }
    }

    @Test
    void stopsBetweenTwoSimulatedSetsOfVisits() {
        List<Long> heard = new ArrayList<>();
        assertThatThrownBy(() -> sites((done, total) -> {
                    synchronized (heard) {
                        heard.add(done);
                        return heard.size() < 4;
                    }
                }))
                .isInstanceOf(CancellationException.class);
        assertThat(heard.size()).isLessThan(8);
    }
}
