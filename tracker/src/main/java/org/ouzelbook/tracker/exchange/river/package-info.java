/**
 * Readers of river lines and landmarks: GeoJSON, GPX and KML. Start with {@link org.ouzelbook.tracker.exchange.river.RiverFile}. Depends on
 * {@code tracker.domain}, {@code tracker.river}, {@code exchange.cell} and {@code exchange.file}.
 */
@NullMarked
package org.ouzelbook.tracker.exchange.river;

import org.jspecify.annotations.NullMarked;
