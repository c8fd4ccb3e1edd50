package org.ouzelbook.tracker.exchange;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.Year;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.exchange.cell.Blank;
import org.ouzelbook.tracker.exchange.cell.When;
import org.ouzelbook.tracker.exchange.cell.Words;
import org.ouzelbook.tracker.exchange.cell.WrittenNumber;
import org.ouzelbook.tracker.exchange.cell.WrittenSpecies;
import org.ouzelbook.tracker.exchange.cell.WrittenTime;
import org.ouzelbook.tracker.exchange.file.CellText;
import org.ouzelbook.tracker.exchange.file.CsvRow;
import org.ouzelbook.tracker.exchange.xlsx.Workbook;

/**
 * One row of a table, read cell by cell. Whatever is wrong, open or odd is noted and the reading goes on, so that a row tells
 * everything at once.
 */
final class RowReader {
    private static final Pattern KM_UNIT = Pattern.compile("(?i)^(?:km|river km)\\s+|\\s*km\\.?$");
    private static final Pattern METRE_UNIT = Pattern.compile("(?i)\\s*(?:m|metres?|meters?)\\.?$");
    private static final Pattern MINUTE_UNIT = Pattern.compile("(?i)\\s*(?:min|mins|minutes?)\\.?$");
    private static final Pattern SPREADSHEET_ERROR = Pattern.compile("#(REF|N/A|VALUE|NAME|DIV/0|NULL|NUM)[!?]?|#+");

    /** In a narrow table a note of several lines may well have as many commas as a row. */
    private static final int FEWEST_COLUMNS_TO_TELL = 4;

    private final TableContext table;
    private final CsvRow row;
    private final Map<Finding, List<Problem>> findings = new EnumMap<>(Finding.class);

    RowReader(TableContext table, CsvRow row) {
        this.table = table;
        this.row = row;
    }

    /** {@return the cell without the unit that may stand beside its number} */
    static String withoutUnit(Column column, String text) {
        String plain = Blank.plainSpaces(text);
        Pattern unit = switch (column) {
            case KM, FROM_KM, TO_KM, FLEW_TO_KM -> KM_UNIT;
            case OFFSET_M, UNCERTAINTY_M, HEIGHT_M -> METRE_UNIT;
            case MINUTES -> MINUTE_UNIT;
            default -> null;
        };
        return unit == null ? plain : unit.matcher(plain).replaceAll("");
    }

    /** {@return the pieces of a list by {@code ;} or {@code |} or line breaks, stripped, without empty ones} */
    static List<String> pieces(String text) {
        return Pattern.compile("[;|\\n]")
                .splitAsStream(text)
                .map(Blank::plainSpaces)
                .filter(piece -> !piece.isEmpty())
                .toList();
    }

    TableContext table() {
        return table;
    }

    long number() {
        return row.row();
    }

    /** {@return the cell as it stands, with plain spaces; empty if the table or the row does not have it} */
    String text(Column column) {
        Integer place = table.header().places().get(column);
        return place == null || place >= row.cells().size()
                ? ""
                : CellText.original(Blank.plainSpaces(row.cells().get(place)));
    }

    /** {@return the cell, if it says anything: neither blank nor a way of writing that something is unknown} */
    Optional<String> known(Column column) {
        String text = text(column);
        if (text.equals(Workbook.NO_RESULT)) {
            problem(column, Message.of("import.cell.noResult"));
            return Optional.empty();
        }
        if (text.equals(Workbook.NO_TEXT)) {
            problem(column, Message.of("import.cell.noText"));
            return Optional.empty();
        }
        if (SPREADSHEET_ERROR.matcher(text).matches()) {
            problem(column, Message.of("import.cell.spreadsheetError"));
            return Optional.empty();
        }
        return Optional.of(text).filter(cell -> !Blank.isUnknown(cell));
    }

    Optional<When.Read> when(Column column) {
        return known(column).flatMap(text -> {
            When when = When.of(text, table.dates());
            if (when instanceof When.Read read) {
                if (column == Column.DATE
                        && table.survey().isOddYear(read.date().getYear())) {
                    warning(column, Message.of("import.date.oddYear", Year.from(read.date())));
                }
                return Optional.of(read);
            }
            if (when instanceof When.Open open) {
                question(column, open.question());
            } else {
                problem(column, ((When.Refused) when).why());
            }
            return Optional.empty();
        });
    }

    Optional<LocalDate> date(Column column) {
        return when(column).map(When.Read::date);
    }

    /** {@return the day that the row must have} */
    Optional<When.Read> neededDate() {
        if (known(Column.DATE).isEmpty() && !has(Finding.PROBLEM)) {
            problem(Column.DATE, Message.of("import.date.missing"));
        }
        return when(Column.DATE);
    }

    Optional<LocalTime> time(Column column) {
        return known(column).flatMap(text -> {
            String start = text.replaceFirst("/.*", "").replaceFirst("\\s*[-–]\\s*\\d{1,2}[:.]?\\d{2}$", "");
            WrittenTime time = WrittenTime.of(start);
            if (time instanceof WrittenTime.Refused refused) {
                problem(column, refused.why());
            }
            return time instanceof WrittenTime.Read read ? Optional.of(read.time()) : Optional.empty();
        });
    }

    /** {@return the number with its decimals} */
    Optional<WrittenNumber.Read> writtenNumber(Column column) {
        return known(column).flatMap(text -> {
            WrittenNumber number = WrittenNumber.of(withoutUnit(column, text), table.decimals());
            if (number instanceof WrittenNumber.Open open) {
                question(column, open.why());
            } else if (number instanceof WrittenNumber.Refused refused) {
                problem(column, refused.why());
            }
            return number instanceof WrittenNumber.Read read ? Optional.of(read) : Optional.empty();
        });
    }

    OptionalDouble number(Column column) {
        Optional<WrittenNumber.Read> number = writtenNumber(column);
        return number.isPresent() ? OptionalDouble.of(number.get().value()) : OptionalDouble.empty();
    }

    /** {@return a whole number, 0 or more; 6+ is 6, and the plus goes into the note} */
    OptionalInt whole(Column column, boolean orMore) {
        Optional<String> text = known(column);
        if (text.isEmpty()) {
            return OptionalInt.empty();
        }
        String digits = text.get().replaceFirst("[.,]0+$", "");
        if (orMore) {
            digits = digits.replaceFirst("\\s*\\+$", "");
        }
        if (!digits.matches("[0-9]{1,6}")) {
            problem(column, Message.of("import.count.noWholeNumber"));
            return OptionalInt.empty();
        }
        return OptionalInt.of(Integer.parseInt(digits));
    }

    /** {@return the term that the cell says; a cell that says unknown is a term only where the vocabulary has it} */
    <T> Optional<T> word(Column column, Words<T> words) {
        Optional<T> term = words.term(text(column));
        if (term.isEmpty() && known(column).isPresent()) {
            problem(column, Message.of("import.word.unknown", List.copyOf(words.suggestions())));
        }
        return term;
    }

    boolean yes(Column column, boolean ifUnknown) {
        return word(column, Words.YES_NO).orElse(ifUnknown);
    }

    /** {@return the one species of the row, or else the one that the surveyor said} */
    Optional<Species> species() {
        Optional<String> text = known(Column.SPECIES);
        if (text.isEmpty()) {
            Optional<Species> usual = table.answers().species();
            if (usual.isEmpty()) {
                question(Column.SPECIES, Message.of("import.ask.species"));
            }
            return usual;
        }
        return species(text.get());
    }

    Optional<Species> species(String text) {
        Optional<Species> species = WrittenSpecies.of(text);
        if (species.isEmpty()) {
            problem(
                    Column.SPECIES,
                    Message.of(
                            "import.species.unknown",
                            text,
                            Species.all().stream().map(Species::englishName).toList()));
        }
        return species;
    }

    /** {@return the label that the row must have} */
    Optional<String> label(Column column) {
        Optional<String> label = known(column);
        if (label.isEmpty()) {
            problem(column, Message.of("import.label.missing", column.written()));
        } else if (label.get().length() > CellText.LONGEST_NAME) {
            problem(column, Message.of("import.label.long", column.written(), CellText.LONGEST_NAME));
            return Optional.empty();
        }
        return label;
    }

    /**
     * {@return the note, with the grid reference as written and every cell behind it whose column means nothing to us, under
     * the name of that column}
     */
    String note(String... more) {
        List<String> parts = new ArrayList<>();
        parts.add(text(Column.NOTE));
        known(Column.GRID_REF).ifPresent(reference -> parts.add(Column.GRID_REF.written() + ": " + reference));
        parts.addAll(List.of(more));
        for (int place : table.unknownColumns()) {
            String cell = place < row.cells().size()
                    ? CellText.original(Blank.plainSpaces(row.cells().get(place)))
                    : "";
            if (!cell.isEmpty()) {
                parts.add(table.header().names().get(place).strip() + ": " + cell);
            }
        }
        parts.removeIf(String::isEmpty);
        return String.join("; ", parts);
    }

    /** Notes what cells beyond the header hold: a comma too many, most often. */
    void checkWidth() {
        int columns = table.header().names().size();
        char separator = table.survey().file().separator();
        List<String> cells = row.cells();
        for (int i = columns; i < cells.size(); i++) {
            if (!cells.get(i).isBlank()) {
                add(
                        Finding.PROBLEM,
                        "",
                        cells.get(i).strip(),
                        Message.of("import.row.tooWide", cells.size(), columns, separator == '\t' ? "tab" : separator));
                return;
            }
        }
        for (String cell : cells) {
            boolean swallowed = cells.size() < columns && separators(cell, separator) >= 2;
            boolean swallowedRow = columns >= FEWEST_COLUMNS_TO_TELL
                    && cell.lines().skip(1).anyMatch(line -> separators(line, separator) == columns - 1);
            if (swallowed || swallowedRow) {
                add(Finding.PROBLEM, "", cell.strip(), Message.of("import.row.openQuote"));
                return;
            }
        }
    }

    private static long separators(String text, char separator) {
        return text.chars().filter(c -> c == separator).count();
    }

    void problem(Column column, Message message) {
        add(Finding.PROBLEM, table.header().nameOf(column), text(column), message);
    }

    void question(Column column, Message message) {
        add(Finding.QUESTION, table.header().nameOf(column), text(column), message);
    }

    void warning(Column column, Message message) {
        add(Finding.WARNING, table.header().nameOf(column), text(column), message);
    }

    private void add(Finding finding, String column, String cell, Message message) {
        Problem problem = new Problem(table.name(), row.row(), column, cell, message);
        List<Problem> noted = findings.computeIfAbsent(finding, key -> new ArrayList<>());
        if (!noted.contains(problem)) {
            noted.add(problem);
        }
    }

    boolean has(Finding finding) {
        return findings.containsKey(finding);
    }

    /** {@return whether the row can go in} */
    boolean isReady() {
        return !has(Finding.PROBLEM) && !has(Finding.QUESTION);
    }

    List<Problem> findings(Finding finding) {
        return findings.getOrDefault(finding, List.of());
    }
}
