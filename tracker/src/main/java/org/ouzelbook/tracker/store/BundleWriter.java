package org.ouzelbook.tracker.store;

import com.google.gson.stream.JsonWriter;
import java.io.BufferedWriter;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;

/** Writes a book's records, and what is known of their earlier states, as the parts of a {@link Bundle}. */
final class BundleWriter {
    private final Database database;
    private final Bundle.Parts out;
    private final Map<String, Long> lines = new LinkedHashMap<>();

    BundleWriter(Database database, Bundle.Parts out) {
        this.database = database;
        this.out = out;
    }

    /**
     * Writes everything.
     *
     * @param from whose book it is
     * @return how many lines each part has
     */
    Map<String, Long> write(String from) throws IOException {
        Lineage lineage = Lineage.of(database);
        for (Table table : Bundle.CONTENT) {
            part(
                    table.name(),
                    line -> database.each(
                            table.select() + " ORDER BY id",
                            result -> Row.of(table, result),
                            row -> line.accept(row.set("step", null).toJson())));
        }
        part(Bundle.KNOWN, line -> writeKnown(lineage, line));
        part(
                Bundle.REMOVED,
                line -> lineage.removed()
                        .forEach((id, removal) -> line.accept(
                                known(removal.table(), id, lineage.earlier(id), lineage.heads(id, removal.last())))));
        try (Writer header = writer(Bundle.HEADER)) {
            header.write(header(from));
        }
        return lines;
    }

    /** Records that have earlier states, or are in other books in another form. */
    private void writeKnown(Lineage lineage, Consumer<String> line) {
        for (Table table : Bundle.RECORDS) {
            database.each(table.select() + " ORDER BY id", result -> Row.of(table, result), row -> {
                Collection<Long> heads = lineage.heads(row.id(), Lineage.hash(row));
                if (heads.size() > 1 || lineage.knows(row.id())) {
                    line.accept(known(table, row.id(), lineage.earlier(row.id()), heads));
                }
            });
        }
        LineDrawings.each(
                RiverStore.lines(database),
                lineage::earlier,
                drawing -> line.accept(
                        known(RiverStore.LINES.table(), drawing.key(), drawing.before(), Set.of(drawing.state()))));
    }

    private static String known(Table table, UUID id, Collection<Long> earlier, Collection<Long> heads) {
        return json(json -> {
            json.beginObject();
            json.name("table").value(table.name()).name("id").value(id.toString());
            numbers(json.name("earlier"), earlier);
            numbers(json.name("now"), heads);
            json.endObject();
        });
    }

    private static void numbers(JsonWriter json, Collection<Long> numbers) throws IOException {
        json.beginArray();
        for (long number : numbers.stream().sorted().toList()) {
            json.value(String.valueOf(number));
        }
        json.endArray();
    }

    private String header(String from) {
        return json(json -> {
            json.beginObject();
            json.name("application").value(Migrations.APPLICATION);
            json.name("kind").value("bundle");
            json.name("form").value(Bundle.FORM);
            json.name("tables").value(Migrations.ALL.newest());
            json.name("private").value(true);
            json.name("from").value(from);
            json.name("lines").beginObject();
            for (Map.Entry<String, Long> part : lines.entrySet()) {
                json.name(part.getKey()).value(part.getValue());
            }
            json.endObject().endObject();
        });
    }

    private interface Json {
        void write(JsonWriter json) throws IOException;
    }

    private static String json(Json content) {
        StringWriter text = new StringWriter();
        try (JsonWriter json = new JsonWriter(text)) {
            content.write(json);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private void part(String name, Consumer<Consumer<String>> content) throws IOException {
        long[] count = {0};
        try (Writer writer = writer(name + Bundle.LINES)) {
            content.accept(line -> {
                try {
                    writer.write(line);
                    writer.write('\n');
                    count[0]++;
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        lines.put(name, count[0]);
    }

    private Writer writer(String part) throws IOException {
        return new BufferedWriter(new OutputStreamWriter(new KeptOpen(out.open(part)), StandardCharsets.UTF_8));
    }

    /** A stream that its reader does not close: the next part follows in it. */
    private static final class KeptOpen extends FilterOutputStream {
        KeptOpen(OutputStream stream) {
            super(stream);
        }

        @Override
        public void write(byte[] bytes, int from, int length) throws IOException {
            out.write(bytes, from, length);
        }

        @Override
        public void close() throws IOException {
            flush();
        }
    }
}
