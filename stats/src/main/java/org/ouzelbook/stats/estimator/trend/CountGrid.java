package org.ouzelbook.stats.estimator.trend;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/**
 * Counts laid out by site and season. Sites where every count is zero stand apart: they say nothing of the trend, and add
 * nothing to the totals. Seasons are those with at least one count, numbered from 0.
 */
final class CountGrid {
    private final int[] seasons;
    private final List<Row> rows;
    private final List<String> emptySites;
    private final long emptyCounts;
    private final long[] observed;
    private final int[] counted;

    private CountGrid(
            int[] seasons, List<Row> rows, List<String> emptySites, long emptyCounts, long[] observed, int[] counted) {
        this.seasons = seasons;
        this.rows = List.copyOf(rows);
        this.emptySites = List.copyOf(emptySites);
        this.emptyCounts = emptyCounts;
        this.observed = observed;
        this.counted = counted;
    }

    static CountGrid of(List<SeasonCount> cells) {
        int[] seasons = cells.stream()
                .filter(cell -> cell.count().isPresent())
                .mapToInt(SeasonCount::season)
                .distinct()
                .sorted()
                .toArray();
        Map<String, List<SeasonCount>> bySite = new LinkedHashMap<>();
        for (SeasonCount cell : cells) {
            bySite.computeIfAbsent(cell.site(), site -> new ArrayList<>()).add(cell);
        }
        List<Row> rows = new ArrayList<>();
        List<String> emptySites = new ArrayList<>();
        List<Row> emptyRows = new ArrayList<>();
        long[] observed = new long[seasons.length];
        int[] counted = new int[seasons.length];
        bySite.forEach((site, own) -> {
            Row row = row(own, seasons);
            for (int season = 0; season < seasons.length; season++) {
                observed[season] += Math.max(0, row.counts[season]);
                counted[season] += row.counted(season) ? 1 : 0;
            }
            if (row.total > 0) {
                rows.add(row);
            } else if (row.countedSeasons().length > 0) {
                emptySites.add(site);
                emptyRows.add(row);
            }
        });
        long emptyCounts =
                emptyRows.stream().mapToLong(row -> row.countedSeasons().length).sum();
        return new CountGrid(seasons, rows, emptySites, emptyCounts, observed, counted);
    }

    private static Row row(List<SeasonCount> cells, int[] seasons) {
        long[] counts = new long[seasons.length];
        double[] km = new double[seasons.length];
        Arrays.fill(counts, Row.MISSING);
        Arrays.fill(km, meanKm(cells));
        Set<Integer> seen = new HashSet<>(2 * cells.size());
        for (SeasonCount cell : cells) {
            if (!seen.add(cell.season())) {
                throw new IllegalArgumentException(cell.site() + " has two counts in " + cell.season());
            }
            int season = Arrays.binarySearch(seasons, cell.season());
            if (season >= 0) {
                counts[season] = cell.count().orElse(Row.MISSING);
                km[season] = cell.km().orElse(km[season]);
            }
        }
        return new Row(counts, km);
    }

    private static double meanKm(List<SeasonCount> cells) {
        return cells.stream()
                .map(SeasonCount::km)
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .average()
                .orElse(1);
    }

    /** {@return the seasons for which this holds} */
    int[] seasonsWhere(IntPredicate holds) {
        return IntStream.range(0, seasons.length).filter(holds).toArray();
    }

    /** {@return this grid with only some of its seasons; sites left without birds are dropped} */
    CountGrid only(int[] kept) {
        List<Row> fewer = rows.stream()
                .map(row -> row.only(kept))
                .filter(row -> row.total > 0)
                .toList();
        return new CountGrid(
                IntStream.of(kept).map(season -> seasons[season]).toArray(),
                fewer,
                emptySites,
                emptyCounts,
                IntStream.of(kept).mapToLong(season -> observed[season]).toArray(),
                IntStream.of(kept).map(season -> counted[season]).toArray());
    }

    /** {@return how many counts the sites with birds have} */
    long informativeCounts() {
        return rows.stream().mapToLong(row -> row.countedSeasons().length).sum();
    }

    /** {@return the years between the first and the last season in which nothing was counted, such as 2003 or 2005–2008} */
    List<String> gaps() {
        List<String> gaps = new ArrayList<>();
        for (int season = 1; season < seasons.length; season++) {
            int from = seasons[season - 1] + 1;
            int to = seasons[season] - 1;
            if (from <= to) {
                gaps.add(from == to ? Integer.toString(from) : from + "–" + to);
            }
        }
        return gaps;
    }

    int size() {
        return seasons.length;
    }

    /** {@return the calendar year of a season} */
    int year(int season) {
        return seasons[season];
    }

    /** {@return the calendar years of some seasons} */
    List<Integer> years(int[] some) {
        return IntStream.of(some).map(season -> seasons[season]).boxed().toList();
    }

    /** {@return sites with birds, in order of appearance} */
    List<Row> rows() {
        return rows;
    }

    /** {@return names of the sites that were counted and never had any} */
    List<String> emptySites() {
        return emptySites;
    }

    /** {@return how many counts those sites have} */
    long emptyCounts() {
        return emptyCounts;
    }

    /** {@return what was counted in a season, all sites together} */
    long observed(int season) {
        return observed[season];
    }

    /** {@return how many sites were counted in a season, empty ones too} */
    int counted(int season) {
        return counted[season];
    }

    /** One site by season. */
    static final class Row {
        private static final long MISSING = -1;

        private final long[] counts;
        private final double[] km;
        private final long total;
        private final int[] countedSeasons;

        private Row(long[] counts, double[] km) {
            this.counts = counts;
            this.km = km;
            int[] places = new int[counts.length];
            int number = 0;
            long birds = 0;
            for (int season = 0; season < counts.length; season++) {
                if (counts[season] != MISSING) {
                    places[number++] = season;
                    birds += counts[season];
                }
            }
            this.countedSeasons = Arrays.copyOf(places, number);
            this.total = birds;
        }

        boolean counted(int season) {
            return counts[season] != MISSING;
        }

        /** {@return the seasons in which it was counted} */
        int[] countedSeasons() {
            return countedSeasons;
        }

        /** {@return the count of a season in which it was counted} */
        long count(int season) {
            return counts[season];
        }

        /** {@return its length; for a missing count without one, the mean of the site's others} */
        double km(int season) {
            return km[season];
        }

        /** {@return all its birds} */
        long total() {
            return total;
        }

        private Row only(int[] kept) {
            return new Row(
                    IntStream.of(kept).mapToLong(season -> counts[season]).toArray(),
                    IntStream.of(kept).mapToDouble(season -> km[season]).toArray());
        }
    }
}
