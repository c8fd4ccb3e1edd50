package org.ouzelbook.tracker.exchange.cell;

/**
 * A cell of a table and where it stands.
 *
 * @param row its row in the file's own counting, the first row being 1
 * @param column the name of its column, as the file has it
 * @param text what it holds
 */
public record CellAt(long row, String column, String text) {}
