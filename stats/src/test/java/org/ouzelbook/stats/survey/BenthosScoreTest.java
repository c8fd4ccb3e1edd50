package org.ouzelbook.stats.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.ouzelbook.stats.survey.Notebook.ARREL;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;

/** Invented kick samples beside the dippers of {@link SixVisits}. */
class BenthosScoreTest {
    private static final MapSettings USUAL = MapSettings.usualFor(Species.DIPPER);

    private static KickSample sample(String label, String date, double km, OptionalDouble minutes, String sheet) {
        return new KickSample(
                Notebook.key(label),
                label,
                LocalDate.parse(date),
                Notebook.at(ARREL, km),
                minutes,
                "standard net",
                "AB",
                "",
                Arrays.stream(sheet.split(" "))
                        .map(line -> line.split("="))
                        .map(line -> new KickSample.Taxon(line[0], line[1]))
                        .toList());
    }

    private static BenthosScore score(Water asked, KickSample... samples) {
        SurveyRecords book = SixVisits.notebook().records();
        SurveyRecords records = new SurveyRecords(
                book.rivers(),
                book.landmarks(),
                book.reaches(),
                book.visits(),
                book.sightings(),
                book.nests(),
                book.nestChecks(),
                List.of(),
                List.of(samples),
                List.of());
        return BenthosScore.of(records, Species.DIPPER, USUAL, asked, 0.95);
    }

    @Test
    void setsDensityBesideThePreyOfComparableSamples() {
        BenthosScore found = score(
                Water.ALL,
                sample("K1", "2026-04-20", 13, OptionalDouble.of(3), "Baetidae=120 Hydropsychidae=12"),
                sample("K2", "2026-09-20", 13, OptionalDouble.of(3), "Baetidae=8"),
                sample("K3", "2026-04-20", 14, OptionalDouble.of(1), "Baetidae=8"),
                sample("K4", "2026-04-20", 15, OptionalDouble.empty(), "Baetidae=8"));

        assertThat(found.compared()).contains(new BenthosScore.Effort(3, "standard net"));
        assertThat(found.beside()).hasSize(1);
        BenthosScore.Beside row = found.beside().get(0);
        assertThat(row.samples()).isEqualTo(2);
        assertThat(row.prey()).isEqualTo((5 + 1) / 2.0);
        assertThat(row.score()).isEqualTo((9 + 4) / 2.0);
        assertThat(row.territories()).isEqualTo(3);
        assertThat(row.perKm()).isCloseTo(0.6, within(1e-9));
        assertThat(found.warnings()).contains(Message.of("benthos.otherEffort", 2, 3.0, "standard net"));
        assertThat(found.samples().get(2).warnings()).containsExactly(Message.of("benthos.noMinutes"));
        assertThat(found.caution()).isEqualTo(Message.of("benthos.caution"));
    }

    @Test
    void refusesACorrelationOfOneSeason() {
        BenthosScore found = score(Water.ALL, sample("K1", "2026-04-20", 13, OptionalDouble.of(3), "Baetidae=120"));

        assertThat(found.correlation()).isEqualTo(Answer.notEstimable(Reason.TOO_FEW_VALUES, 1, 4));
        assertThat(found.slope()).isEqualTo(Answer.notEstimable(Reason.NO_SITE_IN_TWO_SEASONS));
    }

    @Test
    void tellsOfEveryNameThatItDoesNotKnow() {
        BenthosScore found = score(
                Water.ALL, sample("K1", "2026-04-20", 13, OptionalDouble.of(3), "Beatidae=12 Gammaridae=1 Xyz=1"));

        assertThat(found.samples().get(0).score().score()).isEqualTo(6);
        assertThat(found.samples().get(0).warnings())
                .contains(
                        Message.of("benthos.misspelt", "Beatidae", List.of("Baetidae")),
                        Message.of("benthos.unknown", "Xyz"));
        assertThat(found.warnings())
                .contains(Message.of("benthos.atLeast", new ArrayList<>(List.of("Beatidae", "Xyz"))));
    }

    @Test
    void leavesOutSamplesOfOtherWaterAndSeasonsWithoutVisits() {
        BenthosScore found = score(
                Water.ofStretch(ARREL.id(), Stretch.ofKm(12, 14)),
                sample("K1", "2026-04-20", 13, OptionalDouble.of(3), "Baetidae=120"),
                sample("K2", "2026-04-20", 15, OptionalDouble.of(3), "Baetidae=120"),
                sample("K3", "2024-04-20", 13, OptionalDouble.of(3), "Baetidae=120"));

        assertThat(found.samples()).hasSize(2);
        assertThat(found.beside()).extracting(BenthosScore.Beside::season).containsExactly(2026);
    }
}
