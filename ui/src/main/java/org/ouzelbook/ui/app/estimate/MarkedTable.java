package org.ouzelbook.ui.app.estimate;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.ouzelbook.stats.estimator.likelihood.Covariate;
import org.ouzelbook.stats.estimator.markresight.EncounterHistory;
import org.ouzelbook.stats.estimator.markresight.MarkedAnimals;
import org.ouzelbook.tracker.domain.Message;

/**
 * Encounter histories by group, and what a model of them may depend on.
 *
 * @param animals the histories
 * @param survival what survival depends on
 * @param resighting what resighting depends on
 * @param warnings what to know of the table itself
 */
record MarkedTable(
        MarkedAnimals animals, List<Covariate> survival, List<Covariate> resighting, List<Message> warnings) {
    /** The name by which an option asks for an effect of each occasion. */
    private static final String OCCASION = "occasion";

    private static final long LARGEST_COUNT = 1_000_000_000;

    /**
     * {@return the histories of a table}
     *
     * @param file the table, with the columns {@code history}, perhaps {@code count}, and groups
     * @param model what is asked of it
     * @throws BadTable if a table must be mended first
     */
    static MarkedTable read(Path file, EstimateSurvival.Model model) {
        List<SeasonColumn> seasons = SeasonColumn.read(model);
        List<String> ofSeasons = seasons.stream().map(SeasonColumn::name).toList();
        List<String> groups = Stream.concat(model.survivalBy().stream(), model.resightingBy().stream())
                .distinct()
                .filter(name -> !name.equalsIgnoreCase(OCCASION) && !ofSeasons.contains(name))
                .toList();
        List<String> words = Stream.concat(Stream.of("history"), CovariateColumns.plain(groups).stream())
                .toList();
        PlainTable table = PlainTable.read(file, words, List.of(), List.of("count"));
        List<PlainTable.Row> rows = table.rows().toList();
        if (rows.isEmpty()) {
            table.problem(Message.of("estimate.table.noRows"));
        }
        Map<String, List<String>> levels = new LinkedHashMap<>();
        groups.forEach(name -> levels.put(name, CovariateColumns.filled(name, rows)));
        int occasions = rows.isEmpty() ? 0 : rows.get(0).text("history").length();
        Map<List<String>, List<EncounterHistory>> byGroup = new LinkedHashMap<>();
        long never = 0;
        for (int i = 0; i < rows.size(); i++) {
            int at = i;
            List<String> group =
                    levels.values().stream().map(column -> column.get(at)).toList();
            List<EncounterHistory> histories = byGroup.computeIfAbsent(group, key -> new ArrayList<>());
            EncounterHistory history = history(table, rows.get(i), occasions);
            if (history.seen().contains(true)) {
                histories.add(history);
            } else {
                never += history.count();
            }
        }
        seasons.forEach(season -> season.check(table, occasions));
        table.check();
        List<Message> warnings = new ArrayList<>(table.warnings());
        if (never > 0) {
            warnings.add(Message.of("estimate.survival.neverMet", never));
        }
        MarkedAnimals animals = MarkedAnimals.of(occasions, List.copyOf(byGroup.values()));
        Terms terms = new Terms(animals, groups, List.copyOf(byGroup.keySet()), seasons);
        return new MarkedTable(
                animals,
                model.survivalBy().stream()
                        .map(name -> terms.of(table, name, 0))
                        .toList(),
                model.resightingBy().stream()
                        .map(name -> terms.of(table, name, 1))
                        .toList(),
                warnings);
    }

    private static EncounterHistory history(PlainTable table, PlainTable.Row row, int occasions) {
        String digits = row.text("history").replaceAll("\\s", "");
        long count = table.has("count") ? row.whole("count", 1, LARGEST_COUNT) : 1;
        if (!digits.matches("[01]+")) {
            row.problem("history", Message.of("estimate.survival.history"));
            return EncounterHistory.of("0".repeat(occasions), count);
        }
        if (digits.length() != occasions) {
            row.problem("history", Message.of("estimate.survival.length", digits.length(), occasions));
        }
        return EncounterHistory.of(digits, count);
    }

    /** Names of a model as covariates of the rows. */
    private record Terms(
            MarkedAnimals animals, List<String> groups, List<List<String>> levels, List<SeasonColumn> seasons) {
        /** {@return the covariate; {@code end} is 0 for what stands over an interval, 1 for what stands at its end} */
        Covariate of(PlainTable table, String name, int end) {
            int intervals = Math.max(0, animals.occasions() - 1);
            if (name.equalsIgnoreCase(OCCASION)) {
                return animals.byInterval(
                        OCCASION,
                        IntStream.range(0, intervals)
                                .mapToObj(interval -> String.valueOf(interval + 1 + end))
                                .toList());
            }
            int group = groups.indexOf(name);
            if (group >= 0) {
                return animals.byGroup(
                        table.heading(PlainTable.plain(name)),
                        levels.stream().map(one -> one.get(group)).toList());
            }
            return animals.byInterval(seasons.stream()
                    .filter(season -> season.name().equals(name))
                    .findFirst()
                    .orElseThrow()
                    .byInterval(intervals, end));
        }
    }
}
