package org.ouzelbook.tracker.exchange;

import java.util.BitSet;
import java.util.EnumMap;
import java.util.Map;
import org.ouzelbook.tracker.domain.Entry;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Origin;

/** Counts what becomes of the rows of one table, hands on what is to be told of them, and remembers which stay out. */
final class TableTally {
    private final TableContext table;
    private final Findings findings;
    private final Map<Outcome, Long> outcomes = new EnumMap<>(Outcome.class);
    private final BitSet leftOut = new BitSet();
    private long rejected;
    private long open;
    private long totals;
    private long attached;
    private boolean fileAdded;

    TableTally(TableContext table, Findings findings) {
        this.table = table;
        this.findings = findings;
        this.fileAdded = table.book().importedFile(table.file().sha256()).isPresent();
    }

    /** Adds a record that a row made, and remembers where it came from. */
    void add(Entry entry, long row) {
        if (!fileAdded) {
            table.book().edit().add(table.file());
            fileAdded = true;
        }
        table.book().edit().add(entry, new Origin(table.file(), Math.toIntExact(row)));
    }

    /** Settles a row that is ready. */
    void settle(RowReader row, Outcome outcome) {
        outcomes.merge(outcome, 1L, Long::sum);
        if (outcome == Outcome.ADDED) {
            row.findings(Finding.WARNING).forEach(warning -> findings.add(Finding.WARNING, warning));
        }
    }

    /** Settles a row that says the same as an earlier row of its file. */
    void settleRepeated(RowReader row, long earlier) {
        outcomes.merge(Outcome.DUPLICATE, 1L, Long::sum);
        Problem repeated = new Problem(table.name(), row.number(), "", "", Message.of("import.row.repeated", earlier));
        findings.add(Finding.WARNING, repeated);
    }

    /** Settles a row that is not ready: it has a problem, or waits for an answer. */
    void leaveOut(RowReader row) {
        leftOut.set(Math.toIntExact(row.number()));
        if (row.has(Finding.PROBLEM)) {
            rejected++;
        } else {
            open++;
        }
        row.findings(Finding.PROBLEM).forEach(problem -> findings.add(Finding.PROBLEM, problem));
        row.findings(Finding.QUESTION).forEach(question -> findings.add(Finding.QUESTION, question));
    }

    void countTotals() {
        totals++;
    }

    void countAttached() {
        attached++;
    }

    long count(Outcome outcome) {
        return outcomes.getOrDefault(outcome, 0L);
    }

    long rejected() {
        return rejected;
    }

    long open() {
        return open;
    }

    long totals() {
        return totals;
    }

    long attached() {
        return attached;
    }

    /** {@return the numbers of the rows that stay out} */
    BitSet leftOut() {
        return (BitSet) leftOut.clone();
    }
}
