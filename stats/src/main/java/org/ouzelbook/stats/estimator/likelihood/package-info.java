/**
 * Maximum likelihood for models whose parts are linear in named terms. Start with {@link
 * org.ouzelbook.stats.estimator.likelihood.LikelihoodFit}. Depends on {@code stats.estimator} and Commons Math.
 */
@NullMarked
package org.ouzelbook.stats.estimator.likelihood;

import org.jspecify.annotations.NullMarked;
