package org.ouzelbook.tracker.exchange.geopackage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringWriter;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.exchange.export.Feature;

class DatabaseTablesTest {
    @Test
    void writesNumbersWithoutAPowerOfTenAlsoBesideGreenwich() throws IOException {
        Feature rock = new Feature("marks", "a rock", List.of(new GeoPoint(52.0289, 0.0002)), Map.of("km", 0.0005));
        StringWriter text = new StringWriter();

        try (DatabaseTables tables = DatabaseTables.of(GeoPackageFile.bytes(List.of(rock), LocalDate.of(2026, 3, 1)))) {
            tables.write("marks", text, other -> {});
        }

        assertThat(text.toString().lines())
                .containsExactly("fid,geom,name,km", "1,\"[[0.0002,52.0289]]\",a rock,0.0005");
    }
}
