/**
 * Ways out of a book: tables for spreadsheets and analysis, maps for other programs, in a public and a private form. Start with
 * {@link org.ouzelbook.ui.app.export.ExportBook}. Depends on {@code tracker}, {@code stats.survey} and {@code ui.app}.
 */
@NullMarked
package org.ouzelbook.ui.app.export;

import org.jspecify.annotations.NullMarked;
