/**
 * Intervals for one proportion and for one rate. Start with {@link org.ouzelbook.stats.estimator.interval.WilsonInterval}.
 * Depends on {@code stats.estimator} and Commons Math.
 */
@NullMarked
package org.ouzelbook.stats.estimator.interval;

import org.jspecify.annotations.NullMarked;
