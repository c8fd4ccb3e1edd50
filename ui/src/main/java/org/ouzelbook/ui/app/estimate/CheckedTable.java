package org.ouzelbook.ui.app.estimate;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.ouzelbook.stats.estimator.exposure.WatchedNest;
import org.ouzelbook.stats.estimator.likelihood.Covariate;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.NestOutcome;
import org.ouzelbook.tracker.exchange.cell.Words;

/**
 * Checks of nests, with the columns {@code nest}, {@code date} and {@code stage}, made into intervals: from each check that found eggs or
 * young to the next of the same nest, if that found the nest alive, a success or a failure. Survival may depend on the stage at its start.
 */
final class CheckedTable {
    private static final String STAGE = "stage";
    private static final String EGG_STAGE = "eggs";
    private static final List<String> COLUMNS = List.of("nest", "date", STAGE);
    private static final Set<String> EGGS = Set.of("eggs", "egg", "laying", "incubating", "clutch");
    private static final Set<String> YOUNG = Set.of("young", "chicks", "chick", "nestlings", "brood");
    private static final Set<String> NOTHING_CERTAIN = Set.of("", "empty", "unknown", "building", "complete", "?");

    private final PlainTable table;
    private final List<WatchedNest> nests = new ArrayList<>();
    private final List<String> stages = new ArrayList<>();
    private int withoutDays;
    private int unknownEnds;
    private boolean succeeded;

    private CheckedTable(PlainTable table) {
        this.table = table;
    }

    /** One check; neither alive nor ended if nothing certain was seen. */
    private record Check(PlainTable.Row row, LocalDate date, Optional<String> alive, Optional<NestOutcome> ended) {}

    /** {@return whether the table is one of checks} */
    static boolean isOne(Path file) {
        List<String> known = List.of("nest", "date", STAGE, "days", "survived");
        List<String> header = PlainTable.header(file, known::contains).stream()
                .map(PlainTable::plain)
                .toList();
        return header.containsAll(COLUMNS) && !header.contains("days");
    }

    /**
     * {@return the intervals between the checks of a table}
     *
     * @param file the table
     * @param covariates {@code stage}, or nothing
     * @throws BadTable if the table must be mended first
     */
    static WatchedTable read(Path file, List<String> covariates) {
        PlainTable table = PlainTable.read(file, COLUMNS, List.of(), List.of());
        List<String> other = covariates.stream()
                .filter(name -> !PlainTable.plain(name).equals(STAGE))
                .toList();
        if (!other.isEmpty()) {
            table.problem(Message.of("estimate.table.lacks", other, COLUMNS));
        }
        table.needsRows();
        return new CheckedTable(table).read(!covariates.isEmpty());
    }

    private WatchedTable read(boolean byStage) {
        Map<String, List<Check>> byNest = new LinkedHashMap<>();
        table.rows()
                .forEach(row -> check(row)
                        .ifPresent(check -> byNest.computeIfAbsent(row.filled("nest"), key -> new ArrayList<>())
                                .add(check)));
        byNest.values().forEach(this::intervals);
        table.check();
        List<Message> warnings = new ArrayList<>(table.warnings());
        if (withoutDays > 0) {
            warnings.add(Message.of("estimate.nests.withoutDays", withoutDays));
        }
        if (unknownEnds > 0) {
            warnings.add(Message.of("estimate.nests.unknownEnds", unknownEnds));
        }
        if (succeeded) {
            warnings.add(Message.of("estimate.nests.success"));
        }
        return new WatchedTable(
                nests, nests.size(), byStage ? List.of(Covariate.levels(STAGE, stages)) : List.of(), warnings);
    }

    private Optional<Check> check(PlainTable.Row row) {
        Optional<LocalDate> date = Optional.empty();
        try {
            date = Optional.of(LocalDate.parse(row.filled("date")));
        } catch (DateTimeParseException e) {
            row.problem("date", Message.of("estimate.nests.date"));
        }
        String text = row.text(STAGE).toLowerCase(Locale.ROOT);
        Optional<String> alive = EGGS.contains(text)
                ? Optional.of(EGG_STAGE)
                : YOUNG.contains(text) ? Optional.of("young") : Optional.empty();
        Optional<NestOutcome> ended = Words.OUTCOMES.term(text).filter(outcome -> outcome != NestOutcome.UNKNOWN);
        if (alive.isEmpty() && ended.isEmpty() && !NOTHING_CERTAIN.contains(text)) {
            row.problem(STAGE, Message.of("estimate.nests.stage"));
        }
        return date.map(day -> new Check(row, day, alive, ended));
    }

    private void intervals(List<Check> checks) {
        List<Check> inOrder = checks.stream()
                .sorted(Comparator.comparing(Check::date).thenComparing(check -> check.row.number()))
                .collect(Collectors.toList());
        Optional<Check> before = Optional.empty();
        Optional<Check> end = Optional.empty();
        for (Check check : inOrder) {
            if (end.isPresent()) {
                check.row.problem("date", Message.of("estimate.nests.endedAlready", end.get().date));
            } else if (check.alive.isPresent() || check.ended.isPresent()) {
                if (check.alive.equals(Optional.of(EGG_STAGE))
                        && before.isPresent()
                        && !before.get().alive.equals(check.alive)) {
                    check.row.problem(STAGE, Message.of("estimate.nests.eggsAfterYoung", before.get().date));
                }
                before.ifPresent(from -> interval(from, check));
                before = check.alive.isPresent() ? Optional.of(check) : Optional.empty();
                end = check.ended.map(outcome -> check);
            }
        }
        unknownEnds += end.isEmpty() && inOrder.get(inOrder.size() - 1).alive.isEmpty() ? 1 : 0;
    }

    private void interval(Check from, Check to) {
        long days = ChronoUnit.DAYS.between(from.date, to.date);
        if (days == 0) {
            withoutDays++;
            return;
        }
        boolean survived = !to.ended.equals(Optional.of(NestOutcome.FAILURE));
        succeeded |= to.ended.equals(Optional.of(NestOutcome.SUCCESS));
        nests.add(new WatchedNest(List.of(new WatchedNest.Days(nests.size(), (double) days)), survived));
        stages.add(from.alive.orElseThrow());
    }
}
