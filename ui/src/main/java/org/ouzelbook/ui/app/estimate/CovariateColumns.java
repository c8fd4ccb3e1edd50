package org.ouzelbook.ui.app.estimate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import org.ouzelbook.stats.estimator.likelihood.Covariate;
import org.ouzelbook.tracker.domain.Message;

/** Columns of a table that a model depends on, as an option names them. */
final class CovariateColumns {
    private static final Pattern NUMBER = Pattern.compile("[+-]?[0-9]{1,15}([.,][0-9]{1,17})?([eE][+-]?[0-9]{1,2})?");

    private CovariateColumns() {}

    /**
     * {@return the names in an option, each once}
     *
     * @param option names with commas between; blank for none
     */
    static List<String> names(String option) {
        return Arrays.stream(option.split(","))
                .map(String::strip)
                .filter(name -> !name.isEmpty())
                .distinct()
                .toList();
    }

    /** {@return the same as a table is asked for them} */
    static List<String> plain(List<String> names) {
        return names.stream().map(PlainTable::plain).toList();
    }

    /** {@return a column as a covariate: numbers if every cell is one, else levels; an empty cell is a problem} */
    static Covariate of(PlainTable table, String name, List<PlainTable.Row> rows) {
        return of(table.heading(PlainTable.plain(name)), filled(name, rows));
    }

    /** {@return cells as a covariate: numbers if every cell is one, else levels} */
    static Covariate of(String heading, List<String> cells) {
        boolean numeric = !cells.isEmpty()
                && cells.stream().allMatch(cell -> NUMBER.matcher(cell).matches());
        return numeric
                ? new Covariate(
                        heading,
                        cells.stream().map(cell -> cell.replace(',', '.')).toList(),
                        true)
                : Covariate.levels(heading, cells);
    }

    /** {@return a column's cells; an empty one is a problem} */
    static List<String> filled(String name, List<PlainTable.Row> rows) {
        String column = PlainTable.plain(name);
        List<String> cells = new ArrayList<>();
        for (PlainTable.Row row : rows) {
            if (row.text(column).isEmpty()) {
                row.problem(column, Message.of("estimate.cell.missing"));
            }
            cells.add(row.text(column));
        }
        return cells;
    }
}
