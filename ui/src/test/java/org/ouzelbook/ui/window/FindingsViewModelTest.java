package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestSite;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.Counting;
import org.ouzelbook.ui.app.DensityAnswer;
import org.ouzelbook.ui.app.Scope;
import org.ouzelbook.ui.app.SeasonFindings;
import org.ouzelbook.ui.app.TrendAnswer;
import org.ouzelbook.ui.report.SeasonReport;
import org.ouzelbook.ui.strip.SampleRiver;
import org.ouzelbook.ui.strip.Subject;

/** The findings without a window, on a real book of one season without nests, rings and samples. */
class FindingsViewModelTest {
    @TempDir
    private Path folder;

    private Book book;
    private BookViewModel viewModel;
    private FindingsViewModel findings;

    @BeforeEach
    void openABook() {
        book = SampleBook.create(folder.resolve("arrel"));
        viewModel = new BookViewModel(book, new DirectWork(), "HB");
        viewModel.read(Optional.empty());
        findings = new FindingsViewModel(viewModel, new DirectWork(), 640);
        findings.read();
    }

    @AfterEach
    void closeIt() {
        book.close();
    }

    private FindingSheet sheet(Topic topic) {
        return findings.sheet(topic).orElseThrow();
    }

    @Test
    void saysTheDensityWithItsLimitsBeforeTheTable() {
        FindingSheet density = sheet(Topic.DENSITY);

        assertThat(density.sentence()).startsWith("In 2026: Arrel Water").contains("per km (");
        assertThat(density.figure()).isPresent();
        assertThat(density.figure().orElseThrow().places()).hasSameSizeAs(density.lines());
        assertThat(density.lines().get(0).cells()).hasSameSizeAs(density.columns());
    }

    @Test
    void putsTheModelFirstAndTheRuleBesideItOnceTheModelHasCounted() {
        assertThat(viewModel.model().counts().get()).isEmpty();
        new ModelCounting(viewModel, new DirectWork(), () -> {});
        viewModel.model().countAgain();
        findings.read();

        DensityAnswer asCommand =
                DensityAnswer.of(book, Scope.everything(), UnaryOperator.identity(), Counting.BY_MODEL, Progress.NONE);
        DensityAnswer.Row row = asCommand.rows().get(0);
        DensityAnswer.ByModel model = row.byModel().orElseThrow();
        FindingSheet density = sheet(Topic.DENSITY);
        assertThat(density.sentence())
                .contains(String.format(
                        Locale.ROOT,
                        "%s %.2f per km by the model (%.2f to %.2f), %.2f by the rules",
                        row.river(),
                        model.perKm(),
                        model.lower(),
                        model.upper(),
                        row.perKm().getAsDouble()));
        assertThat(density.lines().get(0).rests()).isNotEmpty();
        assertThat(density.columns()).doesNotHaveDuplicates();

        TrendAnswer trend =
                TrendAnswer.of(book, Scope.everything(), UnaryOperator.identity(), Counting.BY_MODEL, Progress.NONE);
        TrendAnswer.ByModel last =
                trend.seasons().get(trend.seasons().size() - 1).byModel().orElseThrow();
        assertThat(sheet(Topic.TREND).lines().get(0).cells())
                .contains(String.format(Locale.ROOT, "%.1f", last.estimate()));
        assertThat(viewModel.explanation().get().orElseThrow().sections().get(0).sentences())
                .anyMatch(sentence -> sentence.contains("by the model") || sentence.contains("The model"));
    }

    @Test
    void staysByRuleAndSaysSoWhereTheModelIsStopped() {
        new ModelCounting(viewModel, new StoppedWork(), () -> {});
        viewModel.model().countAgain();
        findings.read();

        assertThat(viewModel.model().stopped().get()).isTrue();
        assertThat(sheet(Topic.DENSITY).sentence()).doesNotContain("by the model");
    }

    @Test
    void breaksOffWhatSomebodyStopsAndAnswersItWhenAskedAgain() {
        StoppableWork work = new StoppableWork(2);
        FindingsViewModel stoppable = new FindingsViewModel(viewModel, work, 640);

        stoppable.read();
        for (Topic topic : Topic.values()) {
            assertThat(stoppable.sheet(topic).orElseThrow().isStopped())
                    .as(topic.name())
                    .isTrue();
        }

        work.stopAfter(Long.MAX_VALUE);
        stoppable.read();
        assertThat(stoppable.sheet(Topic.DENSITY)).isEqualTo(findings.sheet(Topic.DENSITY));
        assertThat(work.shares()).isNotEmpty().allMatch(share -> share >= 0 && share <= 1);
    }

    /** Work that somebody stops at once. */
    private static final class StoppedWork implements Work {
        @Override
        public <T> void start(String what, Function<Progress, T> job, Consumer<T> done, Consumer<Throwable> failed) {
            try {
                done.accept(job.apply((part, whole) -> false));
            } catch (CancellationException e) {
                failed.accept(e);
            }
        }
    }

    @Test
    void namesTheTerritoriesRegistrationsAndVisitsBehindACount() {
        findings.look(sheet(Topic.DENSITY).lines().get(0));

        List<Evidence> rests = findings.evidence().get();
        assertThat(rests.get(0).words()).startsWith("Territory A, Arrel Water, km");
        assertThat(rests)
                .anyMatch(one -> one.subject()
                        .filter(Subject.OfSighting.class::isInstance)
                        .isPresent());
        assertThat(rests).anyMatch(one -> one.words().startsWith("Visit of"));
    }

    @Test
    void goesFromANumberToItsRecordOnTheStrip() {
        Evidence sighting = sheet(Topic.DENSITY).lines().get(0).rests().stream()
                .filter(one -> one.subject()
                        .filter(Subject.OfSighting.class::isInstance)
                        .isPresent())
                .findFirst()
                .orElseThrow();

        findings.goTo(sighting);

        assertThat(viewModel.strip().selected().get()).isEqualTo(sighting.subject());
    }

    @Test
    void saysWhyThereIsNoTrendFromOneSeason() {
        FindingSheet trend = sheet(Topic.TREND);

        assertThat(trend.sentence()).contains("one counted season shows no trend");
        assertThat(trend.brief()).isBlank();
    }

    @Test
    void refusesInASentenceWhatTheBookDoesNotHold() {
        assertThat(sheet(Topic.NESTS).sentence()).isNotBlank();
        assertThat(sheet(Topic.NESTS).figure()).isEmpty();
        assertThat(sheet(Topic.SURVIVAL).sentence()).isNotBlank();
        assertThat(sheet(Topic.PREY).sentence()).isNotBlank();
    }

    private String saved(Path file) {
        List<String> told = new ArrayList<>();
        findings.save(file, told::add);
        return String.join("\n", told);
    }

    @Test
    void savesNothingForEverybodyThatTellsWhatMustStayPrivate() {
        Reach named = new Reach(UUID.randomUUID(), "By nest Q7-otter", SampleRiver.ARREL.id(), Stretch.ofKm(7, 12));
        book.change(Message.of("window.title"), "HB", edit -> {
            edit.add(new Nest(
                    UUID.randomUUID(),
                    "nest Q7-otter",
                    new Place(SampleRiver.ARREL.id(), Chainage.ofKm(9.31), Bank.LEFT, 20, 1),
                    Species.DIPPER,
                    NestSite.BRIDGE,
                    OptionalDouble.empty(),
                    Optional.empty(),
                    ""));
            edit.add(named);
            return named;
        });
        viewModel.read(Optional.empty());
        findings.read();
        Path csv = folder.resolve("density.csv");

        assertThat(saved(csv)).startsWith("It was not saved: it would tell what must stay private.");
        assertThat(csv).doesNotExist();
    }

    @Test
    void marksAsPrivateWhatTellsOfNests() throws IOException {
        FindingSheet sheet = new FindingSheet(
                "",
                "",
                "",
                Optional.of(sheet(Topic.DENSITY).figure().orElseThrow()),
                List.of("nest"),
                List.of(new FindingSheet.Line(List.of("Kirk nest"), List.of())),
                List.of());

        FindingFile.of(Topic.NESTS, sheet, folder.resolve("nests.svg"))
                .orElseThrow()
                .write(book);
        String told = FindingFile.of(Topic.NESTS, sheet, folder.resolve("nests.csv"))
                .orElseThrow()
                .write(book);

        assertThat(Files.readString(folder.resolve("nests-private.svg"))).contains("Private: this tells of nests");
        assertThat(Files.readString(folder.resolve("nests-private.csv"))).contains("Kirk nest");
        assertThat(folder.resolve("nests.csv")).doesNotExist();
        assertThat(told).contains("nests-private.csv").contains("It is private");
    }

    @Test
    void writesThePictureAndTheTable() throws IOException {
        Path svg = folder.resolve("density.svg");
        Path csv = folder.resolve("density.csv");

        assertThat(saved(svg)).contains(svg.toString()).contains("looked through");
        assertThat(saved(csv)).contains(csv.toString()).contains("looked through");

        assertThat(Files.readString(svg)).startsWith("<svg").contains("Arrel Water");
        assertThat(Files.readAllLines(csv).get(0)).startsWith("water,season,territories");
        assertThat(Files.readAllLines(csv).get(1)).startsWith("Arrel Water,2026,");
    }

    @Test
    void writesTheReportThatTheCommandWrites() throws IOException {
        Path page = folder.resolve("report.html");
        List<String> told = new ArrayList<>();

        findings.report(page, told::add);

        assertThat(told).last().isEqualTo("The report is in " + page);
        SeasonFindings asCommand =
                SeasonFindings.of(book, Scope.everything(), UnaryOperator.identity(), Counting.BY_MODEL, Progress.NONE);
        assertThat(page).hasBinaryContent(SeasonReport.of(asCommand).content(page));
    }

    @Test
    void hasNothingToWriteWhereNothingWasFound() {
        findings.look(Topic.SURVIVAL);

        assertThat(saved(folder.resolve("survival.csv"))).isEqualTo("There is nothing to save yet.");
        assertThat(folder.resolve("survival.csv")).doesNotExist();
    }
}
