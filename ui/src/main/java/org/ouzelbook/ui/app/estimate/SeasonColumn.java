package org.ouzelbook.ui.app.estimate;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.ouzelbook.stats.estimator.likelihood.Covariate;
import org.ouzelbook.tracker.domain.Message;

/**
 * A column of the table of occasions: a value for each occasion, or for each interval between two.
 *
 * @param name the name in the option that asks for it
 * @param file the file it stands in
 * @param values the covariate, one value a row
 */
record SeasonColumn(String name, String file, Covariate values) {
    private static final List<String> ORDER = List.of("occasion", "interval");
    private static final int MOST_ROWS = 100_000;

    /**
     * {@return the columns that a model asks for and the table of occasions has}
     *
     * @throws BadTable if that table must be mended first
     */
    static List<SeasonColumn> read(EstimateSurvival.Model model) {
        Optional<Path> file = model.occasions();
        if (file.isEmpty()) {
            return List.of();
        }
        List<String> asked = Stream.concat(model.survivalBy().stream(), model.resightingBy().stream())
                .distinct()
                .filter(name -> !ORDER.contains(PlainTable.plain(name)))
                .toList();
        PlainTable table = PlainTable.read(file.get(), List.of(), List.of(), CovariateColumns.plain(asked), ORDER);
        List<PlainTable.Row> rows = table.rows().toList();
        for (String order : ORDER) {
            if (table.has(order)) {
                rows = rows.stream()
                        .sorted(Comparator.comparingLong(row -> row.whole(order, 0, MOST_ROWS)))
                        .toList();
                break;
            }
        }
        List<PlainTable.Row> inOrder = rows;
        List<SeasonColumn> columns = asked.stream()
                .filter(name -> table.has(PlainTable.plain(name)))
                .map(name -> new SeasonColumn(name, file.get().toString(), CovariateColumns.of(table, name, inOrder)))
                .toList();
        table.check();
        return columns;
    }

    /** Notes a wrong number of rows. */
    void check(PlainTable histories, int occasions) {
        int rows = values.values().size();
        if (occasions >= 2 && rows != occasions && rows != occasions - 1) {
            histories.problem(Message.of("estimate.survival.occasions", file, rows, occasions, occasions - 1));
        }
    }

    /** {@return the value of each interval, or of the occasion that ends it} */
    Covariate byInterval(int intervals, int end) {
        List<String> all = values.values();
        int from = all.size() == intervals ? 0 : end;
        return new Covariate(values.name(), all.subList(from, from + intervals), values.numeric());
    }
}
