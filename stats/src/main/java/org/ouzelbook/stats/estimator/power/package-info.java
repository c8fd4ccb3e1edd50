/**
 * What change a survey can show. Start with {@link org.ouzelbook.stats.estimator.power.CountPower}. Depends on {@code
 * stats.estimator}, its {@code trend} and Commons Math.
 */
@NullMarked
package org.ouzelbook.stats.estimator.power;

import org.jspecify.annotations.NullMarked;
