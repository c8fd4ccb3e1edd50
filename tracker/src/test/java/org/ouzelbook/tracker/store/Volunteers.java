package org.ouzelbook.tracker.store;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;

/** Books of several people, bundles between them, and everything that a book holds as text to be compared. */
final class Volunteers {
    private Volunteers() {}

    static Map<String, byte[]> parts(Book book, String from) {
        Map<String, ByteArrayOutputStream> parts = new LinkedHashMap<>();
        book.read(view -> {
            try {
                return Bundle.write(view, from, part -> {
                    ByteArrayOutputStream out = new ByteArrayOutputStream();
                    parts.put(part, out);
                    return out;
                });
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
        Map<String, byte[]> bytes = new LinkedHashMap<>();
        parts.forEach((name, out) -> bytes.put(name, out.toByteArray()));
        return bytes;
    }

    static Bundle read(Map<String, byte[]> parts) {
        try {
            return Bundle.read(
                    "test.zip", part -> Optional.ofNullable(parts.get(part)).map(ByteArrayInputStream::new));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Bundle bundle(Book book, String from) {
        return read(parts(book, from));
    }

    static MergeResult merge(Book book, Bundle bundle, MergeAnswers answers) {
        return book.change(
                Message.of(Lineage.MERGE, bundle.name()), "ina", edit -> edit.merge(bundle, answers, Progress.NONE));
    }

    /** Puts a bundle into a book as a person would who answers every question by a rule. */
    static MergeResult merge(Book book, Bundle bundle, Function<MergeQuestion, MergeAnswer> rule) {
        Map<String, MergeAnswer> answers = new HashMap<>();
        for (int round = 0; round < 100; round++) {
            List<MergeQuestion> questions = book.rehearse(
                            edit -> edit.merge(bundle, new MergeAnswers(answers), Progress.NONE))
                    .questions();
            if (questions.isEmpty()) {
                return merge(book, bundle, new MergeAnswers(answers));
            }
            questions.forEach(question -> answers.put(question.code(), rule.apply(question)));
        }
        throw new IllegalStateException("The questions have no end");
    }

    /** A new book that starts from a bundle. */
    static Book startedFrom(Path file, Bundle bundle) {
        Book book = Book.create(file);
        merge(book, bundle, MergeAnswers.NONE);
        return book;
    }

    /** Everything that people wrote into a book, keys left out: what a record points to stands in its place. */
    static List<String> content(Book book) {
        return book.read(view -> {
            List<String> lines = new ArrayList<>();
            Map<UUID, String> known = new HashMap<>();
            for (Table table : Bundle.RECORDS) {
                for (Row row : table.rows(view.database(), "")) {
                    String line = line(row, view.database(), known);
                    known.put(row.id(), line);
                    lines.add(line);
                }
            }
            view.rivers()
                    .forEach(river -> lines.add("newest line of " + river.name() + " "
                            + view.lines(river).stream()
                                    .reduce((one, later) -> later)
                                    .map(line -> line.points().toString())
                                    .orElse("")));
            // a line may have been taken up as the newest again
            return lines.stream().distinct().sorted().toList();
        });
    }

    private static String line(Row row, Database database, Map<UUID, String> known) {
        List<String> values = new ArrayList<>();
        for (int i = 0; i < row.values().size(); i++) {
            Table.Column column = row.table().columns().get(i);
            Object value = row.values().get(i);
            if (!column.isContent()
                    || value == null
                    || (row.table().equals(RiverStore.LINES.table())
                            && column.name().equals("version"))) {
                continue;
            }
            if (column.name().equals("line_version")) {
                // versions are counted in each book: what counts is the line itself
                value = RiverStore.lines(database, row.key("river_id")).stream()
                        .filter(line -> line.version() == row.whole("line_version"))
                        .map(line -> line.points().toString())
                        .findFirst()
                        .orElse("version " + value);
            }
            String target = column.target();
            values.add(column.name() + "="
                    + (target == null
                            ? value
                            : known.computeIfAbsent(
                                    (UUID) value,
                                    id -> line(
                                            Schema.table(target)
                                                    .row(database, id)
                                                    .orElseThrow(),
                                            database,
                                            new HashMap<>()))));
        }
        if (row.table().equals(SimultaneousLinks.TABLE)) {
            Collections.sort(values.subList(0, 0));
            values.replaceAll(value -> value.replaceFirst("^(one|other)_id=", ""));
            Collections.sort(values);
        }
        return row.table() + " " + values;
    }
}
