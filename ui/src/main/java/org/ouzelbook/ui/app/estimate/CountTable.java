package org.ouzelbook.ui.app.estimate;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.ouzelbook.stats.estimator.trend.SeasonCount;
import org.ouzelbook.tracker.domain.Message;

/**
 * Counts by site and season.
 *
 * @param counts at most one for each site and season
 * @param warnings what to know of the table itself
 */
record CountTable(List<SeasonCount> counts, List<Message> warnings) {
    private static final long LARGEST_COUNT = 1_000_000_000;
    private static final int LAST_YEAR = 9999;

    /**
     * {@return the counts of a table with the columns {@code site}, {@code year}, {@code count} and perhaps {@code km}}
     *
     * @param file the table
     * @throws BadTable if the table must be mended first
     */
    static CountTable read(Path file) {
        PlainTable table = PlainTable.read(file, List.of("site"), List.of("year", "count"), List.of("km"));
        table.needsRows();
        boolean withKm =
                table.has("km") && table.rows().anyMatch(row -> !row.text("km").isEmpty());
        Map<String, Map<Integer, Long>> firstRows = new HashMap<>();
        List<SeasonCount> counts =
                table.rows().map(row -> count(row, withKm, firstRows)).toList();
        table.check();
        return new CountTable(counts, table.warnings());
    }

    private static SeasonCount count(PlainTable.Row row, boolean withKm, Map<String, Map<Integer, Long>> firstRows) {
        String site = row.text("site");
        if (site.isEmpty()) {
            row.problem("site", Message.of("estimate.cell.missing"));
        }
        OptionalLong read = row.wholeIfRight("year", 1, LAST_YEAR);
        int year = (int) read.orElse(1);
        Long before = read.isEmpty()
                ? null
                : firstRows.computeIfAbsent(site, name -> new HashMap<>()).putIfAbsent(year, row.number());
        if (before != null) {
            row.problem("year", Message.of("estimate.trend.twice", site, year, before));
        }
        boolean counted = !row.text("count").isEmpty();
        OptionalLong count = counted ? OptionalLong.of(row.whole("count", 0, LARGEST_COUNT)) : OptionalLong.empty();
        return new SeasonCount(site, year, count, km(row, withKm && counted));
    }

    private static OptionalDouble km(PlainTable.Row row, boolean needed) {
        if (row.text("km").isEmpty()) {
            if (needed) {
                row.problem("km", Message.of("estimate.trend.kmMissing"));
            }
            return OptionalDouble.empty();
        }
        OptionalDouble km = row.number("km");
        if (km.isPresent() && !(km.getAsDouble() > 0)) {
            row.problem("km", Message.of("estimate.exposure.none"));
            return OptionalDouble.empty();
        }
        return km;
    }
}
