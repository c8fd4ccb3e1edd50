package org.ouzelbook.tracker.exchange.trip;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.exchange.cell.WrittenActivities;
import org.ouzelbook.tracker.exchange.cell.WrittenSpecies;

/**
 * A waypoint as a file tells it.
 *
 * @param line the line of the file that it begins in
 * @param latitude its latitude, as written
 * @param longitude its longitude, as written
 * @param time its time, as written; blank if none
 * @param texts its name and comments, none blank, each once
 */
record Waypoint(int line, String latitude, String longitude, String time, List<String> texts) {
    private static final Pattern NO_WORD = Pattern.compile("[\\s,;:]+");

    Waypoint {
        texts = texts.stream()
                .map(String::strip)
                .filter(text -> !text.isEmpty())
                .distinct()
                .toList();
    }

    /** {@return the cells of a row of sightings: latitude, longitude, date, species, activity, note} */
    List<String> row() {
        List<String> words = new ArrayList<>(Arrays.asList(NO_WORD.split(String.join(" ", texts), -1)));
        Optional<Species> species = Optional.empty();
        for (String word : List.copyOf(words)) {
            if (species.isEmpty() && WrittenSpecies.of(word).isPresent()) {
                species = WrittenSpecies.of(word);
                words.remove(word);
            }
        }
        WrittenActivities doing = WrittenActivities.of(String.join(" ", words));
        boolean understood = !doing.activities().isEmpty() && doing.others().isEmpty();
        return List.of(
                latitude,
                longitude,
                time,
                species.map(Species::englishName).orElse(""),
                understood ? String.join(" ", words) : "",
                String.join("; ", texts));
    }
}
