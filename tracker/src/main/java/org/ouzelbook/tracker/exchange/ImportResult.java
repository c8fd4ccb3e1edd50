package org.ouzelbook.tracker.exchange;

import java.util.List;

/**
 * What became of an import.
 *
 * @param rivers what became of the rivers
 * @param tables what became of each table, in the order in which they went in
 * @param findings what is to be told of their rows
 */
public record ImportResult(List<RiverResult> rivers, List<TableResult> tables, Findings findings) {
    /** Copies the lists. */
    public ImportResult {
        rivers = List.copyOf(rivers);
        tables = List.copyOf(tables);
    }

    /** {@return whether nothing is wrong and nothing open} */
    public boolean isClean() {
        return findings.count(Finding.PROBLEM) == 0 && findings.count(Finding.QUESTION) == 0;
    }

    /** {@return whether anything was added} */
    public boolean hasAdded() {
        return added() > 0 || rivers.stream().anyMatch(RiverResult::added);
    }

    /** {@return how many rows were added} */
    public long added() {
        return tables.stream().mapToLong(TableResult::added).sum();
    }
}
