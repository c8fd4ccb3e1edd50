/**
 * Answers from several drawn sets of data, made one. Start with {@link
 * org.ouzelbook.stats.estimator.imputation.PooledEstimate}. Depends on {@code stats.estimator} only.
 */
@NullMarked
package org.ouzelbook.stats.estimator.imputation;

import org.jspecify.annotations.NullMarked;
