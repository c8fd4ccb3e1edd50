/**
 * Rising or falling: log-linear Poisson models of counts by site and season, and rank tests. Start with {@link
 * org.ouzelbook.stats.estimator.trend.LineTrend} or {@link org.ouzelbook.stats.estimator.trend.RankTrend}. Depends on {@code
 * stats.estimator}, its {@code interval} and Commons Math.
 */
@NullMarked
package org.ouzelbook.stats.estimator.trend;

import org.jspecify.annotations.NullMarked;
