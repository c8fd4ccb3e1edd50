/**
 * The book: one file that keeps every record, the history of every change, and its own backups. Start with {@link
 * org.ouzelbook.tracker.store.Book}. Depends on {@code tracker.domain} and {@code tracker.river}.
 */
@NullMarked
package org.ouzelbook.tracker.store;

import org.jspecify.annotations.NullMarked;
