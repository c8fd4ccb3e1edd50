package org.ouzelbook.tracker.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * Brings the tables of a book up to date: numbered SQL scripts, of which each book has run the first so many. A script
 * that has landed is never edited; a new one is added.
 */
final class Migrations {
    static final String APPLICATION = "org.ouzelbook";

    /** The scripts of this program, oldest first; their number is the version of the schema. */
    static final Migrations ALL = new Migrations(List.of(
            "0001-first-book.sql", "0002-decisions.sql", "0003-together.sql", "0004-seals.sql", "0005-people.sql"));

    private final List<String> scripts;

    Migrations(List<String> scripts) {
        this.scripts = List.copyOf(scripts);
    }

    /** {@return these scripts, and one more} */
    Migrations and(String script) {
        return new Migrations(Stream.concat(scripts.stream(), Stream.of(script)).toList());
    }

    /** {@return the newest version of the schema} */
    int newest() {
        return scripts.size();
    }

    /** {@return the version of the schema that the book has; empty if the database is no book} */
    static OptionalInt version(Database database) {
        boolean isBook = database.first(
                        "SELECT 1 FROM information_schema.tables WHERE LOWER(table_name) = 'book'", result -> true)
                .isPresent();
        if (!isBook) {
            return OptionalInt.empty();
        }
        return database.first(
                        "SELECT schema_version FROM book WHERE application = ?",
                        result -> OptionalInt.of(result.getInt(1)),
                        APPLICATION)
                .orElse(OptionalInt.empty());
    }

    /** Runs the scripts that a database of this version has not run yet; 0 for a new one. */
    void run(Database database, int version) {
        for (int next = version + 1; next <= newest(); next++) {
            statements(scripts.get(next - 1)).forEach(database::run);
            if (next == 1) {
                database.run("INSERT INTO book (application, schema_version) VALUES (?, 1)", APPLICATION);
            } else {
                database.run("UPDATE book SET schema_version = ?", next);
            }
            database.commit();
        }
    }

    private static List<String> statements(String script) {
        try (InputStream in = Migrations.class.getResourceAsStream(script)) {
            if (in == null) {
                throw new IllegalStateException(script + " is missing from the program");
            }
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return text
                    .lines()
                    .filter(line -> !line.startsWith("--"))
                    .reduce((one, other) -> one + "\n" + other)
                    .map(all -> List.of(all.split(";\\R")))
                    .orElse(List.of())
                    .stream()
                    .filter(statement -> !statement.isBlank())
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(script, e);
        }
    }
}
