/**
 * Counts of territories held against rivers with known truth: the bench that makes {@code docs/calibration.md}. Start with
 * {@link org.ouzelbook.stats.simulate.calibration.Calibration}. Depends on {@code stats.simulate.mechanism} and {@code
 * stats.survey}.
 */
@NullMarked
package org.ouzelbook.stats.simulate.calibration;

import org.jspecify.annotations.NullMarked;
