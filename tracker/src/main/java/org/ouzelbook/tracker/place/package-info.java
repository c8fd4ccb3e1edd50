/**
 * Where something was, as people write it: a landmark with an offset, a river km, or coordinates, turned into a place on a
 * river. Start with {@link org.ouzelbook.tracker.place.Places}. Depends on {@code tracker.domain} and {@code tracker.river}.
 */
@NullMarked
package org.ouzelbook.tracker.place;

import org.jspecify.annotations.NullMarked;
