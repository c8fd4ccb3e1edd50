package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/**
 * {@code estimate} against published examples and base R, through the command as a statistician would call it: the sources, tables, expected
 * numbers and tolerances stand in {@code published/examples.txt}. A tolerance is half of the last printed digit, or what base R’s own
 * convergence leaves.
 */
class PublishedExamplesTest {
    private static final Path OF_ESTIMATORS =
            Path.of("..", "stats", "src", "test", "resources", "org", "ouzelbook", "stats", "estimator");
    private static final Map<String, JsonObject> ANSWERS = new HashMap<>();

    @TempDir
    private static Path folder;

    @ParameterizedTest(name = "{0}: {1} = {2}")
    @CsvFileSource(
            resources = "published/examples.txt",
            delimiter = '|',
            quoteCharacter = '`',
            maxCharsPerColumn = 1 << 14)
    void isReproduced(String command, String where, double expected, double tolerance) throws Exception {
        if (!ANSWERS.containsKey(command)) {
            ANSWERS.put(command, answer(command));
        }

        assertThat(number(ANSWERS.get(command), where)).isCloseTo(expected, within(tolerance));
    }

    private static JsonObject answer(String command) throws IOException, URISyntaxException {
        List<Object> arguments = new ArrayList<>(List.of("estimate"));
        for (String word : command.split(" ", -1)) {
            arguments.add(word.startsWith("@") ? file(word) : word.contains("/") ? table(word) : word);
        }
        arguments.add("--json");
        CommandRun run = CommandRun.of(arguments.toArray());
        assertThat(run.exitCode()).as(run.err()).isZero();
        return JsonParser.parseString(run.out()).getAsJsonObject();
    }

    private static Path file(String word) throws URISyntaxException {
        return word.startsWith("@stats:")
                ? OF_ESTIMATORS.resolve(word.substring("@stats:".length()))
                : Path.of(Objects.requireNonNull(
                                PublishedExamplesTest.class.getResource("published/" + word.substring(1)))
                        .toURI());
    }

    private static Path table(String rows) throws IOException {
        return Files.writeString(folder.resolve("table.csv"), rows.replace('/', '\n') + "\n");
    }

    /** Follows names joined by points; {@code name[key=value,…]} is the one element of a list with these values. */
    private static double number(JsonObject answer, String where) {
        JsonElement here = answer;
        for (String step : where.split("[.](?![^\\[]*])", -1)) {
            int bracket = step.indexOf('[');
            JsonElement next = here.getAsJsonObject().get(bracket < 0 ? step : step.substring(0, bracket));
            here = bracket < 0 ? next : only(next, step.substring(bracket + 1, step.length() - 1));
        }
        return here.isJsonArray() ? here.getAsJsonArray().get(0).getAsDouble() : here.getAsDouble();
    }

    private static JsonElement only(JsonElement list, String values) {
        List<JsonElement> found = StreamSupport.stream(list.getAsJsonArray().spliterator(), false)
                .filter(element -> {
                    for (String one : values.split(",", -1)) {
                        String[] keyAndValue = one.split("=", 2);
                        if (!element.getAsJsonObject()
                                .get(keyAndValue[0])
                                .getAsString()
                                .equals(keyAndValue[1])) {
                            return false;
                        }
                    }
                    return true;
                })
                .toList();
        assertThat(found).as(values).hasSize(1);
        return found.get(0);
    }
}
