/**
 * Readers of river lines: GeoJSON and GPX. Start with {@link org.ouzelbook.tracker.exchange.river.RiverFile}. Depends on
 * {@code tracker.domain} and {@code tracker.river}.
 */
@NullMarked
package org.ouzelbook.tracker.exchange.river;

import org.jspecify.annotations.NullMarked;
