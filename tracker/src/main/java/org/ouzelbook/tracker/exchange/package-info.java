/**
 * Tables from outside into the book: what each column means, one reader for each kind of row, and what to tell about rows
 * that cannot be read. Start with {@link org.ouzelbook.tracker.exchange.TableKind}. Depends on {@code tracker.domain},
 * {@code tracker.river} and {@code tracker.store}.
 */
@NullMarked
package org.ouzelbook.tracker.exchange;

import org.jspecify.annotations.NullMarked;
