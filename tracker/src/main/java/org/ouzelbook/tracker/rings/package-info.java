/**
 * Colour rings as they are read in the field, and the birds that a reading fits. Start with {@link
 * org.ouzelbook.tracker.rings.RingReading}. Depends on {@code tracker.domain}.
 */
@NullMarked
package org.ouzelbook.tracker.rings;

import org.jspecify.annotations.NullMarked;
