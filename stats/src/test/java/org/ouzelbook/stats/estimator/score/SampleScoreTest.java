package org.ouzelbook.stats.estimator.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SampleScoreTest {
    private static SampleScore score(String sheet) {
        return SampleScore.of(
                Arrays.stream(sheet.split("\\s+"))
                        .map(line -> line.split("="))
                        .flatMap(line -> FoundTaxon.of(line[0], line.length > 1 ? line[1] : "1").stream())
                        .toList(),
                ScoreTable.bmwp());
    }

    /** The sums by score of the 1980 list, without the two beetle families that later lists leave out: 83 taxa, 544 in all. */
    @ParameterizedTest
    @CsvSource(textBlock = """
            10, 22
             8, 10
             7,  5
             6,  9
             5, 22
             4,  3
             3, 10
             2,  1
             1,  1
            """)
    void holdsAsManyTaxaOfEachScoreAsTheList(int score, int taxa) {
        assertThat(ScoreTable.bmwp().taxa())
                .filteredOn(taxon -> taxon.scoredAs().equals(java.util.Optional.of(taxon.name())))
                .filteredOn(taxon -> taxon.score().equals(OptionalInt.of(score)))
                .hasSize(taxa);
    }

    /** Worked by hand from the published scores: thirteen families, 82, 6.31, eight of them mayflies, stoneflies or caddis. */
    @Test
    void scoresAnUplandSample() {
        SampleScore upland =
                score("Baetidae Heptageniidae Leuctridae Perlodidae Hydropsychidae Rhyacophilidae Limnephilidae"
                        + " Sericostomatidae Gammaridae Elmidae Simuliidae Chironomidae Oligochaeta");

        assertThat(upland.score()).isEqualTo(82);
        assertThat(upland.scoringTaxa()).isEqualTo(13);
        assertThat(upland.average().orElseThrow()).isCloseTo(6.31, within(0.005));
        assertThat(upland.eptFamilies()).isEqualTo(8);
    }

    /** An invented rich sample, added up with a spreadsheet: merged families score once, but are families of their own. */
    @Test
    void scoresMergedFamiliesOnce() {
        SampleScore rich =
                score("Heptageniidae=64 Baetidae=212 Ephemerellidae=3 Leuctridae=41 Perlodidae=7 Chloroperlidae=12"
                        + " Nemouridae=5 Rhyacophilidae=9 Glossosomatidae=6 Hydropsychidae=33 Polycentropodidae=4 Limnephilidae=11"
                        + " Sericostomatidae=2 Elmidae=58 Simuliidae=140 Chironomidae=96 Tipulidae=3 Limoniidae=2 Gammaridae=85"
                        + " Oligochaeta=22 Ancylidae=8");

        assertThat(rich.score()).isEqualTo(127);
        assertThat(rich.scoringTaxa()).isEqualTo(19);
        assertThat(rich.average().orElseThrow()).isCloseTo(6.684210526, within(5e-10));
        assertThat(rich.eptFamilies()).isEqualTo(13);
        assertThat(rich.eptIndividuals()).isEqualTo(OptionalLong.of(409));
        assertThat(rich.individuals()).isEqualTo(OptionalLong.of(823));
        assertThat(rich.prey())
                .isEqualTo(Map.of(
                        PreyGroup.HYDROPSYCHIDAE, AbundanceClass.B,
                        PreyGroup.RHYACOPHILIDAE, AbundanceClass.B,
                        PreyGroup.LIMNEPHILIDAE, AbundanceClass.B,
                        PreyGroup.OTHER_CADDIS, AbundanceClass.A,
                        PreyGroup.BAETIDAE, AbundanceClass.C,
                        PreyGroup.HEPTAGENIIDAE, AbundanceClass.B,
                        PreyGroup.GAMMARIDAE, AbundanceClass.B));
        assertThat(rich.preyRanks()).isEqualTo(14);
    }

    /** An invented poor sample, added up with a spreadsheet; biting midges are known and do not score. */
    @Test
    void scoresAPoorSample() {
        SampleScore poor = score("Asellidae=180 Erpobdellidae=14 Glossiphoniidae=6 Chironomidae=420 Oligochaeta=350"
                + " Sphaeriidae=25 Hydrobiidae=60 Bithyniidae=3 Physidae=4 Baetidae=2 Ceratopogonidae=9");

        assertThat(poor.score()).isEqualTo(25);
        assertThat(poor.scoringTaxa()).isEqualTo(9);
        assertThat(poor.average().orElseThrow()).isCloseTo(2.777777778, within(5e-10));
        assertThat(poor.eptFamilies()).isEqualTo(1);
        assertThat(poor.notScoring()).containsExactly("Ceratopogonidae");
        assertThat(poor.unknown()).isEmpty();
    }

    @Test
    void leavesTheAverageUndefinedWhereNothingScores() {
        assertThat(SampleScore.of(List.of(), ScoreTable.bmwp()).average()).isEmpty();
        assertThat(score("Ceratopogonidae=9").average()).isEmpty();
        assertThat(score("Baetidae=0").average()).isEmpty();
    }

    @Test
    void namesTheNearestOfAFamilyThatItDoesNotKnow() {
        SampleScore slips = score("Heptagenidae=3 baetidae=2 Gamarridae=1 Wagtails=1");

        assertThat(slips.score()).isEqualTo(4);
        assertThat(slips.unknown())
                .containsEntry("Heptagenidae", List.of("Heptageniidae"))
                .containsEntry("Gamarridae", List.of("Gammaridae"))
                .containsEntry("Wagtails", List.of());
    }

    @Test
    void saysWhichScoresAreFromMemory() {
        assertThat(score("Baetidae Elmidae").fromMemory()).containsExactly("Elmidae");
    }

    @Test
    void countsNoAnimalsWhereOnlyClassesWereWritten() {
        SampleScore classes = score("Baetidae=C Gammaridae=12 Odontoceridae=A Leptoceridae=b");

        assertThat(classes.individuals()).isEmpty();
        assertThat(classes.prey()).containsEntry(PreyGroup.OTHER_CADDIS, AbundanceClass.B);
    }

    @ParameterizedTest
    @CsvSource({"1, A", "9, A", "10, B", "99, B", "100, C", "999, C", "1000, D", "50000, D"})
    void classesAbundanceByTens(long count, AbundanceClass expected) {
        assertThat(AbundanceClass.of(count)).isEqualTo(expected);
        assertThatIllegalArgumentException().isThrownBy(() -> AbundanceClass.of(0));
    }
}
