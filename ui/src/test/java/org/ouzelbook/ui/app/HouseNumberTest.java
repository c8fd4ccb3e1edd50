package org.ouzelbook.ui.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Probabilities and changes are written alike in every text. */
class HouseNumberTest {
    /** A probability written in whole percent by a text of its own, which makes 100% of 0.996. */
    private static final Pattern OF_ITS_OWN = Pattern.compile("probab[^.;]*?\\{\\d+,number,(0 ?%|percent)\\}");

    @ParameterizedTest
    @CsvSource({
        "0, under 1%",
        "0.005, under 1%",
        "0.0051, 1%",
        "0.5, 50%",
        "0.9949, 99%",
        "0.995, over 99%",
        "1, over 99%"
    })
    void neverTellsAProbabilityAsNothingOrAll(double probability, String words) {
        assertThat(Texts.of("cli.trend.falling", probability))
                .isEqualTo("Numbers fell with probability " + words + ".");
        assertThat(Texts.of("strip.share", probability)).isEqualTo(words);
    }

    @Test
    void noTextWritesAProbabilityInItsOwnWay() {
        assertThat(Texts.keys())
                .noneMatch(key -> OF_ITS_OWN.matcher(Texts.pattern(key)).find());
        assertThat(OF_ITS_OWN.matcher("fell with probability {5,number,0%}").find())
                .isTrue();
    }

    @Test
    void noTextSetsASpaceBeforeAPercentSign() {
        assertThat(Texts.keys()).noneMatch(key -> Texts.pattern(key).contains(" %"));
    }

    @ParameterizedTest
    @CsvSource({
        "-5.04, −5.0% a year",
        "-0.04, a fall of less than 0.1% a year",
        "0, no change from year to year",
        "-1e-14, no change from year to year",
        "0.04, a rise of less than 0.1% a year",
        "0.06, +0.1% a year"
    })
    void aChangeThatIsNoneHasNoSign(double percent, String words) {
        assertThat(Texts.of("window.findings.aYear", percent, "a", "b")).isEqualTo(words + " (a to b%)");
    }

    @ParameterizedTest
    @CsvSource({"-75.4, −75", "-0.4, −0.4", "-0.04, 0", "0, 0", "0.04, 0", "0.5, +0.5", "0.6, +1", "300, +300"})
    void aLimitNearNoChangeIsToldWithADecimal(double percent, String words) {
        assertThat(Texts.of("trend.sure.period", 12.4, percent, 400))
                .isEqualTo("Over the whole period: +12% (" + words + " to +400%).");
    }

    @Test
    void aVerdictWritesAllItsNumbersSo() {
        assertThat(Texts.of("trend.verdict.tooFewSeasons", 0.0, -75.0, 300.0, 2, 6, 0.999))
                .isEqualTo("Cannot tell yet: 2 counted seasons are too few for a trend, and 6 are asked for;"
                        + " best guess: no change from year to year (−75 to +300%); probability of a fall over 99%");
        assertThat(Texts.of("trend.verdict.falling", -6.0, -9.0, -0.3, 1.0))
                .isEqualTo("Numbers are falling: −6.0% a year (−9 to −0.3%); probability of a fall over 99%");
    }

    @ParameterizedTest
    @CsvSource({"0.00001, p below 0.001", "0.0312, p = 0.031"})
    void aSmallPIsNotNothing(double p, String words) {
        assertThat(Texts.of("cli.compare.differ", p))
                .isEqualTo("They differ by more than chance would explain: " + words + ".");
    }
}
