package org.ouzelbook.stats.estimator.trend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

class KendallLawTest {
    /** R. O. Gilbert (1987), table A18, and on to 20 values; the file prints ten digits. */
    @Test
    void reproducesTheTable() throws IOException {
        List<String> rows = Files.readAllLines(Path.of(table()));

        assertThat(rows).hasSize(677).first().isEqualTo("n,S,p");
        for (String row : rows.subList(1, rows.size())) {
            String[] cells = row.split(",", -1);
            double p = Double.parseDouble(cells[2]);
            assertThat(KendallLaw.upperTail(
                            Collections.nCopies(Integer.parseInt(cells[0]), 1), Long.parseLong(cells[1])))
                    .as(row)
                    .isCloseTo(p, within(1e-9 * p + 1e-18));
        }
    }

    private static URI table() {
        try {
            return Objects.requireNonNull(KendallLawTest.class.getResource("kendall_exact_upper_tail.csv"))
                    .toURI();
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The values a, a, b have three orders: aab, aba, baa with S = 2, 0, −2. */
    @Test
    void knowsTies() {
        assertThat(KendallLaw.upperTail(List.of(2, 1), 2)).isCloseTo(1.0 / 3, within(1e-15));
        assertThat(KendallLaw.upperTail(List.of(1, 2), 1)).isCloseTo(1.0 / 3, within(1e-15));
        assertThat(KendallLaw.upperTail(List.of(2, 1), 0)).isCloseTo(2.0 / 3, within(1e-15));
        assertThat(KendallLaw.upperTail(List.of(2, 1), -2)).isEqualTo(1);
    }

    /** Two groups of two have six orders; S is 4 in one of them, 2 in one, 0 in two. */
    @Test
    void knowsSeveralTies() {
        assertThat(KendallLaw.upperTail(List.of(2, 2), 4)).isCloseTo(1.0 / 6, within(1e-15));
        assertThat(KendallLaw.upperTail(List.of(2, 2), 2)).isCloseTo(2.0 / 6, within(1e-15));
        assertThat(KendallLaw.upperTail(List.of(2, 2), 0)).isCloseTo(4.0 / 6, within(1e-15));
    }
}
