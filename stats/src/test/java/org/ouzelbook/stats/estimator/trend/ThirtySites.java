package org.ouzelbook.stats.estimator.trend;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/** The invented counts of {@code thirty-sites.csv}. */
final class ThirtySites {
    private ThirtySites() {}

    static List<SeasonCount> counts() {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(ThirtySites.class.getResourceAsStream("thirty-sites.csv")),
                StandardCharsets.UTF_8))) {
            return reader.lines().skip(1).map(ThirtySites::count).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static SeasonCount count(String line) {
        String[] cells = line.split(",", -1);
        OptionalLong count = cells[2].isEmpty() ? OptionalLong.empty() : OptionalLong.of(Long.parseLong(cells[2]));
        return new SeasonCount(cells[0], Integer.parseInt(cells[1]), count, OptionalDouble.empty());
    }
}
