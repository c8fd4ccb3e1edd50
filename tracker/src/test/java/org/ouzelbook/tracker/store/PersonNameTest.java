package org.ouzelbook.tracker.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** How names of invented people are compared; the rules are common practice, no source. */
class PersonNameTest {
    private static PersonName name(String written) {
        return PersonName.of(written).orElseThrow();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Jo Marl | jo  marl",
                "Jo Marl | JO-MARL",
                "Jo Marl | ' jo marl '",
                "J. Marl | J.Marl",
                "J. Marl | Marl J",
                "J. Marl | 'Marl, J.'",
                "J. K. Marl | 'Marl, J.K.'",
                "Zoë Ó Dell | zoe o'dell",
                "Zoë O’Dell | ZOE ODELL"
            })
    void hasTheSameLettersWhateverElseWasWritten(String one, String other) {
        assertThat(name(one).letters()).isEqualTo(name(other).letters());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Jo Marl     | J. Marl     | true",
                "Jo Marl     | J Marl      | true",
                "Jo Marl     | 'Marl, J.'  | true",
                "Jo K. Marl  | J. Marl     | true",
                "Jo K. Marl  | Jo Marl     | true",
                "Jo K. Marl  | J. L. Marl  | false",
                "Jo Marl     | Jan Marl    | false",
                "Jo Marl     | B. Marl     | false",
                "Jo Marl     | J. Mar      | false",
                "Jo Marl     | Marl        | false",
                "Jo Marl     | Jo          | false",
                "Jo M.       | J. M.       | false",
                "JM          | JM          | false"
            })
    void fitsTheSameSurnameAndAnInitial(String one, String other, boolean fits) {
        assertThat(name(one).fits(name(other))).isEqualTo(fits);
        assertThat(name(other).fits(name(one))).isEqualTo(fits);
    }

    @ParameterizedTest
    @CsvSource({"JM,true", "J.M.,true", "j m,true", "JKLM,true", "Jo,false", "J,false", "J. Marl,false", "JKLMN,false"})
    void knowsASetOfInitials(String written, boolean are) {
        assertThat(name(written).isOnlyInitials()).isEqualTo(are);
    }

    @Test
    void knowsANameWrittenOut() {
        assertThat(name("Jo Marl").isFull()).isTrue();
        assertThat(name("Jo K. Marl").initials()).isEqualTo("jkm");
        assertThat(name("J. Marl").isFull()).isFalse();
        assertThat(name("Marl").isFull()).isFalse();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", " ", "?", "Jo Marl, Ben Dell", "Jo & Ben", "Jo and Ben", "Jo; Ben", "JM/BD", "Marl, J., Dell"
            })
    void takesNoTextForANameThatNamesNobodyOrSeveral(String written) {
        assertThat(PersonName.of(written)).isEmpty();
    }

    @Test
    void putsTheNameThatTellsMostFirst() {
        List<String> sorted = Stream.of(
                        "JM", "jo marl", "Jo Marl ", "J. Marl", "Jose Marl", "José Marl", "Jo Marl", "JO MARL")
                .map(PersonNameTest::name)
                .sorted(PersonName.FULLEST)
                .map(PersonName::written)
                .toList();

        assertThat(sorted)
                .containsExactly(
                        "José Marl", "Jose Marl", "Jo Marl", "Jo Marl ", "jo marl", "JO MARL", "J. Marl", "JM");
    }
}
