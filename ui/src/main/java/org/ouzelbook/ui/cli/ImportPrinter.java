package org.ouzelbook.ui.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.exchange.Problem;
import org.ouzelbook.tracker.exchange.TableKind;
import org.ouzelbook.tracker.exchange.TableResult;
import org.ouzelbook.tracker.exchange.TableUnderstood;
import org.ouzelbook.ui.app.ImportReport;
import org.ouzelbook.ui.app.Texts;

/** Tells a person what an import understood, what is open or wrong, and what to do next. */
final class ImportPrinter {
    private static final int SHOWN_OF_A_REASON = 5;
    private static final int ROWS_NAMED = 12;

    private final Terminal terminal;
    private final boolean accepted;

    /**
     * A printer.
     *
     * @param terminal where to
     * @param accepted whether the surveyor said to import what is ready
     */
    ImportPrinter(Terminal terminal, boolean accepted) {
        this.terminal = terminal;
        this.accepted = accepted;
    }

    /**
     * Prints a report.
     *
     * @param report the report
     */
    void print(ImportReport report) {
        report.rivers()
                .forEach(river -> line(Texts.of(
                        river.added() ? "import.told.river.new" : "import.told.river.known",
                        river.name(),
                        river.km())));
        report.files().forEach(table -> table(report, table));
        report.skipped().forEach(message -> line(Texts.of(message)));
        heading("import.told.questions", report.questions());
        report.questions().forEach(this::question);
        heading("import.told.problems", report.problems());
        report.problems().forEach(this::listed);
        heading("import.told.warnings", report.warnings());
        report.warnings().forEach(this::listed);
        line("");
        line(ending(report));
    }

    private void line(String text) {
        terminal.out().println(text);
    }

    private void told(String key, Object... facts) {
        line("  " + Texts.of(key, facts));
    }

    private void heading(String key, List<ImportReport.Reason> reasons) {
        if (!reasons.isEmpty()) {
            line("");
            line(terminal.bold(Texts.of(key)));
        }
    }

    private void table(ImportReport report, TableResult table) {
        TableUnderstood as = table.understood();
        line(terminal.bold(Texts.of("import.told.table", table.file(), as.kind(), table.read() + table.totals())));
        switch (as.form()) {
            case TEXT -> told("import.told.header", as.headerRow(), as.encoding(), Texts.of(separator(as.separator())));
            case SHEET -> told("import.told.headerOfSheet", as.headerRow());
            case NO_TABLE -> {
                // its rows are the program's own
            }
        }
        told(
                "import.told.columns",
                as.columns().stream().map(ImportPrinter::column).collect(Collectors.joining(", ")));
        if (!as.unknownColumns().isEmpty()) {
            told(
                    as.keepsUnknownColumns() ? "import.told.unknownColumns" : "import.told.unknownColumnsLost",
                    as.unknownColumns(),
                    as.kind());
        }
        signs(as);
        boolean counted =
                as.columns().stream().anyMatch(column -> column.meaning().equals("count"));
        if (as.kind() == TableKind.SIGHTINGS && !counted) {
            told("import.told.blankCount");
        }
        as.usualRiver().ifPresent(river -> told("import.told.river", river));
        if (table.attached() > 0) {
            told("import.told.attached", table.attached());
        }
        if (table.totals() > 0) {
            told("import.told.totals", table.totals());
        }
        if (table.importedBefore()) {
            told("import.told.importedBefore");
        }
        line("  " + terminal.bold(counts(report, table)));
    }

    private static String column(TableUnderstood.ColumnMeaning column) {
        return column.name().equalsIgnoreCase(column.meaning())
                ? column.name()
                : Texts.of("import.told.column", column.name(), column.meaning());
    }

    private static String separator(char separator) {
        return "import.told.separator."
                + switch (separator) {
                    case ';' -> "semicolon";
                    case '\t' -> "tab";
                    default -> "comma";
                };
    }

    private void signs(TableUnderstood as) {
        as.dateOrder()
                .ifPresent(order -> as.dateCell()
                        .ifPresentOrElse(
                                cell -> told("import.told.dates", order, cell.row(), cell.text()),
                                () -> told("import.told.datesAnswered", order)));
        as.shortYearCell().ifPresent(cell -> told("import.told.shortYears", cell.row(), cell.text()));
        as.decimals()
                .ifPresent(sign -> as.decimalCell()
                        .ifPresentOrElse(
                                cell -> told("import.told.decimals", sign, cell.row(), cell.text()),
                                () -> told("import.told.decimalsAnswered", sign)));
    }

    private String counts(ImportReport report, TableResult table) {
        List<String> parts = new ArrayList<>();
        String first = report.imported() ? "import.told.added" : "import.told.ready";
        parts.add(Texts.of(report.rehearsal() ? "import.told.toAdd" : first, table.added()));
        add(parts, "import.told.duplicates", table.duplicates());
        add(parts, "import.told.noneSeen", table.noneSeen());
        add(parts, "import.told.open", table.open());
        add(parts, "import.told.rejected", table.rejected());
        return String.join(", ", parts);
    }

    private static void add(List<String> parts, String key, long count) {
        if (count > 0) {
            parts.add(Texts.of(key, count));
        }
    }

    /** One line for all rows that one answer settles. */
    private void question(ImportReport.Reason reason) {
        Problem first = reason.first().get(0);
        String key = first.cell().isEmpty() ? "import.told.question" : "import.told.questionCell";
        told(
                key,
                first.file(),
                Texts.of(first.message()),
                reason.count(),
                rows(reason.first(), reason.count()),
                first.column(),
                ProblemLine.shortened(first.cell()));
    }

    private void listed(ImportReport.Reason reason) {
        List<Problem> shown = reason.first()
                .subList(0, Math.min(SHOWN_OF_A_REASON, reason.first().size()));
        shown.forEach(problem -> line("  " + ProblemLine.of(problem)));
        long more = reason.count() - shown.size();
        if (more > 0) {
            List<Problem> rest =
                    reason.first().subList(shown.size(), reason.first().size());
            told("import.told.more", more, rows(rest, more));
        }
    }

    private static String rows(List<Problem> problems, long count) {
        String named = problems.stream()
                .limit(ROWS_NAMED)
                .map(problem -> Long.toString(problem.row()))
                .collect(Collectors.joining(", "));
        long more = count - Math.min(ROWS_NAMED, problems.size());
        return more > 0 ? Texts.of("import.told.rows", named, more) : named;
    }

    private String ending(ImportReport report) {
        List<String> sentences = new ArrayList<>();
        if (report.rehearsal()) {
            sentences.add(Texts.of("import.told.dry"));
        } else if (report.imported() && report.added() > 0) {
            sentences.add(Texts.of("import.told.done", report.added()));
        } else if (report.imported() && !report.addsNothing()) {
            sentences.add(Texts.of("import.told.riversDone"));
        } else if (!report.isClean()) {
            sentences.add(Texts.of("import.told.nothingImported"));
        }
        if (!report.isClean() && !accepted) {
            sentences.add(Texts.of("import.told.next"));
        } else if (report.isClean() && report.addsNothing() && !report.imported()) {
            sentences.add(Texts.of(report.heldNothing() ? "import.told.nothingThere" : "import.told.nothingNew"));
        } else if (report.rehearsal()) {
            sentences.add(Texts.of("import.told.dryNext"));
        }
        if (!report.rejectedFiles().isEmpty()) {
            sentences.add(Texts.of("import.told.leftOut", report.rejectedFiles()));
        }
        return String.join(" ", sentences);
    }
}
