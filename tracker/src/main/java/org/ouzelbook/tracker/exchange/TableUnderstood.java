package org.ouzelbook.tracker.exchange;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.exchange.cell.CellAt;
import org.ouzelbook.tracker.exchange.cell.DateOrder;
import org.ouzelbook.tracker.exchange.cell.DecimalSign;
import org.ouzelbook.tracker.exchange.file.Encoding;
import org.ouzelbook.tracker.exchange.file.FileSource;

/**
 * What a table was taken for, so that a person can see whether it was understood.
 *
 * @param kind the kind of table
 * @param form what it was written as; encoding, separator and header are the file’s own only as far as that has them
 * @param encoding how its letters are stored
 * @param separator what stands between its cells
 * @param headerRow the row of its header
 * @param dateOrder which of day and month stands first; empty if no date needs it or nothing shows it
 * @param dateCell the cell that showed it; empty if the surveyor said it
 * @param shortYearCell the first date with a year of two digits
 * @param decimals the sign before decimals; empty if no number has any
 * @param decimalCell the cell that showed it; empty if the surveyor said it
 * @param columns what each known column means, in the order of the file
 * @param unknownColumns columns that mean nothing here
 * @param usualRiver the river of rows that name none; empty if none is needed, or rows must name theirs
 */
public record TableUnderstood(
        TableKind kind,
        FileSource.Form form,
        Encoding encoding,
        char separator,
        long headerRow,
        Optional<DateOrder> dateOrder,
        Optional<CellAt> dateCell,
        Optional<CellAt> shortYearCell,
        Optional<DecimalSign> decimals,
        Optional<CellAt> decimalCell,
        List<ColumnMeaning> columns,
        List<String> unknownColumns,
        Optional<String> usualRiver) {
    /**
     * What a column means.
     *
     * @param name its name in the file
     * @param meaning our own name for it
     */
    public record ColumnMeaning(String name, String meaning) {}

    /** Copies the lists. */
    public TableUnderstood {
        columns = List.copyOf(columns);
        unknownColumns = List.copyOf(unknownColumns);
    }

    /** {@return whether cells of unknown columns are kept: landmarks and reaches have no note to keep them in} */
    public boolean keepsUnknownColumns() {
        return kind != TableKind.LANDMARKS && kind != TableKind.REACHES;
    }

    static TableUnderstood of(TableContext table) {
        TableSurvey survey = table.survey();
        Header header = survey.header();
        Map<Integer, ColumnMeaning> columns = new TreeMap<>();
        header.places()
                .forEach((column, place) -> columns.put(
                        place, new ColumnMeaning(header.names().get(place).strip(), column.written())));
        Optional<DateOrder> order = table.dates().order();
        Optional<DecimalSign> decimals = table.decimals();
        return new TableUnderstood(
                header.kind(),
                survey.file().source().form(),
                survey.file().bytes().encoding(),
                survey.file().separator(),
                survey.file().headerRow(),
                order,
                order.flatMap(survey.dates()::firstShowing),
                survey.dates().firstShortYear(),
                decimals,
                decimals.flatMap(survey.numbers()::firstShowing),
                List.copyOf(columns.values()),
                header.unknown().stream()
                        .map(place -> header.names().get(place).strip())
                        .toList(),
                header.kind().has(Column.RIVER) && !header.has(Column.RIVER)
                        ? table.book().usualRiver().map(River::name)
                        : Optional.empty());
    }
}
