package org.ouzelbook.ui.app.estimate;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.exchange.Problem;
import org.ouzelbook.tracker.exchange.cell.Blank;
import org.ouzelbook.tracker.exchange.cell.DecimalSign;
import org.ouzelbook.tracker.exchange.cell.NumberEvidence;
import org.ouzelbook.tracker.exchange.cell.WrittenNumber;
import org.ouzelbook.tracker.exchange.file.CsvRow;
import org.ouzelbook.tracker.exchange.file.CsvRows;
import org.ouzelbook.tracker.exchange.file.FileSource;
import org.ouzelbook.tracker.exchange.file.TableFile;
import org.ouzelbook.tracker.exchange.file.UnreadableFile;

/** A small table of numbers, read whole. Whoever reads its cells gathers problems first and answers with {@link #check()}. */
final class PlainTable {
    private static final Pattern AS_COMPUTERS_WRITE =
            Pattern.compile("[+-]?[0-9]{1,15}([.][0-9]{1,17})?([eE][+-]?[0-9]{1,3})?");
    private static final double LARGEST = 1e15;
    private static final double SMALLEST = 1e-15;
    private static final int NOWHERE = -1;

    private final String file;
    private final Map<String, Integer> places;
    private final List<String> header;
    private final List<CsvRow> rows;
    private final Optional<DecimalSign> sign;
    private final List<Problem> problems = new ArrayList<>();

    private PlainTable(
            String file,
            Map<String, Integer> places,
            List<String> header,
            List<CsvRow> rows,
            Optional<DecimalSign> sign) {
        this.file = file;
        this.places = places;
        this.header = header;
        this.rows = rows;
        this.sign = sign;
    }

    /**
     * {@return the table of a file}
     *
     * @param path the file
     * @param words columns of words that it must have, in small letters
     * @param numbers columns of numbers that it must have
     * @param optional columns of numbers that it may have
     * @throws BadTable if it is no such table
     */
    static PlainTable read(Path path, List<String> words, List<String> numbers, List<String> optional) {
        return read(path, words, numbers, List.of(), optional);
    }

    /**
     * {@return the table of a file}
     *
     * @param path the file
     * @param words columns of words that it must have, in small letters
     * @param numbers columns of numbers that it must have
     * @param optionalWords columns of words that it may have
     * @param optional columns of numbers that it may have
     * @throws BadTable if it is no such table
     */
    static PlainTable read(
            Path path, List<String> words, List<String> numbers, List<String> optionalWords, List<String> optional) {
        FileSource source = source(path);
        Set<String> known = Stream.of(words, numbers, optionalWords, optional)
                .flatMap(List::stream)
                .map(PlainTable::plain)
                .collect(Collectors.toSet());
        List<String> texts = Stream.concat(words.stream(), optionalWords.stream())
                .map(PlainTable::plain)
                .toList();
        try {
            TableFile layout = TableFile.of(source, cells -> 1 + knownNames(cells, known));
            Map<String, Integer> places = places(layout.header());
            List<String> lacking = Stream.concat(words.stream(), numbers.stream())
                    .filter(name -> !places.containsKey(plain(name)))
                    .toList();
            if (!lacking.isEmpty()) {
                Message lacks = Message.of("estimate.table.lacks", lacking, layout.header());
                throw new BadTable(List.of(new Problem(source.name(), layout.headerRow(), "", "", lacks)));
            }
            twice(layout.header(), known).ifPresent(name -> {
                Message twice = Message.of("estimate.table.columnTwice", name);
                throw new BadTable(List.of(new Problem(source.name(), layout.headerRow(), name, "", twice)));
            });
            places.keySet().retainAll(known);
            List<CsvRow> rows = rows(layout);
            PlainTable table = new PlainTable(source.name(), places, layout.header(), rows, sign(rows, places, texts));
            rows.forEach(table::checkWidth);
            table.check();
            return table;
        } catch (UnreadableFile e) {
            throw new BadTable(List.of(new Problem(source.name(), 0, "", "", e.why())));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * {@return the names of a table's columns: the first row of several different names of which one tells that it is the header}
     *
     * @param path the file
     * @param telling whether a name, in small letters, is one that only a header has
     * @throws BadTable if it has no such row
     */
    static List<String> header(Path path, Predicate<String> telling) {
        FileSource source = source(path);
        try {
            return TableFile.of(source, cells -> {
                        List<String> names = cells.stream()
                                .map(PlainTable::plain)
                                .filter(name -> !name.isEmpty())
                                .distinct()
                                .toList();
                        return names.stream().anyMatch(telling) ? 1 + names.size() : 0;
                    })
                    .header();
        } catch (UnreadableFile e) {
            throw new BadTable(List.of(new Problem(source.name(), 0, "", "", e.why())));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static FileSource source(Path path) {
        FileSource source = new FileSource.OnDisk(path.toString(), path);
        if (Files.isDirectory(path)) {
            Message folder = Message.of("estimate.table.folder", source.name());
            throw new BadTable(List.of(new Problem(source.name(), 0, "", "", folder)));
        }
        return source;
    }

    private static int knownNames(List<String> cells, Set<String> known) {
        return (int) cells.stream()
                .map(PlainTable::plain)
                .filter(known::contains)
                .distinct()
                .count();
    }

    private static Map<String, Integer> places(List<String> header) {
        Map<String, Integer> places = new HashMap<>();
        for (int i = 0; i < header.size(); i++) {
            places.putIfAbsent(plain(header.get(i)), i);
        }
        return places;
    }

    private static Optional<String> twice(List<String> header, Set<String> known) {
        Set<String> seen = new HashSet<>();
        return header.stream()
                .filter(name -> known.contains(plain(name)) && !seen.add(plain(name)))
                .findFirst();
    }

    private void checkWidth(CsvRow row) {
        if (row.cells().size() > header.size()
                && row.cells().stream().skip(header.size()).anyMatch(cell -> !cell.isBlank())) {
            Message tooWide = Message.of("estimate.row.tooWide", row.cells().size(), header.size());
            problems.add(new Problem(file, row.row(), "", "", tooWide));
        }
    }

    private static List<CsvRow> rows(TableFile layout) throws IOException {
        List<CsvRow> all = new ArrayList<>();
        try (CsvRows rows = layout.rows()) {
            for (Optional<CsvRow> row = rows.next(); row.isPresent(); row = rows.next()) {
                all.add(row.get());
            }
        }
        return all;
    }

    private static Optional<DecimalSign> sign(List<CsvRow> rows, Map<String, Integer> places, List<String> words) {
        NumberEvidence evidence = new NumberEvidence();
        places.forEach((name, place) -> {
            if (!words.contains(name)) {
                boolean neverThousands = name.endsWith("km");
                for (CsvRow row : rows) {
                    if (place < row.cells().size()) {
                        evidence.add(row.cells().get(place), neverThousands, row.row(), name);
                    }
                }
            }
        });
        return evidence.sign();
    }

    /** {@return whether it has a column} */
    boolean has(String column) {
        return place(column) != NOWHERE;
    }

    private int place(String column) {
        Integer place = places.get(column);
        return place != null ? place : places.getOrDefault(plain(column), NOWHERE);
    }

    /** {@return a column's name as the header has it} */
    String heading(String column) {
        return header.get(Math.max(0, place(column)));
    }

    /** Letters in lower case, without spaces and underscores. */
    static String plain(String name) {
        return Blank.plainSpaces(name).toLowerCase(Locale.ROOT).replace(" ", "").replace("_", "");
    }

    /** {@return the columns that mean nothing here} */
    List<String> unused() {
        return IntStream.range(0, header.size())
                .filter(place ->
                        !places.containsValue(place) && !header.get(place).isBlank())
                .mapToObj(header::get)
                .toList();
    }

    /** {@return what a reader should know of the table itself} */
    List<Message> warnings() {
        return unused().isEmpty() ? List.of() : List.of(Message.of("estimate.table.unused", unused()));
    }

    /** {@return the rows in the order of the file} */
    Stream<Row> rows() {
        return rows.stream().map(Row::new);
    }

    /**
     * Ends the reading.
     *
     * @throws BadTable if there was anything wrong so far
     */
    void check() {
        if (!problems.isEmpty()) {
            throw new BadTable(problems);
        }
    }

    /** {@return what was wrong so far} */
    List<Problem> problems() {
        return List.copyOf(problems);
    }

    /** A table without rows is a problem. */
    void needsRows() {
        if (rows.isEmpty()) {
            problem(Message.of("estimate.table.noRows"));
        }
    }

    /** Adds a problem of the whole table. */
    void problem(Message message) {
        problems.add(new Problem(file, 0, "", "", message));
    }

    /** One row, which notes what is wrong with its cells. */
    final class Row {
        private final CsvRow row;

        private Row(CsvRow row) {
            this.row = row;
        }

        /** {@return its number, as a spreadsheet counts} */
        long number() {
            return row.row();
        }

        /** {@return what the cell holds, without blanks around; empty where it holds nothing, or “unknown”, or is missing} */
        String text(String column) {
            int place = place(column);
            if (place == NOWHERE || place >= row.cells().size()) {
                return "";
            }
            String text = Blank.plainSpaces(row.cells().get(place));
            return Blank.isUnknown(text) ? "" : text;
        }

        /** {@return what the cell holds, which must be something; empty after a problem} */
        String filled(String column) {
            String text = text(column);
            if (text.isEmpty()) {
                problem(column, Message.of("estimate.cell.missing"));
            }
            return text;
        }

        /** {@return the cell's number; empty if it has none, or what it holds is none, which is then a problem} */
        OptionalDouble number(String column) {
            return number(column, text(column));
        }

        private OptionalDouble number(String column, String text) {
            if (text.isEmpty()) {
                return OptionalDouble.empty();
            }
            if (AS_COMPUTERS_WRITE.matcher(text).matches() && sign.orElse(DecimalSign.POINT) == DecimalSign.POINT) {
                return withinReason(column, Double.parseDouble(text));
            }
            WrittenNumber written = WrittenNumber.of(text, sign);
            if (written instanceof WrittenNumber.Read read) {
                return withinReason(column, read.value());
            }
            problem(
                    column,
                    Message.of(
                            written instanceof WrittenNumber.Open
                                    ? "estimate.number.ambiguous"
                                    : "estimate.number.none"));
            return OptionalDouble.empty();
        }

        private OptionalDouble withinReason(String column, double value) {
            double size = Math.abs(value);
            if (size == 0 || (size >= SMALLEST && size <= LARGEST)) {
                return OptionalDouble.of(value);
            }
            problem(column, Message.of("estimate.number.beyond"));
            return OptionalDouble.empty();
        }

        /** {@return the cell's number, which must be there; 0 after a problem} */
        double needed(String column) {
            return number(column, filled(column)).orElse(0);
        }

        /** {@return the cell's whole number within bounds, which must be there; the lower bound after a problem} */
        long whole(String column, long from, long to) {
            return wholeIfRight(column, from, to).orElse(from);
        }

        /** {@return the cell's whole number within bounds, which must be there; empty after a problem} */
        OptionalLong wholeIfRight(String column, long from, long to) {
            OptionalDouble number = number(column, filled(column));
            if (number.isEmpty()) {
                return OptionalLong.empty();
            }
            double value = number.getAsDouble();
            if (value != Math.rint(value) || value < from || value > to) {
                problem(column, Message.of("estimate.number.whole", from, to));
                return OptionalLong.empty();
            }
            return OptionalLong.of((long) value);
        }

        /** Notes what is wrong with a cell. */
        void problem(String column, Message message) {
            String name = has(column) ? heading(column) : column;
            Problem problem = new Problem(file, row.row(), name, text(column), message);
            if (!problems.contains(problem)) {
                problems.add(problem);
            }
        }
    }
}
