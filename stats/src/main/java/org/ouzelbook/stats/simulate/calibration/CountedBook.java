package org.ouzelbook.stats.simulate.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.ouzelbook.stats.simulate.calibration.CountedSeason.ModelCount;

/**
 * What was counted in one book, as one line of text so that a long run can stop and go on.
 *
 * @param seconds how long it took, both counts together
 * @param seasons its seasons
 */
record CountedBook(double seconds, List<CountedSeason> seasons) {
    CountedBook {
        seasons = List.copyOf(seasons);
    }

    String line() {
        return seconds
                + "\t"
                + seasons.stream()
                        .map(season -> season.truth()
                                + ":"
                                + season.byRule()
                                + season.byModel()
                                        .map(count ->
                                                ":" + count.estimate() + ":" + count.lower() + ":" + count.upper())
                                        .orElse(""))
                        .collect(Collectors.joining(" "));
    }

    static CountedBook read(String line) {
        String[] parts = line.split("\t", -1);
        List<CountedSeason> seasons = new ArrayList<>();
        for (String season : parts[1].split(" ", -1)) {
            String[] numbers = season.split(":", -1);
            Optional<ModelCount> model = numbers.length < 5
                    ? Optional.empty()
                    : Optional.of(new ModelCount(
                            Double.parseDouble(numbers[2]),
                            Double.parseDouble(numbers[3]),
                            Double.parseDouble(numbers[4])));
            seasons.add(new CountedSeason(Integer.parseInt(numbers[0]), Integer.parseInt(numbers[1]), model));
        }
        return new CountedBook(Double.parseDouble(parts[0]), seasons);
    }
}
