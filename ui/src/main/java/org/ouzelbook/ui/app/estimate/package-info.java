/**
 * Estimators on plain tables, without a book: a file in, a record out that has the names of the JSON. Start with {@link
 * org.ouzelbook.ui.app.estimate.EstimateLine}. No JavaFX, no printing.
 */
@NullMarked
package org.ouzelbook.ui.app.estimate;

import org.jspecify.annotations.NullMarked;
