/**
 * Cuts the points on a line into clusters. Start with {@link
 * org.ouzelbook.stats.estimator.segmentation.Partition}. Depends on nothing but the JDK.
 */
@NullMarked
package org.ouzelbook.stats.estimator.segmentation;

import org.jspecify.annotations.NullMarked;
