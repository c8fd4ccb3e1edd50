package org.ouzelbook.ui.app.leak;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import com.google.gson.Strictness;
import com.google.gson.stream.JsonReader;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.exchange.export.PublicGrid;

/** Reads tables and features that tell birds by a stretch of river, and judges the length of the stretch. */
final class StretchSearch {
    private static final Pattern OBJECT = Pattern.compile("[\\s\\p{Z}\uFEFF]*\\{");
    private static final Pattern PROPERTIES = Pattern.compile("\"properties\"");

    /** The smallest public cell: what is left over at an end of a river is at least half a cell. */
    private static final double SMALLEST_KM = PublicGrid.CELL_METRES / 2000;

    private static final double ROUNDING_KM = 0.0011;

    /** Columns of birds; a table of mere reaches tells none. */
    private static final Set<String> BIRDS = Set.of(
            "species",
            "count",
            "individualcount",
            "sightings",
            "territories",
            "pairs",
            "nests",
            "evidence",
            "density",
            "perkm",
            "occurrence",
            "breedingcode",
            "young",
            "eggs");

    /** Columns of a visit, which tells where people were and not where birds are. */
    private static final Set<String> VISITS = Set.of("start", "direction", "effective", "mode");

    /**
     * A stretch by which birds are told.
     *
     * @param river the river's name; blank if the row names none
     * @param fromKm its lower end
     * @param toKm its upper end
     */
    record Told(String river, double fromKm, double toKm) {
        boolean isTooSmall() {
            return toKm - fromKm > ROUNDING_KM && toKm - fromKm < SMALLEST_KM - ROUNDING_KM;
        }

        /** {@return the smallest piece of water that this stretch and another tell apart, if it is smaller than a public cell} */
        Optional<Told> piece(Told other) {
            if (!river.isEmpty() && !other.river.isEmpty() && !river.equalsIgnoreCase(other.river)) {
                return Optional.empty();
            }
            double lower = Math.max(fromKm, other.fromKm);
            double upper = Math.min(toKm, other.toKm);
            if (upper - lower <= ROUNDING_KM) {
                return Optional.empty();
            }
            List<Told> pieces = List.of(
                    new Told(river, lower, upper),
                    new Told(river, Math.min(fromKm, other.fromKm), lower),
                    new Told(river, upper, Math.max(toKm, other.toKm)));
            return pieces.stream().filter(Told::isTooSmall).findFirst();
        }
    }

    /** Hears rows, with the names of their cells in small letters and without signs. */
    interface Rows {
        void row(int line, List<String> header, List<String> row);
    }

    private StretchSearch() {}

    /** Reads a text that is a table with a heading, separated by commas, semicolons or tabs. */
    static void table(CharSequence text, Rows reader) {
        boolean isObject = text.length() > 0 && text.charAt(0) == '{';
        if (isObject || PlainWords.isMarkedUp(text)) {
            return;
        }
        CharSequence first = firstLine(text);
        char separator = Spelling.holds(first, '\t') ? '\t' : Spelling.holds(first, ';') ? ';' : ',';
        if (!Spelling.holds(first, separator)) {
            return;
        }
        try (CsvReader<CsvRecord> rows = CsvReader.builder()
                .fieldSeparator(separator)
                .allowExtraFields(true)
                .allowMissingFields(true)
                .ofCsvRecord(LongText.reader(text))) {
            List<String> header = null;
            for (CsvRecord row : rows) {
                if (header == null) {
                    header = plain(row.getFields());
                } else {
                    reader.row((int) row.getStartingLineNumber(), header, row.getFields());
                }
            }
        } catch (IOException | de.siegmar.fastcsv.reader.CsvParseException e) {
            // a text that is no table after all has been looked through as a text
            return;
        }
    }

    private static CharSequence firstLine(CharSequence text) {
        int end = 0;
        while (end < text.length() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
            end++;
        }
        return text.subSequence(0, end);
    }

    /** Reads the properties of the features in GeoJSON. */
    static void features(CharSequence text, Rows reader) {
        if (!OBJECT.matcher(text).lookingAt() || !PROPERTIES.matcher(text).find()) {
            return;
        }
        try {
            int number = 0;
            JsonReader features = featuresIn(text);
            while (features.hasNext()) {
                JsonElement feature = JsonParser.parseReader(features);
                number++;
                JsonObject properties = feature.getAsJsonObject().getAsJsonObject("properties");
                List<String> names = new ArrayList<>(properties.keySet());
                reader.row(
                        number,
                        plain(names),
                        names.stream()
                                .map(name -> properties.get(name).isJsonPrimitive()
                                        ? properties.get(name).getAsString()
                                        : "")
                                .toList());
            }
        } catch (IOException
                | JsonParseException
                | IllegalStateException
                | NullPointerException
                | ClassCastException e) {
            // not GeoJSON after all; it has been looked through as a text
            return;
        }
    }

    /** {@return a reader that stands before the first feature, so that they are read one by one} */
    private static JsonReader featuresIn(CharSequence text) throws IOException {
        JsonReader reader = new JsonReader(LongText.reader(text));
        reader.setStrictness(Strictness.LENIENT);
        reader.beginObject();
        while (!reader.nextName().equals("features")) {
            reader.skipValue();
        }
        reader.beginArray();
        return reader;
    }

    private static List<String> plain(List<String> names) {
        return names.stream().map(KmSearch::plain).toList();
    }

    /** {@return the stretch by which a row tells birds, if it does} */
    static Optional<Told> told(List<String> header, List<String> row) {
        Map<String, String> cells = new HashMap<>();
        for (int i = 0; i < Math.min(header.size(), row.size()); i++) {
            cells.putIfAbsent(header.get(i), row.get(i));
        }
        Set<String> filled = cells.entrySet().stream()
                .filter(cell -> !cell.getValue().isBlank())
                .map(Map.Entry::getKey)
                .collect(Collectors.toSet());
        if (filled.stream().noneMatch(BIRDS::contains)
                || filled.stream().filter(VISITS::contains).count() > 1) {
            return Optional.empty();
        }
        Optional<Double> from = number(cells.get("fromkm"));
        Optional<Double> to = number(cells.get("tokm"));
        return from.isEmpty() || to.isEmpty() || to.get() < from.get()
                ? Optional.empty()
                : Optional.of(new Told(cells.getOrDefault("river", ""), from.get(), to.get()));
    }

    private static Optional<Double> number(@org.jspecify.annotations.Nullable String text) {
        String number = text == null ? "" : text.strip().replace(',', '.');
        return number.matches("\\d{1,4}(\\.\\d{1,9})?") ? Optional.of(Double.valueOf(number)) : Optional.empty();
    }
}
