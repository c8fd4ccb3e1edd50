package org.ouzelbook.ui.app.estimate;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.ouzelbook.stats.survey.PlainSeason;
import org.ouzelbook.stats.survey.PlainSeason.Mouth;
import org.ouzelbook.stats.survey.PlainSeason.PlainSighting;
import org.ouzelbook.stats.survey.PlainSeason.PlainVisit;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.exchange.Problem;
import org.ouzelbook.ui.app.Texts;

/**
 * Sightings and visits of any number of rivers and seasons, from two plain tables.
 *
 * @param seasons one element a river and season that was visited, in the order of the visits
 * @param mouths where rivers join others, by name of the one that does
 * @param warnings what to know of the tables themselves
 */
record TerritoryTables(List<PlainSeason> seasons, Map<String, Mouth> mouths, List<Message> warnings) {
    private static final int LAST_YEAR = 9999;
    private static final int DAYS = 365;
    private static final double LONGEST_KM = 20_000;
    private static final String SEASON = "season";
    private static final String RIVER = "river";
    private static final String VISIT = "visit";
    private static final String JOINS = "joins";
    private static final String JOINS_KM = "joins_km";

    /** A river in a season. */
    private record Where(int season, String river) {}

    /** What one river and season has gathered so far. */
    private static final class Gathered {
        private final Map<String, PlainVisit> visits = new LinkedHashMap<>();
        private final Map<String, PlainSighting> sightings = new LinkedHashMap<>();
        private final Map<String, Long> rows = new HashMap<>();
    }

    /**
     * {@return the seasons of two tables}
     *
     * @param sightings one row a bird met: its name, its visit, km, and perhaps what it was simultaneous with, where it turned
     *     back, season, river
     * @param visits one row a visit: its name, its day, from and to which km, and perhaps season, river, and which river that
     *     one joins at which km
     * @throws BadTable if a table must be mended first
     */
    static TerritoryTables read(Path sightings, Path visits) {
        PlainTable walked = PlainTable.read(
                visits,
                List.of(VISIT, "day"),
                List.of("from_km", "to_km"),
                List.of(RIVER, JOINS),
                List.of(SEASON, JOINS_KM));
        PlainTable seen = PlainTable.read(
                sightings,
                List.of("sighting", VISIT),
                List.of("km"),
                List.of(RIVER, "simultaneous_with"),
                List.of(SEASON, "turned_back_km"));
        Reading reading = new Reading(walked, seen);
        reading.visits();
        if (walked.problems().isEmpty() && reading.fit()) {
            reading.sightings();
        }
        List<Problem> problems = Stream.concat(walked.problems().stream(), seen.problems().stream())
                .toList();
        if (!problems.isEmpty()) {
            throw new BadTable(problems);
        }
        return reading.tables();
    }

    /** The two tables as they are read. */
    private static final class Reading {
        private final PlainTable walked;
        private final PlainTable seen;
        private final Map<Where, Gathered> gathered = new LinkedHashMap<>();
        private final Map<String, Set<Where>> visitsByName = new HashMap<>();
        private final Map<String, Mouth> mouths = new LinkedHashMap<>();
        private final int dayOffset;

        Reading(PlainTable walked, PlainTable seen) {
            this.walked = walked;
            this.seen = seen;
            this.dayOffset = offset(walked);
        }

        /** Days that are not those of a year, such as 0, 14, 28, are counted from the first. */
        private static int offset(PlainTable walked) {
            long[] days = walked.rows()
                    .map(row -> row.text("day"))
                    .filter(day -> day.matches("[+-]?[0-9]{1,9}"))
                    .mapToLong(Long::parseLong)
                    .sorted()
                    .toArray();
            return days.length > 0 && (days[0] < 1 || days[days.length - 1] > DAYS) ? (int) (1 - days[0]) : 0;
        }

        /** Whether visits say where they were wherever sightings do. */
        boolean fit() {
            for (String column : List.of(SEASON, RIVER)) {
                boolean dated = column.equals(SEASON) && walked.rows().allMatch(row -> isDate(row.text("day")));
                if (seen.has(column) && !walked.has(column) && !dated) {
                    walked.problem(Message.of("estimate.territories.onlySightings", column));
                }
            }
            return walked.problems().isEmpty();
        }

        private static boolean isDate(String day) {
            return day.matches("[0-9]{4}-[0-9]{2}-[0-9]{2}");
        }

        void visits() {
            walked.rows().forEach(row -> {
                String label = row.filled(VISIT);
                Where where = where(walked, row);
                LocalDate date = date(row, where.season());
                double from = km(row, "from_km");
                double to = km(row, "to_km");
                Where at = walked.has(SEASON) ? where : new Where(date.getYear(), where.river());
                Gathered of = gathered.computeIfAbsent(at, any -> new Gathered());
                PlainVisit before = of.visits.putIfAbsent(label, new PlainVisit(label, date, Stretch.ofKm(from, to)));
                if (before != null) {
                    row.problem(VISIT, Message.of("estimate.territories.visitTwice", label));
                }
                if (from == to) {
                    row.problem("to_km", Message.of("estimate.territories.noWater"));
                }
                visitsByName.computeIfAbsent(label, any -> new HashSet<>()).add(at);
                mouth(row, at.river());
            });
            walked.rows().forEach(this::checkMouth);
        }

        /** Where the river of a visit joins another, if the row says so. */
        private void mouth(PlainTable.Row row, String river) {
            String joined = row.text(JOINS).strip();
            if (joined.isEmpty()) {
                return;
            }
            Mouth mouth = new Mouth(joined, km(row, JOINS_KM) * 1000);
            Mouth before = mouths.putIfAbsent(river, mouth);
            if (before != null && !before.equals(mouth)) {
                row.problem(
                        JOINS,
                        Message.of("estimate.territories.joinsTwice", river, before.river(), before.metres() / 1000));
            }
        }

        /** A river joins one that somebody visited, and not itself, be it through others. */
        private void checkMouth(PlainTable.Row row) {
            String joined = row.text(JOINS).strip();
            String river = where(walked, row).river();
            if (joined.isEmpty()) {
                return;
            }
            Set<String> passed = new HashSet<>(Set.of(river));
            Mouth next = mouths.get(river);
            while (next != null && passed.add(next.river())) {
                next = mouths.get(next.river());
            }
            if (next != null) {
                row.problem(JOINS, Message.of("estimate.territories.joinsItself", river));
            } else if (gathered.keySet().stream().noneMatch(at -> at.river().equals(joined))) {
                row.problem(JOINS, Message.of("estimate.territories.joinsNone", joined));
            }
        }

        private Where where(PlainTable table, PlainTable.Row row) {
            int season = table.has(SEASON) ? (int) row.whole(SEASON, 0, LAST_YEAR) : 1;
            String river = table.has(RIVER) ? row.filled(RIVER) : "";
            return new Where(season, river.isEmpty() ? Texts.of("estimate.territories.river") : river);
        }

        private LocalDate date(PlainTable.Row row, int season) {
            String day = row.filled("day");
            LocalDate first = LocalDate.of(season, 1, 1);
            if (isDate(day)) {
                try {
                    LocalDate date = LocalDate.parse(day);
                    return walked.has(SEASON) ? first.withDayOfYear(Math.min(DAYS, date.getDayOfYear())) : date;
                } catch (DateTimeParseException e) {
                    row.problem("day", Message.of("estimate.territories.day"));
                    return first;
                }
            }
            if (day.isEmpty()) {
                return first;
            }
            if (!day.matches("[+-]?[0-9]{1,9}([.]0*)?")) {
                row.problem("day", Message.of("estimate.territories.day"));
                return first;
            }
            long number = (long) Double.parseDouble(day) + dayOffset;
            if (number < 1 || number > DAYS) {
                row.problem("day", Message.of("estimate.territories.dayBeyond", DAYS));
                return first;
            }
            return first.withDayOfYear((int) number);
        }

        private double km(PlainTable.Row row, String column) {
            double km = row.needed(column);
            if (km < 0 || km > LONGEST_KM) {
                row.problem(column, Message.of("estimate.territories.km", LONGEST_KM));
                return 0;
            }
            return km;
        }

        void sightings() {
            List<Runnable> links = new ArrayList<>();
            seen.rows().forEach(row -> {
                String label = row.filled("sighting");
                String visit = row.filled(VISIT);
                double metres = km(row, "km") * 1000;
                OptionalDouble turned = row.number("turned_back_km").isPresent()
                        ? OptionalDouble.of(km(row, "turned_back_km") * 1000)
                        : OptionalDouble.empty();
                Set<String> others = others(row);
                List<Where> fitting = visit.isEmpty() ? List.of() : fitting(row, visit);
                if (fitting.size() == 1) {
                    Gathered of = gathered.computeIfAbsent(fitting.get(0), any -> new Gathered());
                    Long before = of.rows.putIfAbsent(label, row.number());
                    if (before != null) {
                        row.problem("sighting", Message.of("estimate.territories.sightingTwice", label, before));
                    }
                    of.sightings.put(label, new PlainSighting(label, visit, metres, others, turned));
                    links.add(() -> check(row, of, label, others));
                } else if (!visit.isEmpty()) {
                    row.problem(
                            VISIT,
                            fitting.isEmpty()
                                    ? Message.of("estimate.territories.noVisit", visit)
                                    : Message.of("estimate.territories.whichVisit", visit));
                }
            });
            links.forEach(Runnable::run);
        }

        private static Set<String> others(PlainTable.Row row) {
            Set<String> others = new HashSet<>();
            for (String other : row.text("simultaneous_with").split("[;|]", -1)) {
                if (!other.isBlank()) {
                    others.add(other.strip());
                }
            }
            return others;
        }

        /** Where a visit of this name was, as far as the row says. */
        private List<Where> fitting(PlainTable.Row row, String visit) {
            Where said = where(seen, row);
            return visitsByName.getOrDefault(visit, Set.of()).stream()
                    .filter(at -> !seen.has(SEASON) || at.season() == said.season())
                    .filter(at -> !seen.has(RIVER) || at.river().equals(said.river()))
                    .toList();
        }

        private void check(PlainTable.Row row, Gathered of, String label, Set<String> others) {
            for (String other : others) {
                PlainSighting met = of.sightings.get(other);
                if (met == null) {
                    row.problem("simultaneous_with", Message.of("estimate.territories.noOther", other));
                } else if (other.equals(label)) {
                    row.problem("simultaneous_with", Message.of("estimate.territories.itself"));
                } else if (!met.visit().equals(row.text(VISIT))) {
                    row.problem("simultaneous_with", Message.of("estimate.territories.otherVisit", other, met.visit()));
                }
            }
        }

        TerritoryTables tables() {
            List<PlainSeason> seasons = new ArrayList<>();
            gathered.forEach((where, of) -> seasons.add(new PlainSeason(
                    where.river(),
                    where.season(),
                    List.copyOf(of.visits.values()),
                    List.copyOf(of.sightings.values()))));
            List<Message> warnings = new ArrayList<>(walked.warnings());
            warnings.addAll(seen.warnings());
            return new TerritoryTables(seasons, mouths, warnings);
        }
    }
}
