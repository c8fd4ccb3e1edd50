package org.ouzelbook.tracker.exchange;

import java.util.List;
import org.ouzelbook.tracker.domain.Message;

/**
 * What became of an import.
 *
 * @param tables what became of each table, in the order in which they went in
 * @param findings what is to be told of their rows
 * @param skipped files that were passed over, with the reason
 */
public record ImportResult(List<TableResult> tables, Findings findings, List<Message> skipped) {
    /** Copies the lists. */
    public ImportResult {
        tables = List.copyOf(tables);
        skipped = List.copyOf(skipped);
    }

    /** {@return whether nothing is wrong and nothing open} */
    public boolean isClean() {
        return findings.count(Finding.PROBLEM) == 0 && findings.count(Finding.QUESTION) == 0;
    }

    /** {@return how many rows were added} */
    public long added() {
        return tables.stream().mapToLong(TableResult::added).sum();
    }
}
