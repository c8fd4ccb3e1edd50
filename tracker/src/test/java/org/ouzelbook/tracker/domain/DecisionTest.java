package org.ouzelbook.tracker.domain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DecisionTest {
    private static final UUID ARREL = Keys.next();

    private static Decision decision(DecisionKind kind, double fromKm, double toKm) {
        return decision(Species.DIPPER, 2026, ARREL, kind, fromKm, toKm, Optional.of("seen from the bridge"));
    }

    private static Decision decision(
            Species species,
            int season,
            UUID river,
            DecisionKind kind,
            double fromKm,
            double toKm,
            Optional<String> note) {
        return new Decision(
                Keys.next(),
                species,
                season,
                river,
                kind,
                Stretch.ofKm(fromKm, toKm),
                note,
                "Ina Brekke",
                LocalDate.of(2026, 7, 3));
    }

    @ParameterizedTest(name = "{0} {1}–{2} and {3} {4}–{5}: {6}")
    @CsvSource(textBlock = """
            TOGETHER,     3, 5, BOUNDARY,     4, 4, true
            TOGETHER,     3, 5, BOUNDARY,     3, 3, false
            TOGETHER,     3, 5, BOUNDARY,     5, 5, false
            TOGETHER,     3, 5, BOUNDARY,     6, 6, false
            TOGETHER,     3, 5, NO_TERRITORY, 4, 7, true
            TOGETHER,     3, 5, NO_TERRITORY, 5, 7, false
            TOGETHER,     3, 5, TOGETHER,     4, 7, false
            NO_TERRITORY, 3, 5, BOUNDARY,     4, 4, false
            NO_TERRITORY, 3, 5, NO_TERRITORY, 4, 7, false
            NOTE,         3, 5, TOGETHER,     3, 5, false
            NOTE,         4, 4, TOGETHER,     3, 5, false
            """)
    void knowsWhatCannotBothBeFollowed(
            DecisionKind one,
            double from,
            double to,
            DecisionKind other,
            double otherFrom,
            double otherTo,
            boolean clash) {
        Decision first = decision(one, from, to);
        Decision second = decision(other, otherFrom, otherTo);

        assertThat(first.contradicts(second)).isEqualTo(clash);
        assertThat(second.contradicts(first)).isEqualTo(clash);
    }

    @Test
    void contradictsNothingOfAnotherSeasonSpeciesOrRiver() {
        Decision one = decision(DecisionKind.TOGETHER, 3, 5);
        Optional<String> none = Optional.empty();

        assertThat(one.contradicts(decision(Species.DIPPER, 2025, ARREL, DecisionKind.BOUNDARY, 4, 4, none)))
                .isFalse();
        assertThat(one.contradicts(decision(Species.KINGFISHER, 2026, ARREL, DecisionKind.BOUNDARY, 4, 4, none)))
                .isFalse();
        assertThat(one.contradicts(decision(Species.DIPPER, 2026, Keys.next(), DecisionKind.BOUNDARY, 4, 4, none)))
                .isFalse();
    }

    @Test
    void refusesALengthThatItsKindCannotHaveAndANoteThatSaysNothing() {
        assertThatIllegalArgumentException().isThrownBy(() -> decision(DecisionKind.BOUNDARY, 3, 3.5));
        assertThatIllegalArgumentException().isThrownBy(() -> decision(DecisionKind.TOGETHER, 3, 3));
        assertThatIllegalArgumentException().isThrownBy(() -> decision(DecisionKind.NO_TERRITORY, 3, 3));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> decision(Species.DIPPER, 2026, ARREL, DecisionKind.NOTE, 3, 5, Optional.empty()));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> decision(Species.DIPPER, 2026, ARREL, DecisionKind.BOUNDARY, 3, 3, Optional.of(" ")));
    }
}
