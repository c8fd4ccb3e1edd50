/**
 * Survival of marked animals that are seen again, or not. Start with {@link
 * org.ouzelbook.stats.estimator.markresight.MArray}. Depends on {@code stats.estimator} and Commons Math.
 */
@NullMarked
package org.ouzelbook.stats.estimator.markresight;

import org.jspecify.annotations.NullMarked;
