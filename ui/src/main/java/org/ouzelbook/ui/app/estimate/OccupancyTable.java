package org.ouzelbook.ui.app.estimate;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.ouzelbook.stats.estimator.likelihood.Covariate;
import org.ouzelbook.stats.estimator.occupancy.OccupancyModel;
import org.ouzelbook.stats.estimator.occupancy.SiteVisit;
import org.ouzelbook.stats.estimator.occupancy.SiteVisits;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.exchange.Problem;

/**
 * Visits to sites, and what a model of them may depend on.
 *
 * @param visits the visits
 * @param model what each part depends on
 * @param siteNames what the sites are called
 * @param seasons the seasons, with those between them that have no column
 * @param warnings what to know of the table itself
 */
record OccupancyTable(
        SiteVisits visits,
        OccupancyModel model,
        List<String> siteNames,
        List<Integer> seasons,
        List<Message> warnings) {
    private static final Pattern VISIT = Pattern.compile("(?:([0-9]{1,6})[.])?([0-9]{1,6})");
    private static final int MOST_SEASONS = 500;
    private static final int ONLY_SEASON = 1;
    private static final String SITE = "site";
    private static final String SEASON = "season";
    private static final Set<String> OCCASION = Set.of("visit", "occasion");

    /**
     * {@return the visits of a table}
     *
     * @param file the table: a row for each site, a column for each visit
     * @param asked what is asked of it
     * @throws BadTable if the table must be mended first
     */
    static OccupancyTable read(Path file, EstimateOccupancy.Model asked) {
        List<String> header =
                PlainTable.header(file, name -> VISIT.matcher(name).matches());
        Map<Integer, Map<Integer, String>> columns = visitColumns(header);
        List<String> wanted = asked.names().stream()
                .map(PlainTable::plain)
                .filter(name -> !name.equals(SEASON) && !OCCASION.contains(name))
                .toList();
        List<String> words = header.stream()
                .map(PlainTable::plain)
                .filter(column -> column.equals(SITE)
                        || wanted.stream().anyMatch(name -> column.equals(name) || column.startsWith(name + ".")))
                .toList();
        if (columns.isEmpty()) {
            throw new BadTable(List.of(
                    new Problem(file.toString(), 0, "", "", Message.of("estimate.occupancy.noVisits", header))));
        }
        List<String> numbers =
                columns.values().stream().flatMap(one -> one.values().stream()).toList();
        PlainTable table = PlainTable.read(file, words, numbers, List.of());
        checkColumns(table, columns, wanted, words, header);
        List<PlainTable.Row> rows = table.rows().toList();
        if (rows.isEmpty()) {
            table.problem(Message.of("estimate.occupancy.noRows", header));
        }
        table.check();
        List<Integer> seasons =
                IntStream.rangeClosed(first(columns), last(columns)).boxed().toList();
        return new Reader(table, rows, columns, seasons).read(asked);
    }

    private static int first(Map<Integer, Map<Integer, String>> columns) {
        return columns.keySet().stream().min(Integer::compare).orElse(0);
    }

    private static int last(Map<Integer, Map<Integer, String>> columns) {
        return columns.keySet().stream().max(Integer::compare).orElse(0);
    }

    /** Columns of visits, by season and number of the visit. */
    private static Map<Integer, Map<Integer, String>> visitColumns(List<String> header) {
        Map<Integer, Map<Integer, String>> columns = new TreeMap<>();
        for (String column : header) {
            Matcher visit = VISIT.matcher(PlainTable.plain(column));
            if (visit.matches()) {
                int season = Optional.ofNullable(visit.group(1))
                        .map(Integer::valueOf)
                        .orElse(ONLY_SEASON);
                columns.computeIfAbsent(season, key -> new TreeMap<>())
                        .putIfAbsent(Integer.valueOf(visit.group(2)), PlainTable.plain(column));
            }
        }
        return columns;
    }

    private static void checkColumns(
            PlainTable table,
            Map<Integer, Map<Integer, String>> columns,
            List<String> wanted,
            List<String> words,
            List<String> header) {
        if (last(columns) - first(columns) >= MOST_SEASONS) {
            table.problem(Message.of("estimate.occupancy.farSeasons", first(columns), last(columns)));
        }
        List<String> missing = wanted.stream()
                .filter(name -> words.stream().noneMatch(word -> word.equals(name) || word.startsWith(name + ".")))
                .toList();
        if (!missing.isEmpty()) {
            table.problem(Message.of("estimate.table.lacks", missing, header));
        }
    }

    /** One line of a design: a site, and as much of season and visit as the part has. */
    private record Line(PlainTable.Row row, Optional<Integer> season, Optional<Integer> visit) {}

    /** Reads the rows. */
    private record Reader(
            PlainTable table,
            List<PlainTable.Row> rows,
            Map<Integer, Map<Integer, String>> columns,
            List<Integer> seasons) {
        OccupancyTable read(EstimateOccupancy.Model asked) {
            List<SiteVisit> visits = new ArrayList<>();
            List<Line> ofVisits = new ArrayList<>();
            List<Line> ofChanges = new ArrayList<>();
            List<String> names = new ArrayList<>();
            Map<String, Long> rowOfSite = new HashMap<>();
            for (int site = 0; site < rows.size(); site++) {
                PlainTable.Row row = rows.get(site);
                names.add(row.text(SITE).isEmpty() ? Integer.toString(site + 1) : row.text(SITE));
                Long before = row.text(SITE).isEmpty() ? null : rowOfSite.putIfAbsent(row.text(SITE), row.number());
                if (before != null) {
                    row.problem(SITE, Message.of("estimate.occupancy.siteTwice", before));
                }
                for (int season = 0; season < seasons.size(); season++) {
                    Optional<Integer> label = Optional.of(seasons.get(season));
                    if (season > 0) {
                        ofChanges.add(new Line(row, label, Optional.empty()));
                    }
                    for (Map.Entry<Integer, String> visit :
                            columns.getOrDefault(seasons.get(season), Map.of()).entrySet()) {
                        if (!row.text(visit.getValue()).isEmpty()) {
                            boolean detected = row.whole(visit.getValue(), 0, 1) == 1;
                            visits.add(new SiteVisit(site, season, Math.max(0, visit.getKey() - 1), detected));
                            ofVisits.add(new Line(row, label, Optional.of(visit.getKey())));
                        }
                    }
                }
            }
            List<Line> ofSites = rows.stream()
                    .map(row -> new Line(row, Optional.empty(), Optional.empty()))
                    .toList();
            OccupancyModel model = new OccupancyModel(
                    covariates(asked.occupancyBy(), ofSites),
                    covariates(asked.colonisationBy(), ofChanges),
                    covariates(asked.extinctionBy(), ofChanges),
                    covariates(asked.detectionBy(), ofVisits));
            table.check();
            return new OccupancyTable(
                    new SiteVisits(rows.size(), seasons.size(), visits), model, names, seasons, warnings());
        }

        private List<Message> warnings() {
            List<Message> warnings = new ArrayList<>(table.warnings());
            List<Integer> gaps = seasons.stream()
                    .filter(season -> !columns.containsKey(season))
                    .toList();
            if (!gaps.isEmpty()) {
                warnings.add(Message.of(
                        "estimate.occupancy.gaps",
                        gaps.stream().map(String::valueOf).toList()));
            }
            return warnings;
        }

        private List<Covariate> covariates(List<String> names, List<Line> lines) {
            return names.stream().map(name -> covariate(name, lines)).toList();
        }

        private Covariate covariate(String name, List<Line> lines) {
            String plain = PlainTable.plain(name);
            if (!table.has(plain) && plain.equals(SEASON)) {
                return Covariate.levels(
                        name, lines.stream().map(line -> text(line.season)).toList());
            }
            if (!table.has(plain) && OCCASION.contains(plain)) {
                return Covariate.levels(
                        name, lines.stream().map(line -> text(line.visit)).toList());
            }
            List<String> cells = new ArrayList<>(lines.size());
            Set<List<Object>> told = new LinkedHashSet<>();
            for (Line line : lines) {
                String column = column(plain, line);
                String cell = line.row.text(column);
                if (cell.isEmpty() && told.add(List.of(line.row.number(), column))) {
                    line.row.problem(column, Message.of("estimate.cell.missing"));
                }
                cells.add(cell);
            }
            String heading = table.has(plain) ? table.heading(plain) : name;
            return CovariateColumns.of(heading, cells);
        }

        /** The column of a covariate for a visit, or else for its season, or else for its site. */
        private String column(String name, Line line) {
            String season = text(line.season);
            String visit = text(line.visit);
            return Stream.of(name + "." + season + "." + visit, name + "." + visit, name + "." + season)
                    .filter(column -> !column.endsWith("."))
                    .filter(column -> !column.equals(name + "." + visit) || seasons.size() == 1)
                    .filter(table::has)
                    .findFirst()
                    .orElse(name);
        }

        private static String text(Optional<Integer> number) {
            return number.map(String::valueOf).orElse("");
        }
    }
}
