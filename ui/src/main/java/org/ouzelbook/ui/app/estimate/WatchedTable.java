package org.ouzelbook.ui.app.estimate;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.ouzelbook.stats.estimator.exposure.WatchedNest;
import org.ouzelbook.stats.estimator.likelihood.Covariate;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.exchange.cell.Words;

/**
 * Nests between looks, and what their daily survival may depend on.
 *
 * @param nests intervals with days; their rows are those of the covariates
 * @param rows how many rows the covariates have
 * @param covariates what daily survival depends on
 * @param warnings what to know of the table itself
 */
record WatchedTable(List<WatchedNest> nests, int rows, List<Covariate> covariates, List<Message> warnings) {

    /**
     * {@return the intervals of a table with the columns {@code days} and {@code survived}, or of one with checks}
     *
     * @param file the table
     * @param covariates names of the columns that survival depends on
     * @throws BadTable if the table must be mended first
     */
    static WatchedTable read(Path file, List<String> covariates) {
        if (CheckedTable.isOne(file)) {
            return CheckedTable.read(file, covariates);
        }
        PlainTable table = PlainTable.read(file, withSurvived(covariates), List.of("days"), List.of("nest"), List.of());
        List<PlainTable.Row> rows = new ArrayList<>();
        List<WatchedNest> nests = new ArrayList<>();
        int withoutDays = 0;
        for (PlainTable.Row row : table.rows().toList()) {
            OptionalDouble days = days(row);
            Optional<Boolean> survived = survived(row);
            if (days.isEmpty() || survived.isEmpty()) {
                continue;
            }
            if (days.getAsDouble() == 0) {
                withoutDays++;
                continue;
            }
            nests.add(new WatchedNest(List.of(new WatchedNest.Days(nests.size(), days.getAsDouble())), survived.get()));
            rows.add(row);
        }
        table.needsRows();
        List<Covariate> columns = covariates.stream()
                .map(name -> CovariateColumns.of(table, name, rows))
                .toList();
        table.check();
        List<Message> warnings = new ArrayList<>(table.warnings());
        if (withoutDays > 0) {
            warnings.add(Message.of("estimate.nests.withoutDays", withoutDays));
        }
        return new WatchedTable(nests, nests.size(), columns, warnings);
    }

    private static List<String> withSurvived(List<String> covariates) {
        List<String> words = new ArrayList<>(CovariateColumns.plain(covariates));
        words.add("survived");
        return words;
    }

    private static OptionalDouble days(PlainTable.Row row) {
        double days = row.needed("days");
        if (row.number("days").isPresent() && days < 0) {
            row.problem("days", Message.of("estimate.nests.days"));
            return OptionalDouble.empty();
        }
        if (days > PeriodDays.LONGEST) {
            row.problem("days", Message.of("estimate.number.beyond"));
            return OptionalDouble.empty();
        }
        return row.number("days");
    }

    private static Optional<Boolean> survived(PlainTable.Row row) {
        String text = row.text("survived");
        Optional<Boolean> survived = Words.YES_NO.term(text.replaceFirst("[.,]0+$", ""));
        if (survived.isEmpty()) {
            row.problem("survived", Message.of(text.isEmpty() ? "estimate.cell.missing" : "estimate.nests.survived"));
        }
        return survived;
    }

    /** {@return the first row that each level of the only covariate stands in; empty if there are other covariates} */
    OptionalInt rowOf(String level) {
        if (covariates.size() != 1) {
            return OptionalInt.empty();
        }
        return IntStream.range(0, rows)
                .filter(row -> covariates.get(0).values().get(row).equalsIgnoreCase(level))
                .findFirst();
    }
}
