/**
 * Which sites are occupied where birds may be missed: one season or many. Start with {@link
 * org.ouzelbook.stats.estimator.occupancy.OccupancyFit}. Depends on {@code stats.estimator}, its {@code likelihood} and Commons
 * Math.
 */
@NullMarked
package org.ouzelbook.stats.estimator.occupancy;

import org.jspecify.annotations.NullMarked;
