package org.ouzelbook.stats.estimator.markresight;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.ouzelbook.stats.estimator.TestTable;

/** The dippers of Lebreton et al. (1992), {@code dippers.csv}. */
final class Dippers {
    static final int OCCASIONS = 7;

    private Dippers() {}

    static List<EncounterHistory> of(String sex) {
        return of("dippers.csv", sex);
    }

    static List<EncounterHistory> of(String file, String sex) {
        TestTable table = TestTable.beside(Dippers.class, file);
        return IntStream.range(0, table.rows().size())
                .filter(row -> table.column("sex").get(row).equals(sex))
                .mapToObj(row -> EncounterHistory.of(
                        table.column("history").get(row),
                        Long.parseLong(table.column("count").get(row))))
                .toList();
    }

    static MarkedAnimals pooled() {
        return MarkedAnimals.of(
                OCCASIONS,
                List.of(Stream.concat(of("male").stream(), of("female").stream())
                        .toList()));
    }

    static MarkedAnimals bySex() {
        return MarkedAnimals.of(OCCASIONS, List.of(of("male"), of("female")));
    }
}
