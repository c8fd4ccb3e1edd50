/**
 * Readers of river lines: GeoJSON and GPX. Start with {@link org.ouzelbook.tracker.exchange.river.RiverFile}. Depends on
 * {@code tracker.domain}, {@code tracker.river} and {@code exchange.file}.
 */
@NullMarked
package org.ouzelbook.tracker.exchange.river;

import org.jspecify.annotations.NullMarked;
