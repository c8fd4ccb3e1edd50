package org.ouzelbook.stats.estimator.trend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.trend.TrendSettings.Spread;

/** The core against published log-linear models that are no trends. */
class SiteEffectsFitTest {
    /**
     * P. McCullagh and J. A. Nelder (1989), section 6.3.2: deviance 38.7 on 25 degrees of freedom, dispersion 1.69. Ship type
     * stands for the site; the pairs of building years and period stand for the seasons, with three effects of years and
     * one of period. Further digits from R 4.2.2, {@code glm} with family quasipoisson.
     */
    @Test
    void reproducesTheShipDamageModel() throws IOException {
        CountGrid grid = CountGrid.of(ships());
        double[][] yearsAndPeriod = new double[grid.size()][4];
        for (int season = 0; season < grid.size(); season++) {
            int pair = grid.year(season);
            if (pair / 2 > 0) {
                yearsAndPeriod[season][pair / 2 - 1] = 1;
            }
            yearsAndPeriod[season][3] = pair % 2;
        }
        SiteEffectsFit fit = SiteEffectsFit.of(grid, yearsAndPeriod).orElseThrow();
        TrendFit quality = TrendFit.of(fit, new TrendSettings(0.95, Spread.AT_LEAST_POISSON));

        assertThat(quality.deviance()).isCloseTo(38.69505154, within(1e-7));
        assertThat(quality.pearson()).isCloseTo(42.27525312, within(1e-7));
        assertThat(quality.degreesOfFreedom()).isEqualTo(25);
        assertThat(quality.scale()).isCloseTo(1.691010125, within(1e-8));
        double[] coefficients = {0.6971404267, 0.8184265772, 0.4534266388, 0.3844669582};
        double[] errors = {0.194591939, 0.220771693, 0.303212197, 0.153799754};
        for (int i = 0; i < 4; i++) {
            assertThat(fit.coefficients().getEntry(i)).isCloseTo(coefficients[i], within(1e-9));
            assertThat(Math.sqrt(quality.scale() * fit.covariance().getEntry(i, i)))
                    .isCloseTo(errors[i], within(1e-8));
        }
    }

    /** Rows with service: type as site, years of building and period as a season, months of service as km. */
    private static List<SeasonCount> ships() throws IOException {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(SiteEffectsFitTest.class.getResourceAsStream("ships.csv")),
                StandardCharsets.UTF_8))) {
            return reader.lines()
                    .skip(1)
                    .map(line -> line.split(",", -1))
                    .filter(cells -> Double.parseDouble(cells[3]) > 0)
                    .map(cells -> new SeasonCount(
                            cells[0],
                            (Integer.parseInt(cells[1]) - 60) / 5 * 2 + (Integer.parseInt(cells[2]) - 60) / 15,
                            OptionalLong.of(Long.parseLong(cells[4])),
                            OptionalDouble.of(Double.parseDouble(cells[3]))))
                    .toList();
        }
    }
}
