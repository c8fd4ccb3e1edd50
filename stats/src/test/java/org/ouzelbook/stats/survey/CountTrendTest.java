package org.ouzelbook.stats.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.ouzelbook.stats.survey.Notebook.ARREL;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.survey.CountTrend.SeasonTotals;
import org.ouzelbook.stats.survey.Verdict.Likelihood;
import org.ouzelbook.stats.survey.Verdict.Word;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;

class CountTrendTest {
    /** So many territories on km 0–9.4 in a season, each found on two visits, neighbours seen at once on the first. */
    private static void season(Notebook book, int year, int territories, int visits) {
        for (int visit = 1; visit <= visits; visit++) {
            String label = year + "V" + visit;
            book.visit(label, year + "-03-" + (visit == 1 ? "01" : "20"), ARREL, 0, 9.4);
            for (int i = 0; i < territories; i++) {
                Notebook.Bird bird = book.bird(label + "b" + i, label, 0.5 + i);
                if (visit == 1 && i > 0) {
                    bird.sameTimeAs(label + "b" + (i - 1));
                }
                bird.noted();
            }
        }
    }

    private static CountTrend trend(Notebook book, int from, int to) {
        return CountTrend.of(
                book.records(),
                Species.DIPPER,
                IntStream.rangeClosed(from, to).boxed().toList(),
                MapSettings.usualFor(Species.DIPPER),
                List.of(Water.ALL),
                0.95);
    }

    private static Notebook fiveSeasonsWithAGap() {
        Notebook book = new Notebook();
        season(book, 2021, 9, 2);
        season(book, 2022, 8, 2);
        season(book, 2023, 8, 2);
        season(book, 2024, 8, 1);
        season(book, 2025, 7, 2);
        season(book, 2026, 7, 2);
        return book;
    }

    /** Draws that say what the rules say leave the trend as it is; draws that vary widen it; gaps stay gaps. */
    @Test
    void carriesDrawnCounts() {
        Notebook book = fiveSeasonsWithAGap();
        List<TerritoryMap> maps = IntStream.rangeClosed(2021, 2026)
                .mapToObj(year -> TerritoryMap.of(
                        book.records(), Species.DIPPER, year, MapSettings.usualFor(Species.DIPPER), Water.ALL))
                .toList();
        CountTrend byRule = CountTrend.of(book.records(), maps, Water.ALL, 0.95);
        CountTrend same = CountTrend.of(book.records(), maps, Water.ALL, 0.95, modelled(maps, 0));
        CountTrend varied = CountTrend.of(book.records(), maps, Water.ALL, 0.95, modelled(maps, 2));

        assertThat(same.line().found().orElseThrow().slope().upper())
                .isCloseTo(byRule.line().found().orElseThrow().slope().upper(), within(1e-12));
        assertThat(varied.line().found().orElseThrow().slope().upper())
                .isGreaterThan(same.line().found().orElseThrow().slope().upper());
        assertThat(varied.byRule().found().orElseThrow().slope())
                .isEqualTo(byRule.line().found().orElseThrow().slope());
        assertThat(varied.seasons())
                .extracting(SeasonTotals::count)
                .isEqualTo(byRule.seasons().stream().map(SeasonTotals::count).toList());
        assertThat(varied.isModelled()).isTrue();
        assertThat(byRule.isModelled()).isFalse();
    }

    /** Where the model does not tell every count, the line is that of the counts by rule. */
    @Test
    void fallsBackOnTheCountsByRule() {
        Notebook book = fiveSeasonsWithAGap();
        List<TerritoryMap> maps = IntStream.rangeClosed(2021, 2026)
                .mapToObj(year -> TerritoryMap.of(
                        book.records(), Species.DIPPER, year, MapSettings.usualFor(Species.DIPPER), Water.ALL))
                .toList();
        CountTrend some = CountTrend.of(book.records(), maps, Water.ALL, 0.95, modelled(maps.subList(1, 6), 2));

        assertThat(some.isModelled()).isFalse();
        assertThat(some.line()).isEqualTo(some.byRule());
    }

    private static ModelledCounts modelled(List<TerritoryMap> maps, long spread) {
        Map<ModelledCounts.Key, ModelledCount> counts = new HashMap<>();
        for (TerritoryMap map : maps) {
            for (TerritoryMap.RiverMap river : map.rivers()) {
                long count = river.count().likely();
                counts.put(
                        new ModelledCounts.Key(map.season(), river.river().id(), Water.ALL),
                        new ModelledCount(
                                count,
                                0,
                                (int) count,
                                (int) count,
                                0.95,
                                IntStream.range(0, 4)
                                        .mapToObj(draw -> count + spread * ((map.season() + draw) % 3))
                                        .toList()));
            }
        }
        return new ModelledCounts(counts);
    }

    /**
     * Counts 9, 8, 8, a gap, 7, 7: Poisson regression 0.952 a year (0.80 to 1.13), probability of a fall 0.72; least squares on
     * logs 0.952 (0.927 to 0.978). Computed once with a general-purpose statistics library.
     */
    @Test
    void saysThatFiveCountedSeasonsAreTooFew() {
        CountTrend trend = trend(fiveSeasonsWithAGap(), 2021, 2026);

        assertThat(trend.seasons())
                .extracting(SeasonTotals::count)
                .containsExactly(
                        OptionalLong.of(9),
                        OptionalLong.of(8),
                        OptionalLong.of(8),
                        OptionalLong.empty(),
                        OptionalLong.of(7),
                        OptionalLong.of(7));
        assertThat(trend.verdict().word()).isEqualTo(Word.TOO_FEW_SEASONS);
        Estimate percent = trend.line().found().orElseThrow().percentPerYear();
        assertThat(percent.value()).isCloseTo(-4.8, within(0.05));
        assertThat(percent.lower()).isCloseTo(-20, within(0.5));
        assertThat(percent.upper()).isCloseTo(13, within(0.5));
        assertThat(trend.verdict().probabilityFalling().orElseThrow()).isCloseTo(0.72, within(0.005));
        assertThat(trend.verdict().likelihood()).contains(Likelihood.LIKELY);
        assertThat(trend.leastSquares().orElseThrow().lower()).isCloseTo(-7.3, within(0.05));
        assertThat(trend.leastSquares().orElseThrow().upper()).isCloseTo(-2.2, within(0.05));
        assertThat(trend.line().found().orElseThrow().smallestDetectable(0.8).fall())
                .isNegative();
        assertThat(trend.warnings())
                .extracting(Message::key)
                .contains("trend.warning.gap", "trend.warning.otherModelFalling");
    }

    @Test
    void saysWhyASeasonIsAGap() {
        CountTrend trend = trend(fiveSeasonsWithAGap(), 2020, 2026);

        assertThat(trend.counts().get(0).gap()).contains(Message.of("trend.gap.noVisit"));
        assertThat(trend.counts().get(4).gap()).contains(Message.of("trend.gap.fewVisits", 1, 1));
        assertThat(trend.counts().get(4).count()).isEmpty();
    }

    @Test
    void answersABookWithOneSeasonWithoutATrend() {
        Notebook book = new Notebook();
        season(book, 2026, 5, 2);

        CountTrend trend = trend(book, 2026, 2026);

        assertThat(trend.line()).isInstanceOf(Answer.NotEstimable.class);
        assertThat(trend.verdict().word()).isEqualTo(Word.TOO_FEW_SEASONS);
        assertThat(trend.verdict().probabilityFalling()).isEmpty();
        assertThat(trend.verdict().sentence()).isEqualTo(Message.of("trend.verdict.fewSeasons", 1));
    }

    @Test
    void answersAnEmptyBook() {
        assertThat(trend(new Notebook(), 2021, 2026).verdict().word()).isEqualTo(Word.TOO_FEW_SEASONS);
    }

    /** The table of verdicts, row by row and at its limits; r is the yearly factor and P the probability of a fall. */
    @ParameterizedTest(name = "{0} seasons, r {1} to {2}, P {3}: {4}")
    @CsvSource(textBlock = """
            5, 0.80, 0.90, 1.00, TOO_FEW_SEASONS
            6, 0.80, 0.99, 0.99, FALLING
            6, 1.01, 1.20, 0.01, RISING
            6, 0.80, 1.00, 0.97, LIKELY_FALLEN
            6, 0.80, 1.13, 0.66, LIKELY_FALLEN
            6, 0.90, 1.30, 0.34, LIKELY_RISEN
            6, 0.94, 1.07, 0.50, NO_CLEAR_CHANGE
            6, 0.93, 1.07, 0.50, CANNOT_TELL
            6, 0.94, 1.08, 0.50, CANNOT_TELL
            6, 0.50, 2.00, 0.65, CANNOT_TELL
            """)
    void followsTheTableOfVerdicts(int seasons, double lower, double upper, double falling, Word word) {
        assertThat(Verdict.word(seasons, lower, upper, falling)).isEqualTo(word);
    }

    /** Words of the guidance note of the Intergovernmental Panel on Climate Change (Mastrandrea and others 2010). */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource(textBlock = """
            0.995, VIRTUALLY_CERTAIN
            0.99, VIRTUALLY_CERTAIN
            0.96, EXTREMELY_LIKELY
            0.91, VERY_LIKELY
            0.90, VERY_LIKELY
            0.894, LIKELY
            0.72, LIKELY
            0.60, MORE_LIKELY_THAN_NOT
            0.50, ABOUT_AS_LIKELY_AS_NOT
            0.34, ABOUT_AS_LIKELY_AS_NOT
            0.33, UNLIKELY
            0.20, UNLIKELY
            0.10, VERY_UNLIKELY
            0.07, VERY_UNLIKELY
            0.02, EXTREMELY_UNLIKELY
            0.001, EXCEPTIONALLY_UNLIKELY
            """)
    void findsTheWordForAProbability(double probability, Likelihood word) {
        assertThat(Likelihood.of(probability)).isEqualTo(word);
    }
}
