/**
 * Comparison of two rates. Start with {@link org.ouzelbook.stats.estimator.rate.RateComparison}. Depends on {@code
 * stats.estimator}, its {@code interval} and Commons Math.
 */
@NullMarked
package org.ouzelbook.stats.estimator.rate;

import org.jspecify.annotations.NullMarked;
