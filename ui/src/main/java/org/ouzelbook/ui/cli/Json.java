package org.ouzelbook.ui.cli;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonPrimitive;
import com.google.gson.JsonSerializationContext;
import com.google.gson.JsonSerializer;
import com.google.gson.TypeAdapter;
import com.google.gson.TypeAdapterFactory;
import com.google.gson.reflect.TypeToken;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.PrintWriter;
import java.lang.reflect.Type;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.MonthDay;
import java.time.Year;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.ui.app.Texts;

/**
 * Prints an answer as JSON: a record's components by their names, in their order. What is empty is {@code null}, never left
 * out; numbers are numbers, and NaN is refused.
 *
 * <p>A {@link Message} is written in words, a date as {@code 2026-03-16}, a {@link Chainage} as km, a {@link Species} by its
 * English name, a constant in small letters ({@code confirmed}).
 */
final class Json {
    private static final Gson GSON = new GsonBuilder()
            .serializeNulls()
            .setPrettyPrinting()
            .disableHtmlEscaping()
            .registerTypeAdapterFactory(new Constants())
            .registerTypeHierarchyAdapter(Optional.class, (JsonSerializer<Optional<?>>) Json::optional)
            .registerTypeAdapter(OptionalDouble.class, (JsonSerializer<OptionalDouble>)
                    (number, type, context) -> number.isEmpty() ? JsonNull.INSTANCE : number(number.getAsDouble()))
            .registerTypeAdapter(OptionalLong.class, (JsonSerializer<OptionalLong>) (number, type, context) ->
                    number.isEmpty() ? JsonNull.INSTANCE : new JsonPrimitive(number.getAsLong()))
            .registerTypeAdapter(OptionalInt.class, (JsonSerializer<OptionalInt>) (number, type, context) ->
                    number.isEmpty() ? JsonNull.INSTANCE : new JsonPrimitive(number.getAsInt()))
            .registerTypeAdapter(
                    Year.class, (JsonSerializer<Year>) (year, type, context) -> new JsonPrimitive(year.getValue()))
            .registerTypeAdapter(
                    Chainage.class, (JsonSerializer<Chainage>) (point, type, context) -> new JsonPrimitive(point.km()))
            .registerTypeAdapter(Message.class, (JsonSerializer<Message>)
                    (message, type, context) -> new JsonPrimitive(Texts.of(message)))
            .registerTypeAdapter(Species.class, (JsonSerializer<Species>)
                    (species, type, context) -> new JsonPrimitive(species.englishName()))
            .registerTypeAdapter(LocalDate.class, (JsonSerializer<LocalDate>) Json::word)
            .registerTypeAdapter(LocalTime.class, (JsonSerializer<LocalTime>) Json::word)
            .registerTypeAdapter(MonthDay.class, (JsonSerializer<MonthDay>)
                    (day, type, context) -> new JsonPrimitive(day.toString().substring("--".length())))
            .create();

    private Json() {}

    /** {@return a value as it is printed} */
    static JsonElement tree(Object value) {
        return GSON.toJsonTree(value);
    }

    /**
     * Prints an answer, and a line end.
     *
     * @param answer a record
     * @param out where to
     * @throws IllegalArgumentException if it holds a number that is none
     */
    static void print(Object answer, PrintWriter out) {
        GSON.toJson(answer, out);
        out.println();
    }

    private static JsonElement optional(Optional<?> value, Type type, JsonSerializationContext context) {
        return value.isEmpty() ? JsonNull.INSTANCE : context.serialize(value.get());
    }

    private static JsonElement word(Object value, Type type, JsonSerializationContext context) {
        return new JsonPrimitive(value.toString());
    }

    private static JsonPrimitive number(double number) {
        if (!Double.isFinite(number)) {
            throw new IllegalArgumentException("JSON has no number for " + number);
        }
        return new JsonPrimitive(number);
    }

    /** Constants in small letters, their words parted by blanks. */
    private static final class Constants implements TypeAdapterFactory {
        @Override
        public <T> @Nullable TypeAdapter<T> create(Gson gson, TypeToken<T> type) {
            if (!Enum.class.isAssignableFrom(type.getRawType())) {
                return null;
            }
            return new TypeAdapter<>() {
                @Override
                public void write(JsonWriter out, T constant) throws IOException {
                    out.value(
                            constant == null
                                    ? null
                                    : constant.toString()
                                            .toLowerCase(Locale.ROOT)
                                            .replace('_', ' '));
                }

                @Override
                public T read(JsonReader in) {
                    throw new UnsupportedOperationException("Answers are written, never read");
                }
            };
        }
    }
}
