/**
 * What people write in one cell of a table, read without guessing: dates, times, numbers and the words of the trade.
 * Start with {@link org.ouzelbook.tracker.exchange.cell.WrittenDate}. Depends on {@code tracker.domain}.
 */
@NullMarked
package org.ouzelbook.tracker.exchange.cell;

import org.jspecify.annotations.NullMarked;
