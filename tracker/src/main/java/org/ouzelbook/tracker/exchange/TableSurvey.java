package org.ouzelbook.tracker.exchange;

import java.io.IOException;
import java.time.LocalDate;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.exchange.cell.Blank;
import org.ouzelbook.tracker.exchange.cell.DateChoices;
import org.ouzelbook.tracker.exchange.cell.DateEvidence;
import org.ouzelbook.tracker.exchange.cell.DecimalSign;
import org.ouzelbook.tracker.exchange.cell.NumberEvidence;
import org.ouzelbook.tracker.exchange.cell.When;
import org.ouzelbook.tracker.exchange.cell.WrittenDate;
import org.ouzelbook.tracker.exchange.file.CsvRow;
import org.ouzelbook.tracker.exchange.file.CsvRows;
import org.ouzelbook.tracker.exchange.file.TableFile;
import org.ouzelbook.tracker.store.SightingQuery;

/** What one table shows of itself when it is read through once, before any of its rows is taken for anything. */
final class TableSurvey {
    private static final Pattern TOTALS = Pattern.compile(
            "(grand )?totals?|sum|mean|average|subtotal|sub-total|max|min|count of .*", Pattern.CASE_INSENSITIVE);

    private final TableFile file;
    private final Header header;
    private final DateEvidence dates = new DateEvidence();
    private final NumberEvidence numbers = new NumberEvidence();
    private final Set<String> referredTo = new HashSet<>();
    private final Map<Integer, Long> rowsByYear = new HashMap<>();
    private long rows;
    private long datedRows;

    private TableSurvey(TableFile file, Header header) {
        this.file = file;
        this.header = header;
    }

    /**
     * Reads a table through.
     *
     * @param file the table
     * @param kind its kind
     * @param progress hears of the rows, and may stop
     * @return what it shows
     * @throws IOException if it cannot be read
     */
    static TableSurvey of(TableFile file, TableKind kind, Progress progress) throws IOException {
        TableSurvey survey = new TableSurvey(file, Header.of(kind, file.header()));
        try (CsvRows rows = file.rows()) {
            for (Optional<CsvRow> row = rows.next(); row.isPresent(); row = rows.next()) {
                survey.add(row.get());
                ImportStopped.ask(progress, survey.rows, 0);
            }
        }
        return survey;
    }

    private void add(CsvRow row) {
        rows++;
        if (isTotals(row)) {
            return;
        }
        for (Map.Entry<Column, Integer> place : header.places().entrySet()) {
            Column column = place.getKey();
            String text = place.getValue() < row.cells().size() ? row.cells().get(place.getValue()) : "";
            if (text.isBlank()) {
                continue;
            }
            String name = header.names().get(place.getValue());
            if (column.isDate()) {
                dates.add(text, row.row(), name);
                countYear(column, text);
            } else if (column.isNumber()) {
                numbers.add(RowReader.withoutUnit(column, text), column.isNeverThousands(), row.row(), name);
            } else if (column == Column.SIMULTANEOUS_WITH) {
                RowReader.pieces(text).forEach(label -> referredTo.add(BookIndex.key(label)));
            }
        }
    }

    private void countYear(Column column, String text) {
        if (column == Column.DATE) {
            WrittenDate written = WrittenDate.of(When.dayPart(text));
            if (written instanceof WrittenDate.Day day) {
                addYear(day.date());
            } else if (written instanceof WrittenDate.EitherOrder either) {
                addYear(either.dayFirst());
            }
        }
    }

    private void addYear(LocalDate date) {
        rowsByYear.merge(date.getYear(), 1L, Long::sum);
        datedRows++;
    }

    /** {@return whether a row only sums up others: its first word is Total or the like, and it has no day and no visit} */
    boolean isTotals(CsvRow row) {
        String first = firstWritten(row);
        if (!TOTALS.matcher(first.replaceFirst("[:=].*", "").strip()).matches()) {
            return false;
        }
        return List.of(Column.DATE, Column.TAXON, Column.NEST).stream()
                .filter(header::has)
                .map(column -> header.places().get(column))
                .allMatch(place ->
                        place >= row.cells().size() || !hasDigit(row.cells().get(place)));
    }

    private static String firstWritten(CsvRow row) {
        for (String cell : row.cells()) {
            String plain = Blank.plainSpaces(cell);
            if (!plain.isEmpty()) {
                return plain;
            }
        }
        return "";
    }

    private static boolean hasDigit(String cell) {
        return cell.chars().anyMatch(Character::isDigit);
    }

    TableFile file() {
        return file;
    }

    Header header() {
        return header;
    }

    long rows() {
        return rows;
    }

    DateEvidence dates() {
        return dates;
    }

    NumberEvidence numbers() {
        return numbers;
    }

    /** {@return the labels that rows name as seen at the same time} */
    Set<String> referredTo() {
        return referredTo;
    }

    /** {@return the sightings of the book that rows of this table may repeat: those of its years, or all if some row has none} */
    SightingQuery sightingsOfItsYears() {
        if (datedRows == 0 || datedRows < rows) {
            return SightingQuery.ALL;
        }
        int first = Collections.min(rowsByYear.keySet());
        int last = Collections.max(rowsByYear.keySet());
        return SightingQuery.ALL.between(LocalDate.of(first, 1, 1), LocalDate.of(last, 12, 31));
    }

    /** {@return what is known of the dates: the surveyor's answer, or else the order that the file shows} */
    DateChoices dateChoices(ImportAnswers answers) {
        DateChoices choices = answers.dates();
        return choices.order().isPresent() ? choices : choices.withOrder(dates.order());
    }

    /** {@return the sign before decimals: the surveyor's answer, or the one that the file shows, or shows most often} */
    Optional<DecimalSign> decimals(ImportAnswers answers) {
        if (answers.decimals().isPresent() || !numbers.contradicts()) {
            return answers.decimals().or(numbers::sign);
        }
        return Optional.of(
                numbers.count(DecimalSign.COMMA) > numbers.count(DecimalSign.POINT)
                        ? DecimalSign.COMMA
                        : DecimalSign.POINT);
    }

    /**
     * {@return whether a year is odd in this table: at least ten rows, nine of ten in another single year, and at most two in
     * this one}
     */
    boolean isOddYear(int year) {
        long all = rowsByYear.values().stream().mapToLong(Long::longValue).sum();
        long most =
                rowsByYear.values().stream().mapToLong(Long::longValue).max().orElse(0);
        return all >= 10 && most * 10 >= all * 9 && rowsByYear.getOrDefault(year, 0L) <= 2;
    }
}
