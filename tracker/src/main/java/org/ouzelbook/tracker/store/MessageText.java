package org.ouzelbook.tracker.store;

import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonToken;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.Year;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * A message as JSON text, for the history. A fact is an array of its kind and its values, such as {@code ["date",
 * "2026-03-16"]}; a list is an array of facts within {@code ["list", …]}.
 */
final class MessageText {
    private static final String DOMAIN = Message.class.getPackageName() + ".";

    private MessageText() {}

    static String write(Message message) {
        StringWriter text = new StringWriter();
        try (JsonWriter json = new JsonWriter(text)) {
            write(json, message);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private static void write(JsonWriter json, Message message) throws IOException {
        json.beginArray().value(message.key());
        for (Object fact : message.facts()) {
            writeFact(json, fact);
        }
        json.endArray();
    }

    private static void writeFact(JsonWriter json, Object fact) throws IOException {
        json.beginArray();
        if (fact instanceof Message message) {
            json.value("message");
            write(json, message);
        } else if (fact instanceof Collection<?> several) {
            json.value("list");
            for (Object one : several) {
                writeFact(json, one);
            }
        } else if (fact instanceof Enum<?> constant) {
            String type = constant.getDeclaringClass().getName();
            if (!type.startsWith(DOMAIN)) {
                throw new IllegalArgumentException("The history cannot tell of a " + type);
            }
            json.value("term").value(type.substring(DOMAIN.length())).value(constant.name());
        } else if (fact instanceof Chainage chainage) {
            json.value("chainage").value(String.valueOf(chainage.metres()));
        } else if (fact instanceof Stretch stretch) {
            json.value("stretch")
                    .value(String.valueOf(stretch.lower().metres()))
                    .value(String.valueOf(stretch.upper().metres()));
        } else if (fact instanceof Species species) {
            json.value("species").value(species.scientificName());
        } else {
            json.value(fact.getClass().getSimpleName().toLowerCase(Locale.ROOT)).value(fact.toString());
        }
        json.endArray();
    }

    /**
     * {@return the message that {@link #write} wrote}
     *
     * @throws IllegalArgumentException if the text is none
     */
    static Message read(String text) {
        try (JsonReader json = new JsonReader(new StringReader(text))) {
            return readMessage(json);
        } catch (IOException | IllegalStateException e) {
            throw new IllegalArgumentException("Not a message of the history: " + text, e);
        }
    }

    private static Message readMessage(JsonReader json) throws IOException {
        json.beginArray();
        String key = json.nextString();
        List<Object> facts = readFacts(json);
        json.endArray();
        return new Message(key, facts);
    }

    private static List<Object> readFacts(JsonReader json) throws IOException {
        List<Object> facts = new ArrayList<>();
        while (json.hasNext() && json.peek() == JsonToken.BEGIN_ARRAY) {
            json.beginArray();
            facts.add(readFact(json.nextString(), json));
            json.endArray();
        }
        return facts;
    }

    private static Object readFact(String kind, JsonReader json) throws IOException {
        return switch (kind) {
            case "message" -> readMessage(json);
            case "list" -> readFacts(json);
            case "term" -> constant(json.nextString(), json.nextString());
            case "chainage" -> new Chainage(json.nextDouble());
            case "stretch" -> new Stretch(new Chainage(json.nextDouble()), new Chainage(json.nextDouble()));
            case "species" -> SpeciesNames.species(json.nextString());
            case "integer", "long" -> json.nextLong();
            case "double" -> json.nextDouble();
            case "localdate" -> LocalDate.parse(json.nextString());
            case "localtime" -> LocalTime.parse(json.nextString());
            case "year" -> Year.parse(json.nextString());
            default -> json.nextString();
        };
    }

    private static Object constant(String type, String name) {
        try {
            for (Object constant : Class.forName(DOMAIN + type).getEnumConstants()) {
                if (((Enum<?>) constant).name().equals(name)) {
                    return constant;
                }
            }
            return name;
        } catch (ClassNotFoundException e) {
            return name;
        }
    }
}
