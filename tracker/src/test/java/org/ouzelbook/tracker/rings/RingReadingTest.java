package org.ouzelbook.tracker.rings;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ouzelbook.tracker.domain.Keys;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.Sex;

/** Readings of invented birds; how legs and lost rings are written follows European colour-ring projects. */
class RingReadingTest {
    private static final RingRegister REGISTER = RingRegister.of(List.of(
            bird("D1", "", "OW", "", "mR", "2024-03-01"),
            bird("D2", "R", "N", "m", "W", "2024-03-01"),
            bird("D3", "", "OG", "", "mR", "2024-03-01"),
            bird("D4", "", "OW", "", "mG", "2026-03-01")));

    private static RingedBird bird(
            String label, String leftUpper, String leftLower, String rightUpper, String rightLower, String ringed) {
        return new RingedBird(
                Keys.next(),
                label,
                leftUpper,
                leftLower,
                rightUpper,
                rightLower,
                "",
                Sex.UNKNOWN,
                Optional.empty(),
                Optional.of(LocalDate.parse(ringed)),
                "");
    }

    private static List<String> candidates(String text) {
        return REGISTER.candidates(RingReading.read(text).orElseThrow(), LocalDate.of(2025, 4, 1)).stream()
                .map(RingedBird::label)
                .toList();
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', textBlock = """
                    OW/mR       ; D1
                    -OW/-mR     ; D1
                    O-W/mR      ; ''
                    R/N · m/W   ; D2
                    RN/mW       ; D2
                    O?/m?       ; D1 D3
                    ?/mR        ; D1 D3
                    O(W)/mR     ; D1 D3
                    O@/mR       ; D1 D3
                    WO/mR       ; ''
                    OW/mG       ; ''
                    ?/?         ; D1 D2 D3
                    """)
    void fitsEveryBirdThatMayHaveBeenReadSo(String text, String birds) {
        assertThat(String.join(" ", candidates(text))).isEqualTo(birds);
    }

    @ParameterizedTest
    @CsvSource({"OW/mR, true", "-OW/-mR, true", "OW/?, false", "O?/mR, false", "O(W)/mR, false", "O@/mR, false"})
    void isCertainOnlyIfNothingIsInDoubt(String text, boolean certain) {
        assertThat(RingReading.read(text).orElseThrow().isCertain()).isEqualTo(certain);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "OWmR", "O1/mR", "a/b/c", "O-W-R/m", "ringed, not read"})
    void doesNotUnderstandAnythingElse(String text) {
        assertThat(RingReading.read(text)).isEmpty();
    }

    @Test
    void tellsLettersThatNoBirdCarries() {
        assertThat(REGISTER.strange(RingReading.read("XW/mR").orElseThrow())).containsExactly('X');
    }
}
