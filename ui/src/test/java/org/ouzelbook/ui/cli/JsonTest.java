package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ouzelbook.tracker.domain.BreedingCode.EvidenceClass;
import org.ouzelbook.tracker.domain.Species;

class JsonTest {
    private record Answer(
            Species species,
            Optional<LocalDate> first,
            OptionalDouble lower,
            Optional<EvidenceClass> evidence,
            Map<String, Double> distribution,
            List<String> notes) {}

    @Test
    void writesWhatIsThereAndNullForWhatIsNot() {
        assertThat(json(new Answer(
                        Species.DIPPER,
                        Optional.of(LocalDate.of(2026, 3, 16)),
                        OptionalDouble.empty(),
                        Optional.of(EvidenceClass.CONFIRMED),
                        Map.of("3", 0.71),
                        List.of("“Mill” <bridge>"))))
                .isEqualToIgnoringWhitespace("""
                        {"species": "dipper", "first": "2026-03-16", "lower": null, "evidence": "confirmed",
                         "distribution": {"3": 0.71}, "notes": ["“Mill” <bridge>"]}""");
    }

    @Test
    void refusesNumbersThatAreNone() {
        assertThatIllegalArgumentException().isThrownBy(() -> json(List.of(Double.NaN)));
        assertThatIllegalArgumentException().isThrownBy(() -> json(OptionalDouble.of(Double.POSITIVE_INFINITY)));
    }

    private static String json(Object answer) {
        StringWriter written = new StringWriter();
        Json.print(answer, new PrintWriter(written));
        return written.toString();
    }
}
