package org.ouzelbook.stats.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.ouzelbook.stats.survey.Notebook.ARREL;
import static org.ouzelbook.stats.survey.Notebook.at;
import static org.ouzelbook.stats.survey.Notebook.key;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.survey.SeasonDensity.Row;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.LandmarkKind;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;

class SeasonDensityTest {
    private static final MapSettings USUAL = MapSettings.usualFor(Species.DIPPER);

    private static SeasonDensity density(Notebook book, List<Integer> seasons, List<Water> waters) {
        return SeasonDensity.of(book.records(), Species.DIPPER, seasons, USUAL, waters, 0.95);
    }

    /**
     * Three territories on 5 km, 0.6 per km, and 0.8 with the edge territory. The exact 95 % limits of a Poisson count of 3 are
     * 0.6187 and 8.7673: table of F. Garwood (1936), Biometrika 28:437–442, as reprinted in handbooks of vital statistics;
     * from memory, and equal to half the χ² quantiles with 6 and 8 degrees of freedom.
     */
    @Test
    void dividesTerritoriesBySurveyedKilometres() {
        Row row = density(SixVisits.notebook(), List.of(2026), List.of(Water.ALL))
                .rows()
                .get(0);
        Estimate perKm = row.perKm().found().orElseThrow();

        assertThat(row.territories()).isEqualTo(3);
        assertThat(row.surveyedKm()).isCloseTo(5, within(1e-9));
        assertThat(perKm.value()).isCloseTo(0.6, within(1e-9));
        assertThat(perKm.lower()).isCloseTo(0.6187 / 5, within(1e-4));
        assertThat(perKm.upper()).isCloseTo(8.7673 / 5, within(1e-4));
        assertThat(row.perKmWithEdges().found().orElseThrow().value()).isCloseTo(0.8, within(1e-9));
        assertThat(List.of(row.min(), row.max(), row.edge())).containsExactly(3, 4, 1);
    }

    @Test
    void givesNoDensityWithoutSurveyedWater() {
        Row row = density(SixVisits.notebook(), List.of(2025), List.of(Water.ALL))
                .rows()
                .get(0);

        assertThat(row.perKm()).isInstanceOf(Answer.NotEstimable.class);
    }

    @Test
    void countsOnlyTheWaterThatWasAskedFor() {
        Water lower = Water.ofStretch(ARREL.id(), Stretch.ofKm(12, 14.5));

        Row row = density(SixVisits.notebook(), List.of(2026), List.of(lower))
                .rows()
                .get(0);

        assertThat(row.territories()).isEqualTo(2);
        assertThat(row.surveyedKm()).isCloseTo(2.5, within(1e-9));
    }

    @Test
    void findsSpacingAndTheLongestEmptyWater() {
        Row row = density(SixVisits.notebook(), List.of(2026), List.of(Water.ALL))
                .rows()
                .get(0);

        assertThat(row.spacingKm().orElseThrow()).isCloseTo((14.2 - 12.6 + 15.1 - 14.2) / 2, within(1e-9));
        assertThat(row.longestEmpty()).contains(Stretch.ofKm(15.2, 16.9));
    }

    /** Two of three known sites occupied: Wilson (1927) gives 0.2077 to 0.9385, computed by hand from the formula. */
    @Test
    void givesTheShareOfKnownSitesOccupied() {
        Notebook book = SixVisits.notebook()
                .landmark(site("Mill Bridge", 12.55))
                .landmark(site("Otter Stone", 14.25))
                .landmark(site("Old Weir", 16.0))
                .landmark(site("Far Fall", 19.0));

        Estimate share = density(book, List.of(2026), List.of(Water.ALL))
                .rows()
                .get(0)
                .knownSites()
                .found()
                .orElseThrow();

        assertThat(share.n()).isEqualTo(3);
        assertThat(share.value()).isCloseTo(2.0 / 3, within(1e-9));
        assertThat(share.lower()).isCloseTo(0.2077, within(1e-4));
        assertThat(share.upper()).isCloseTo(0.9385, within(1e-4));
    }

    private static Landmark site(String name, double km) {
        return new Landmark(key(name), name, LandmarkKind.BRIDGE, at(ARREL, km), List.of(), true);
    }
}
