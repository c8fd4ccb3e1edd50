/**
 * Records on their way out of a book, in a public form that tells no nest and no name, or in a private one: tables, and features
 * for maps, and the writers of each format. Start with {@link org.ouzelbook.tracker.exchange.export.RecordTables}. Depends on
 * {@code tracker.domain}, {@code tracker.river} and {@code exchange.file}.
 */
@NullMarked
package org.ouzelbook.tracker.exchange.export;

import org.jspecify.annotations.NullMarked;
