/**
 * The line along the water: its length, the place on it nearest to a point on the ground, and distance along the water
 * from river to river. Start with {@link org.ouzelbook.tracker.river.RiverNetwork}. Depends on {@code tracker.domain}.
 */
@NullMarked
package org.ouzelbook.tracker.river;

import org.jspecify.annotations.NullMarked;
