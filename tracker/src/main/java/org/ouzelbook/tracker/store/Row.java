package org.ouzelbook.tracker.store;

import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** One row of a table: a value, or nothing, for each of its columns. */
final class Row {
    private final Table table;
    private final @Nullable Object[] values;

    Row(Table table) {
        this.table = table;
        this.values = new @Nullable Object[table.columns().size()];
    }

    /** {@return a row that says the same, to be changed} */
    Row copy() {
        Row copy = new Row(table);
        System.arraycopy(values, 0, copy.values, 0, values.length);
        return copy;
    }

    /** {@return the row at which a result stands, its columns being those of the table's own SELECT} */
    static Row of(Table table, ResultSet result) throws SQLException {
        Row row = new Row(table);
        for (int i = 0; i < row.values.length; i++) {
            row.values[i] = table.columns().get(i).type().read(result, i + 1);
        }
        return row;
    }

    /** {@return the row that {@link #toJson()} wrote; a column that the text does not name has no value} */
    static Row ofJson(Table table, String json) {
        Row row = new Row(table);
        try (JsonReader reader = new JsonReader(new StringReader(json))) {
            reader.beginObject();
            while (reader.hasNext()) {
                int position = table.position(reader.nextName());
                row.values[position] = table.columns().get(position).type().parse(reader);
            }
            reader.endObject();
        } catch (IOException e) {
            throw new UncheckedIOException("An earlier state of a row of " + table + " cannot be read", e);
        }
        return row;
    }

    String toJson() {
        StringWriter text = new StringWriter();
        try (JsonWriter json = new JsonWriter(text)) {
            json.beginObject();
            for (int i = 0; i < values.length; i++) {
                Object value = values[i];
                if (value != null) {
                    Table.Column column = table.columns().get(i);
                    json.name(column.name());
                    column.type().write(json, value);
                }
            }
            json.endObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    /**
     * Sets a column.
     *
     * @param column its name
     * @param value an optional, an enum constant, a time (kept to the second), a moment (kept to the microsecond, as UTC), or
     *     what the column holds
     * @return this row
     */
    Row set(String column, @Nullable Object value) {
        values[table.position(column)] = plain(value);
        return this;
    }

    private static @Nullable Object plain(@Nullable Object value) {
        if (value instanceof Optional<?> optional) {
            return plain(optional.orElse(null));
        }
        if (value instanceof OptionalInt number) {
            return number.isPresent() ? number.getAsInt() : null;
        }
        if (value instanceof OptionalDouble number) {
            return number.isPresent() ? number.getAsDouble() : null;
        }
        if (value instanceof Enum<?> constant) {
            return constant.name();
        }
        if (value instanceof LocalTime time) {
            return time.truncatedTo(ChronoUnit.SECONDS);
        }
        if (value instanceof OffsetDateTime moment) {
            return moment.withOffsetSameInstant(ZoneOffset.UTC).truncatedTo(ChronoUnit.MICROS);
        }
        return value instanceof Collection<?> several
                ? several.stream().map(Object::toString).toList()
                : value;
    }

    /** {@return whether the other row of this table says the same; the step that made it so does not matter} */
    boolean sameContent(Row other) {
        @Nullable Object[] mine = values.clone();
        mine[table.position("step")] = other.values[table.position("step")];
        return Arrays.equals(mine, other.values);
    }

    /** {@return whether the other row of this table says the same of the field} */
    boolean saysTheSame(Row other) {
        for (int i = 0; i < values.length; i++) {
            if (table.columns().get(i).isContent() && !Objects.equals(values[i], other.values[i])) {
                return false;
            }
        }
        return true;
    }

    Table table() {
        return table;
    }

    /** {@return the values in the order of the table's columns} */
    List<@Nullable Object> values() {
        return Arrays.asList(values);
    }

    UUID id() {
        return key("id");
    }

    long step() {
        return number("step");
    }

    long number(String column) {
        return value(column, Long.class);
    }

    OffsetDateTime moment(String column) {
        return value(column, OffsetDateTime.class);
    }

    UUID key(String column) {
        return value(column, UUID.class);
    }

    Optional<UUID> optionalKey(String column) {
        return optional(column, UUID.class);
    }

    String text(String column) {
        return value(column, String.class);
    }

    List<String> texts(String column) {
        List<?> texts = value(column, List.class);
        return texts.stream().map(String.class::cast).toList();
    }

    <E extends Enum<E>> E constant(String column, Class<E> type) {
        return Enum.valueOf(type, text(column));
    }

    <E extends Enum<E>> Optional<E> optionalConstant(String column, Class<E> type) {
        return optional(column, String.class).map(name -> Enum.valueOf(type, name));
    }

    int whole(String column) {
        return value(column, Integer.class);
    }

    OptionalInt optionalWhole(String column) {
        return optional(column, Integer.class).map(OptionalInt::of).orElse(OptionalInt.empty());
    }

    double decimal(String column) {
        return value(column, Double.class);
    }

    OptionalDouble optionalDecimal(String column) {
        return optional(column, Double.class).map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }

    boolean yes(String column) {
        return value(column, Boolean.class);
    }

    LocalDate date(String column) {
        return value(column, LocalDate.class);
    }

    Optional<LocalDate> optionalDate(String column) {
        return optional(column, LocalDate.class);
    }

    Optional<LocalTime> optionalTime(String column) {
        return optional(column, LocalTime.class);
    }

    <T> Optional<T> optional(String column, Class<T> type) {
        return Optional.ofNullable(values[table.position(column)]).map(type::cast);
    }

    private <T> T value(String column, Class<T> type) {
        return optional(column, type)
                .orElseThrow(() -> new IllegalStateException("A row of " + table + " has no " + column));
    }
}
