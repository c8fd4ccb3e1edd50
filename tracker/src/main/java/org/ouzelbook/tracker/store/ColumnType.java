package org.ouzelbook.tracker.store;

import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What a column holds, and how to read it from a result and from the text of an earlier state of its row. */
enum ColumnType {
    KEY(UUID.class),
    TEXT(String.class),
    WHOLE(Integer.class),
    LONG(Long.class),
    DECIMAL(Double.class),
    YES_NO(Boolean.class),
    DATE(LocalDate.class),
    TIME(LocalTime.class),
    MOMENT(OffsetDateTime.class),
    TEXTS(List.class);

    private final Class<?> javaType;

    ColumnType(Class<?> javaType) {
        this.javaType = javaType;
    }

    @Nullable
    Object read(ResultSet result, int position) throws SQLException {
        if (this != TEXTS) {
            return result.getObject(position, javaType);
        }
        Array array = result.getArray(position);
        return array == null
                ? null
                : Arrays.stream((Object[]) array.getArray())
                        .map(String::valueOf)
                        .toList();
    }

    void write(JsonWriter json, Object value) throws IOException {
        if (value instanceof List<?> texts) {
            json.beginArray();
            for (Object text : texts) {
                json.value(text.toString());
            }
            json.endArray();
        } else {
            json.value(value.toString());
        }
    }

    Object parse(JsonReader json) throws IOException {
        return switch (this) {
            case KEY -> UUID.fromString(json.nextString());
            case TEXT -> json.nextString();
            case WHOLE -> Integer.valueOf(json.nextString());
            case LONG -> Long.valueOf(json.nextString());
            case DECIMAL -> Double.valueOf(json.nextString());
            case YES_NO -> Boolean.valueOf(json.nextString());
            case DATE -> LocalDate.parse(json.nextString());
            case TIME -> LocalTime.parse(json.nextString());
            case MOMENT -> OffsetDateTime.parse(json.nextString());
            case TEXTS -> texts(json);
        };
    }

    private static List<String> texts(JsonReader json) throws IOException {
        List<String> texts = new ArrayList<>();
        json.beginArray();
        while (json.hasNext()) {
            texts.add(json.nextString());
        }
        json.endArray();
        return List.copyOf(texts);
    }
}
