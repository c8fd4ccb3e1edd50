package org.ouzelbook.ui.app;

import java.util.List;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.exchange.Finding;
import org.ouzelbook.tracker.exchange.Findings;
import org.ouzelbook.tracker.exchange.ImportResult;
import org.ouzelbook.tracker.exchange.Problem;
import org.ouzelbook.tracker.exchange.RiverResult;
import org.ouzelbook.tracker.exchange.TableResult;

/**
 * What an import did or would do; the names of its parts are those of the JSON that scripts read.
 *
 * @param imported whether anything was written into the book
 * @param rehearsal whether this was only a rehearsal
 * @param read rows read
 * @param added rows added, or that would be added
 * @param duplicates rows that were there already
 * @param noneSeen rows that say that none were seen, which their visits show already
 * @param open rows that wait for an answer
 * @param rejected rows with a problem
 * @param rivers what became of the rivers of files
 * @param files what became of each table
 * @param questions what is open, at most {@link Findings#KEPT} rows of each reason
 * @param problems what is wrong, at most as many
 * @param warnings what is odd, at most as many
 * @param skipped files of a folder or zip that were passed over
 * @param rejectedFiles the files into which the rows that stayed out were written
 */
public record ImportReport(
        boolean imported,
        boolean rehearsal,
        long read,
        long added,
        long duplicates,
        long noneSeen,
        long open,
        long rejected,
        List<RiverResult> rivers,
        List<TableResult> files,
        List<Reason> questions,
        List<Reason> problems,
        List<Reason> warnings,
        List<Message> skipped,
        List<String> rejectedFiles) {
    /**
     * Findings of one reason in one file.
     *
     * @param reason key of the reason, stable for scripts
     * @param count how many there are
     * @param first the first of them
     */
    public record Reason(String reason, long count, List<Problem> first) {}

    static ImportReport of(
            ImportResult result,
            ImportRequest.Mode mode,
            boolean imported,
            List<Message> skipped,
            List<String> rejected) {
        List<TableResult> tables = result.tables();
        return new ImportReport(
                imported,
                mode == ImportRequest.Mode.REHEARSE,
                tables.stream().mapToLong(TableResult::read).sum(),
                result.added(),
                tables.stream().mapToLong(TableResult::duplicates).sum(),
                tables.stream().mapToLong(TableResult::noneSeen).sum(),
                tables.stream().mapToLong(TableResult::open).sum(),
                tables.stream().mapToLong(TableResult::rejected).sum(),
                result.rivers(),
                tables,
                reasons(result.findings(), Finding.QUESTION),
                reasons(result.findings(), Finding.PROBLEM),
                reasons(result.findings(), Finding.WARNING),
                skipped,
                rejected);
    }

    private static List<Reason> reasons(Findings findings, Finding finding) {
        return findings.reasons(finding).stream()
                .map(reason -> new Reason(reason.first().get(0).message().key(), reason.count(), reason.first()))
                .toList();
    }

    /** {@return whether nothing of the files, no row and no river, is new to the book} */
    public boolean addsNothing() {
        return added == 0 && rivers.stream().noneMatch(RiverResult::added);
    }

    /** {@return whether the files held no row and no river at all, new or known} */
    public boolean heldNothing() {
        return read == 0 && rivers.isEmpty();
    }

    /** {@return whether nothing is wrong and nothing open} */
    public boolean isClean() {
        return questions.isEmpty() && problems.isEmpty();
    }
}
