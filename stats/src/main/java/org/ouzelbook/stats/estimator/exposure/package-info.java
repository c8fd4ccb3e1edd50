/**
 * Survival of nests from the days on which they were watched. Start with {@link
 * org.ouzelbook.stats.estimator.exposure.ExposureDays}. Depends on {@code stats.estimator} and Commons Math.
 */
@NullMarked
package org.ouzelbook.stats.estimator.exposure;

import org.jspecify.annotations.NullMarked;
