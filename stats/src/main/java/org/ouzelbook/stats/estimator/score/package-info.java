/**
 * What a kick sample of river-bed animals scores, and how a score goes with something else; start with {@link
 * org.ouzelbook.stats.estimator.score.SampleScore}. Depends on the estimator package and Commons Math only.
 */
@NullMarked
package org.ouzelbook.stats.estimator.score;

import org.jspecify.annotations.NullMarked;
