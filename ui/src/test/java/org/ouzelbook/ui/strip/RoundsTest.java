package org.ouzelbook.ui.strip;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;

class RoundsTest {
    private static Visit visit(String date, double fromKm, double toKm) {
        return new Visit(
                SampleRiver.key(date + fromKm),
                date,
                SampleRiver.ARREL.id(),
                LocalDate.parse(date),
                Optional.empty(),
                Optional.empty(),
                Optional.of(Stretch.ofKm(fromKm, toKm)),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                List.of(Species.DIPPER),
                "",
                "",
                true,
                "");
    }

    @Test
    void putsTwoHalvesOfTheRiverInOneRow() {
        Rounds rounds = Rounds.of(List.of(visit("2026-02-28", 0, 8.9), visit("2026-03-01", 8.9, 17.6)), List.of());

        assertThat(rounds.rows()).containsExactly(LocalDate.of(2026, 2, 28));
        assertThat(rounds.row(LocalDate.of(2026, 3, 1))).isEqualTo(LocalDate.of(2026, 2, 28));
        assertThat(rounds.words(LocalDate.of(2026, 2, 28))).isEqualTo("28 Feb–1 Mar");
    }

    @Test
    void keepsTwoVisitsToTheSameWaterApart() {
        Rounds rounds = Rounds.of(List.of(visit("2026-03-16", 0, 8.9), visit("2026-03-17", 5, 17.6)), List.of());

        assertThat(rounds.rows()).hasSize(2);
    }

    @Test
    void putsAMissedVisitIntoTheRoundThatItBelongsTo() {
        Visit other = visit("2026-03-30", 5.3, 17.6);
        Visit missed = new Visit(
                other.id(),
                other.label(),
                other.riverId(),
                other.date(),
                other.start(),
                other.end(),
                Optional.empty(),
                other.direction(),
                other.mode(),
                other.observers(),
                other.lookedFor(),
                "spate",
                "",
                false,
                "");
        Rounds rounds = Rounds.of(List.of(visit("2026-03-29", 0, 5.3), missed), List.of());

        assertThat(rounds.words(LocalDate.of(2026, 3, 29))).isEqualTo("29–30 Mar");
        assertThat(rounds.rows()).hasSize(1);
    }

    @Test
    void keepsHalvesApartThatLieAWeekApart() {
        Rounds rounds = Rounds.of(List.of(visit("2026-03-16", 0, 8.9), visit("2026-03-23", 8.9, 17.6)), List.of());

        assertThat(rounds.rows()).hasSize(2);
    }

    @Test
    void givesCasualSightingsRowsOfTheirOwn() {
        Rounds rounds = Rounds.of(List.of(), SampleRiver.of2026().records().sightings());

        assertThat(rounds.rows()).contains(LocalDate.of(2026, 2, 24), LocalDate.of(2026, 5, 12));
        assertThat(rounds.words(LocalDate.of(2026, 2, 24))).isEqualTo("24 Feb");
    }
}
