package org.ouzelbook.tracker.store;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.ouzelbook.tracker.domain.Message;

/**
 * Everything that another book holds, to be put together with a book by {@link BookEdit#merge}. It is text only, one record a
 * line, and every line is checked before anything is done with it. It holds nests, rings and names: it is private.
 */
public final class Bundle {
    /** The form that this program writes, and the newest that it reads. */
    static final int FORM = 1;

    static final String HEADER = "bundle.json";
    static final String LINES = ".jsonl";
    static final String KNOWN = "known";
    static final String REMOVED = "removed";

    /** Tables whose rows people wrote. */
    static final List<Table> RECORDS = Stream.concat(
                    Schema.ENTRIES.stream().map(EntryTable::table), Stream.of(SimultaneousLinks.TABLE))
            .toList();

    /** Tables that go out whole. */
    static final List<Table> CONTENT = Stream.concat(
                    RECORDS.stream(), Stream.of(Together.OWNERS, Together.OTHER_KEYS, Together.PAIRS))
            .toList();

    /** No line that this program writes comes near this; a file made to fill the memory does. */
    private static final int LONGEST_LINE = 16_000_000;

    private static final int LONGEST_NAME = 200;

    private final String name;
    private String from = "";
    private final Map<Table, List<Row>> rows = new HashMap<>();
    private final Map<UUID, Known> known = new HashMap<>();
    private final Map<UUID, Known> removed = new LinkedHashMap<>();
    private final Map<UUID, String> owners = new HashMap<>();

    private Bundle(String name) {
        this.name = name;
    }

    /** Where the parts of a bundle are written, one after another. */
    @FunctionalInterface
    public interface Parts {
        /**
         * {@return where the next part goes}
         *
         * @param part its name
         * @throws IOException if it cannot be written
         */
        OutputStream open(String part) throws IOException;
    }

    /** Where the parts of a bundle are read. */
    @FunctionalInterface
    public interface Source {
        /**
         * {@return the part; empty if there is none}
         *
         * @param part its name
         * @throws IOException if it cannot be read
         */
        Optional<InputStream> open(String part) throws IOException;
    }

    /** What is known of a record: its table, its earlier states, and what its state now, or its last one, is in any book. */
    record Known(Table table, Set<Long> earlier, Set<Long> now) {
        static final Set<Long> NOTHING = Set.of();
    }

    /** {@return the names of the parts that a bundle may have} */
    public static Set<String> parts() {
        Set<String> parts = new HashSet<>(Set.of(HEADER, KNOWN + LINES, REMOVED + LINES));
        CONTENT.forEach(table -> parts.add(table.name() + LINES));
        return parts;
    }

    /**
     * Writes a book's content.
     *
     * @param view the book
     * @param from whose book it is, as others are to read it; not blank, at most 200 letters
     * @param out where the parts go
     * @return how many lines each part has
     * @throws IOException if a part cannot be written
     */
    public static Map<String, Long> write(BookView view, String from, Parts out) throws IOException {
        if (from.isBlank() || from.length() > LONGEST_NAME) {
            throw new IllegalArgumentException("Whose book it is needs a name of at most 200 letters");
        }
        return new BundleWriter(view.database(), out).write(from);
    }

    /**
     * Reads and checks a bundle.
     *
     * @param name the file, for messages
     * @param source its parts
     * @return the bundle
     * @throws BookException if it is damaged, something else, or from a newer program
     * @throws IOException if it cannot be read
     */
    public static Bundle read(String name, Source source) throws IOException {
        Bundle bundle = new Bundle(name);
        try {
            bundle.read(source);
            return bundle;
        } catch (IllegalArgumentException
                | IllegalStateException
                | ClassCastException
                | NullPointerException
                | UnsupportedOperationException
                | com.google.gson.JsonParseException e) {
            throw new BookException(Message.of("bundle.damaged", name), e);
        } catch (UncheckedIOException e) {
            throw new BookException(Message.of("bundle.damaged", name), e);
        } catch (StackOverflowError e) {
            throw new BookException(Message.of("bundle.damaged", name), e);
        }
    }

    private void read(Source source) throws IOException {
        JsonObject lines = header(source);
        for (Table table : CONTENT) {
            List<Row> read = new ArrayList<>();
            part(source, lines, table.name(), line -> read.add(Row.ofJson(table, line)));
            rows.put(table, read);
        }
        part(source, lines, KNOWN, line -> known(line, known));
        part(source, lines, REMOVED, line -> known(line, removed));
        new BundleCheck(this).run();
        rows(Together.OWNERS).forEach(row -> owners.put(row.id(), row.text("owner")));
    }

    private JsonObject header(Source source) throws IOException {
        List<String> text = new ArrayList<>();
        try (InputStream in = source.open(HEADER).orElseThrow(() -> BookException.of("bundle.foreign", name))) {
            lines(in, text::add);
        }
        JsonObject header = JsonParser.parseString(String.join("\n", text)).getAsJsonObject();
        if (!header.has("application")
                || !header.get("application").getAsString().equals(Migrations.APPLICATION)
                || !header.get("kind").getAsString().equals("bundle")) {
            throw BookException.of("bundle.foreign", name);
        }
        if (header.get("form").getAsInt() > FORM || header.get("tables").getAsInt() > Migrations.ALL.newest()) {
            throw BookException.of("bundle.newer", name);
        }
        from = header.get("from").getAsString();
        if (from.isBlank() || from.length() > LONGEST_NAME) {
            throw BookException.of("bundle.damaged", name);
        }
        return header.getAsJsonObject("lines");
    }

    private void part(Source source, JsonObject expected, String part, Consumer<String> reader) throws IOException {
        long[] count = {0};
        Optional<InputStream> stream = source.open(part + LINES);
        if (stream.isPresent()) {
            try (InputStream in = stream.get()) {
                lines(in, line -> {
                    count[0]++;
                    reader.accept(line);
                });
            }
        }
        long wanted = expected.has(part) ? expected.get(part).getAsLong() : 0;
        if (count[0] != wanted) {
            throw BookException.of("bundle.damaged", name);
        }
    }

    private static void lines(InputStream in, Consumer<String> reader) throws IOException {
        Reader text = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
        StringBuilder line = new StringBuilder();
        for (int next = text.read(); next >= 0; next = text.read()) {
            if (next != '\n') {
                line.append((char) next);
            } else {
                reader.accept(line.toString());
                line.setLength(0);
            }
            if (line.length() > LONGEST_LINE) {
                throw new IllegalArgumentException("A line is too long");
            }
        }
        if (!line.isEmpty()) {
            reader.accept(line.toString());
        }
    }

    private static void known(String line, Map<UUID, Known> into) {
        JsonObject json = JsonParser.parseString(line).getAsJsonObject();
        Table table = Schema.table(json.get("table").getAsString());
        into.put(
                UUID.fromString(json.get("id").getAsString()),
                new Known(table, numbers(json.getAsJsonArray("earlier")), numbers(json.getAsJsonArray("now"))));
    }

    private static Set<Long> numbers(JsonArray array) {
        Set<Long> numbers = new HashSet<>();
        for (JsonElement element : array) {
            numbers.add(Long.valueOf(element.getAsString()));
        }
        return numbers;
    }

    /** {@return the file that it was read from} */
    public String name() {
        return name;
    }

    /** {@return whose book it is} */
    public String from() {
        return from;
    }

    /** {@return how many records it holds} */
    public long size() {
        return RECORDS.stream().mapToLong(table -> rows(table).size()).sum();
    }

    List<Row> rows(Table table) {
        return rows.getOrDefault(table, List.of());
    }

    /** {@return whose a record is} */
    String owner(UUID record) {
        return owners.getOrDefault(record, from);
    }

    /** {@return the earlier states of a record} */
    Set<Long> earlier(UUID record) {
        Known found = known.get(record);
        return found == null ? Known.NOTHING : found.earlier();
    }

    /** {@return what the state of a record is in any book} */
    Set<Long> heads(Row row) {
        Known found = known.get(row.id());
        return found == null ? Set.of(Lineage.hash(row)) : found.now();
    }

    Map<UUID, Known> removed() {
        return removed;
    }
}
