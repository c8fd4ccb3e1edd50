/**
 * National and world grids: references in letters and digits, and the squares on the ground that they name. Start with
 * {@link org.ouzelbook.tracker.grid.GridSquare}. Depends on {@code tracker.domain} only.
 */
@NullMarked
package org.ouzelbook.tracker.grid;

import org.jspecify.annotations.NullMarked;
