package org.ouzelbook.tracker.exchange.cell;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Species;

class WordsTest {
    @Test
    void knowsTermsInAnyCaseAndPunctuation() {
        assertThat(Words.BANKS.term(" LB ")).contains(Bank.LEFT);
        assertThat(Words.BANKS.term("Left-bank")).contains(Bank.LEFT);
        assertThat(Words.SEXES.term("♀")).contains(Sex.FEMALE);
        assertThat(Words.SEXES.term("M/F")).contains(Sex.UNKNOWN);
        assertThat(Words.BANKS.term("north")).isEmpty();
    }

    @Test
    void readsSeveralActivities() {
        WrittenActivities song = WrittenActivities.of("Song; nest material + Alarm");

        assertThat(song.activities())
                .containsExactlyInAnyOrder(Activity.SINGING, Activity.CARRYING_MATERIAL, Activity.ALARM);
        assertThat(song.others()).isEmpty();
    }

    @Test
    void aPairIsTwoBirdsAndNoActivity() {
        WrittenActivities pair = WrittenActivities.of("pair, flew up");

        assertThat(pair.pair()).isTrue();
        assertThat(pair.activities()).containsExactly(Activity.FLYING_UP);
        assertThat(WrittenActivities.of("pair feeding young").activities()).containsExactly(Activity.FEEDING_YOUNG);
    }

    @Test
    void keepsWordsThatAreNoActivity() {
        assertThat(WrittenActivities.of("song, carying foood").others()).isEqualTo(List.of("carying foood"));
    }

    /** Letters beside the sixteen codes: BTO categories of breeding evidence. */
    @ParameterizedTest
    @CsvSource({"0,0", "14,14", "16,16", "07,7", "FF,14", "ny,16", "S,2", "F,0", "breeding code 14,14", "3.0,3"})
    void readsBreedingCodes(String text, int code) {
        assertThat(WrittenBreedingCode.of(text)).contains(new BreedingCode(code));
    }

    @ParameterizedTest
    @CsvSource({"17", "-1", "C", "confirmed", "4/9"})
    void refusesCodesThatAreNone(String text) {
        assertThat(WrittenBreedingCode.of(text)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "Dipper",
        "dippers",
        "DI",
        "Cinclus cinclus",
        "White-throated Dipper",
        "cinclus_cinclus",
        "'Cinclus cinclus (Linnaeus, 1758)'"
    })
    void knowsTheDipperByItsNames(String text) {
        assertThat(WrittenSpecies.of(text)).contains(Species.DIPPER);
    }

    @Test
    void doesNotGuessASpecies() {
        assertThat(WrittenSpecies.of("wagtail")).isEmpty();
        assertThat(WrittenSpecies.of("diper")).isEmpty();
    }
}
