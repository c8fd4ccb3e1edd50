package org.ouzelbook.stats.survey;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.tracker.river.RiverNetwork;

/**
 * Kick samples that a year still needs. Spring samples are taken from March to May and autumn samples from September to November
 * (seasons of the regulators in the United Kingdom), so a sample of one season never stands for the other; the days allowed around
 * the day of the year before and what counts as the same place: common practice, no source.
 */
class SamplesDueTest {
    private final List<KickSample> samples = new ArrayList<>();

    private SamplesDueTest sampled(String day, double km) {
        samples.add(new KickSample(
                Notebook.key(day + km),
                day + " " + km,
                LocalDate.parse(day),
                Notebook.at(Notebook.ARREL, km),
                OptionalDouble.of(3),
                "",
                "",
                "",
                List.of()));
        return this;
    }

    private List<SamplesDue.Due> dueIn(int year) {
        SurveyRecords records = new SurveyRecords(
                RiverNetwork.of(List.of(Notebook.ARREL), List.of()),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                samples,
                List.of());
        return SamplesDue.of(records, year).due();
    }

    @Test
    void asksForTheSamePlaceWithinAWeekOfTheSameDay() {
        SamplesDue.Due due = sampled("2025-05-12", 8.35).dueIn(2026).get(0);

        assertThat(due.from()).isEqualTo("2026-05-05");
        assertThat(due.to()).isEqualTo("2026-05-19");
        assertThat(due.last()).isEqualTo("2025-05-12");
        assertThat(due.minutes()).hasValue(3);
    }

    @Test
    void asksForSpringAndAutumnApart() {
        sampled("2025-04-20", 8.35).sampled("2025-10-02", 8.40).sampled("2026-04-28", 8.36);

        assertThat(dueIn(2026)).extracting(SamplesDue.Due::last).containsExactly(LocalDate.of(2025, 10, 2));
    }

    @Test
    void goesByTheLastYearThatAPlaceWasSampled() {
        sampled("2023-04-02", 8.35).sampled("2024-05-10", 8.35).sampled("2024-05-30", 12.0);

        assertThat(dueIn(2026))
                .extracting(SamplesDue.Due::last)
                .containsExactly(LocalDate.of(2024, 5, 10), LocalDate.of(2024, 5, 30));
        assertThat(dueIn(2023)).isEmpty();
    }
}
