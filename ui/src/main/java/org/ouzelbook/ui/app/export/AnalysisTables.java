package org.ouzelbook.ui.app.export;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.ouzelbook.stats.estimator.markresight.EncounterHistory;
import org.ouzelbook.stats.survey.BreedingPace;
import org.ouzelbook.stats.survey.CountTrend;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.NestAttempt;
import org.ouzelbook.stats.survey.NestSuccess;
import org.ouzelbook.stats.survey.Site;
import org.ouzelbook.stats.survey.SiteOccupancy;
import org.ouzelbook.stats.survey.SiteSettings;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.Survival;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.exchange.export.DataTable;
import org.ouzelbook.ui.app.Texts;

/**
 * What a statistician asks of a book, as plain tables that {@code estimate} reads: histories of sites, counts, nests and ringed birds,
 * by the usual settings of each species. They tell places to 500 m, and so they are private.
 */
final class AnalysisTables {
    /** The limits of intervals play no part in the tables. */
    private static final double LEVEL = 0.95;

    private final SurveyRecords records;
    private final List<DataTable> tables = new ArrayList<>();
    private final List<List<Object>> dictionary = new ArrayList<>();

    private AnalysisTables(SurveyRecords records) {
        this.records = records;
    }

    /** {@return the tables, each named with the folder of its species, and at the end what their columns mean} */
    static List<DataTable> of(SurveyRecords records) {
        AnalysisTables made = new AnalysisTables(records);
        Species.all().forEach(made::add);
        made.tables.add(new DataTable(
                "dictionary",
                List.of(
                        Texts.of("export.dictionary.table"),
                        Texts.of("export.dictionary.column"),
                        Texts.of("export.dictionary.meaning")),
                made.dictionary));
        return List.copyOf(made.tables);
    }

    private void add(Species species) {
        List<Integer> seasons = seasons(species);
        if (seasons.isEmpty()) {
            return;
        }
        String folder = species.englishName().replace(' ', '-') + "/";
        addOccupancy(folder + "occupancy", species, seasons);
        addCounts(folder + "counts", species, seasons, List.of(Water.ALL), "counts");
        List<Water> reaches = new ArrayList<>();
        for (Reach reach : records.reaches()) {
            reaches.add(Water.ofReach(reach, records.reaches()));
        }
        if (!reaches.isEmpty()) {
            addCounts(folder + "counts-by-reach", species, seasons, reaches, "countsByReach");
        }
        addNests(folder + "nests", species, seasons);
        addSurvival(folder + "survival", species);
    }

    /** From the first to the last year in which a visit looked for the species. */
    private List<Integer> seasons(Species species) {
        int[] years = records.visits().stream()
                .filter(visit -> visit.lookedFor().contains(species))
                .mapToInt(visit -> visit.date().getYear())
                .sorted()
                .toArray();
        return years.length == 0
                ? List.of()
                : IntStream.rangeClosed(years[0], years[years.length - 1])
                        .boxed()
                        .toList();
    }

    private void add(String name, List<String> columns, List<List<Object>> rows, String about) {
        if (rows.isEmpty()) {
            return;
        }
        tables.add(new DataTable(name, columns, rows));
        dictionary.add(List.of(name, "", Texts.of("export.analysis." + about)));
        Set<String> told = new LinkedHashSet<>();
        for (String column : columns) {
            String kind = column.matches("\\d+\\.\\d+") ? "SEASON.VISIT" : column;
            if (told.add(kind)) {
                dictionary.add(List.of(name, kind, Texts.of("export.analysis.column." + kind)));
            }
        }
    }

    private void addOccupancy(String name, Species species, List<Integer> seasons) {
        SiteOccupancy found = SiteOccupancy.of(
                records,
                species,
                seasons,
                Water.ALL,
                SiteSettings.usualFor(species),
                SiteOccupancy.Model.CONSTANT,
                false,
                LEVEL);
        List<List<String>> histories = found.histories();
        List<String> visits = new ArrayList<>();
        for (int season = 0; season < found.seasons().size(); season++) {
            int of = season;
            int most = histories.stream()
                    .mapToInt(site -> site.get(of).length())
                    .max()
                    .orElse(0);
            IntStream.rangeClosed(1, most)
                    .forEach(visit -> visits.add(found.seasons().get(of) + "." + visit));
        }
        List<String> columns = new ArrayList<>(List.of("site", "river", "km"));
        columns.addAll(visits);
        List<List<Object>> rows = new ArrayList<>();
        for (int i = 0; i < found.sites().size(); i++) {
            Site site = found.sites().get(i);
            List<Object> row = new ArrayList<>();
            row.add(site.name()
                    .orElse(site.river().name() + " "
                            + km(site.stretch().lower().metres()) + "-"
                            + km(site.stretch().upper().metres())));
            row.add(site.river().name());
            row.add(km(site.stretch().middle().metres()));
            for (int season = 0; season < found.seasons().size(); season++) {
                String history = histories.get(i).get(season);
                String prefix = found.seasons().get(season) + ".";
                int places = (int) visits.stream()
                        .filter(visit -> visit.startsWith(prefix))
                        .count();
                for (int visit = 0; visit < places; visit++) {
                    char sign = visit < history.length() ? history.charAt(visit) : '-';
                    row.add(sign == '-' ? "" : sign == '1' ? 1 : 0);
                }
            }
            rows.add(row);
        }
        add(name, columns, rows, "occupancy");
    }

    private static double km(double metres) {
        return Math.round(metres) / 1000.0;
    }

    private void addCounts(String name, Species species, List<Integer> seasons, List<Water> waters, String about) {
        CountTrend trend = CountTrend.of(records, species, seasons, MapSettings.usualFor(species), waters, LEVEL);
        List<List<Object>> rows = new ArrayList<>();
        for (CountTrend.Counted counted : trend.counts()) {
            boolean isCounted = counted.count().isPresent();
            rows.add(List.of(
                    counted.water(),
                    counted.season(),
                    isCounted ? counted.count().getAsLong() : "",
                    isCounted ? counted.surveyedKm() : "",
                    counted.min(),
                    counted.max(),
                    counted.visits(),
                    counted.effectiveVisits()));
        }
        add(name, List.of("site", "year", "count", "km", "fewest", "most", "visits", "effective_visits"), rows, about);
    }

    private void addNests(String name, Species species, List<Integer> seasons) {
        NestSuccess nests = NestSuccess.of(
                records,
                species,
                seasons,
                Water.ALL,
                MapSettings.usualFor(species),
                BreedingPace.usualFor(species),
                LEVEL);
        List<List<Object>> rows = new ArrayList<>();
        for (NestAttempt attempt : nests.attempts()) {
            if (attempt.isSound()) {
                attempt.watched()
                        .forEach(watch -> rows.add(List.of(
                                attempt.nest().label(),
                                attempt.season(),
                                watch.days(),
                                watch.survived() ? 1 : 0,
                                watch.eggDays(),
                                watch.youngDays())));
            }
        }
        add(name, List.of("nest", "season", "days", "survived", "egg_days", "young_days"), rows, "nests");
    }

    private void addSurvival(String name, Species species) {
        Survival survival = Survival.of(
                records,
                species,
                new Survival.Model(List.of(), List.of(), (covariate, seasons, atEnd) -> Optional.empty()),
                LEVEL);
        if (survival.readings().isEmpty()) {
            return;
        }
        Map<String, Long> histories = new LinkedHashMap<>();
        for (List<EncounterHistory> group : survival.animals().groups()) {
            for (EncounterHistory history : group) {
                StringBuilder signs = new StringBuilder();
                history.seen().forEach(seen -> signs.append(seen ? '1' : '0'));
                histories.merge(signs.toString(), history.count(), Long::sum);
            }
        }
        List<List<Object>> rows = new ArrayList<>();
        histories.forEach((history, count) ->
                rows.add(List.of(history, count, survival.seasons().get(0))));
        add(name, List.of("history", "count", "first_season"), rows, "survival");
    }
}
