/**
 * Spreadsheet files of the Office Open XML form, read sheet by sheet as text tables and written from typed cells. Start with
 * {@link org.ouzelbook.tracker.exchange.xlsx.Workbook}. Depends on {@code tracker.domain}, {@code exchange.cell} and
 * {@code exchange.file}.
 */
@NullMarked
package org.ouzelbook.tracker.exchange.xlsx;

import org.jspecify.annotations.NullMarked;
