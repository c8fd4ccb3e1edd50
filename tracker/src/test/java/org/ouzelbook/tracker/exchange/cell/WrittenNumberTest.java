package org.ouzelbook.tracker.exchange.cell;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WrittenNumberTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    8.35      | POINT | 8.35
                    8         | POINT | 8
                    .5        | POINT | 0.5
                    -3.412    | POINT | -3.412
                    −150      | POINT | -150
                    1,234.5   | POINT | 1234.5
                    1,234,567 | POINT | 1234567
                    1 234.5   | POINT | 1234.5
                    8,35      | COMMA | 8.35
                    1,234     | COMMA | 1.234
                    1.234,5   | COMMA | 1234.5
                    8,35      |       | 8.35
                    8.35      |       | 8.35
                    8,35      | EITHER| 8.35
                    8.350     | EITHER| 8.35
                    """)
    void readsNumbersByTheSignOfTheirFile(String text, DecimalSign sign, double value) {
        assertThat(WrittenNumber.of(text, Optional.ofNullable(sign)))
                .isInstanceOfSatisfying(
                        WrittenNumber.Read.class,
                        read -> assertThat(read.value()).isEqualTo(value));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    1,234   | POINT
                    8,35    | POINT
                    8.35    | COMMA
                    1.234   | COMMA
                    1,234   |
                    1.234   |
                    1.234,5 | POINT
                    """)
    void guessesNoSign(String text, DecimalSign sign) {
        assertThat(WrittenNumber.of(text, Optional.ofNullable(sign))).isInstanceOf(WrittenNumber.Open.class);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            eight
            8.3.5
            NaN
            Infinity
            1e5
            0x10
            8,,35
            #VALUE!
            -
            +
            """)
    void refusesWhatIsNoNumber(String text) {
        assertThat(WrittenNumber.of(text, Optional.of(DecimalSign.POINT))).isInstanceOf(WrittenNumber.Refused.class);
    }

    @Test
    void threeDigitsShowTheSignOnlyWhereThereAreNoThousands() {
        assertThat(WrittenNumber.shows("8,350", true)).contains(DecimalSign.COMMA);
        assertThat(WrittenNumber.shows("8,350", false)).isEmpty();
        assertThat(WrittenNumber.shows("8,35", false)).contains(DecimalSign.COMMA);
        assertThat(WrittenNumber.shows("0,350", false)).contains(DecimalSign.COMMA);
        assertThat(WrittenNumber.shows("8", true)).isEmpty();
        assertThat(WrittenNumber.shows("near bridge", true)).isEmpty();
    }
}
