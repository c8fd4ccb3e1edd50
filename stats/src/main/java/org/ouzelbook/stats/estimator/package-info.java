/**
 * Pure estimators: numbers in, {@link org.ouzelbook.stats.estimator.Answer}s out, with nothing of birds in them. Start with
 * {@link org.ouzelbook.stats.estimator.Estimate}. Depends on Commons Math only.
 */
@NullMarked
package org.ouzelbook.stats.estimator;

import org.jspecify.annotations.NullMarked;
