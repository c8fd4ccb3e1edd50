/**
 * Rivers with known truth: for the demo, for planning, for checking the estimators. Start with {@link
 * org.ouzelbook.stats.simulate.fieldwork.SimulatedSurvey}. What happens on the river is in {@code nature}, what people see
 * of it in {@code fieldwork}, and the invented island of the demo in {@code skerra}; the arrows run {@code skerra →
 * fieldwork → nature}. Whole seasons on plain numbers, by several mechanisms, are in {@code mechanism}. Depends on {@code
 * tracker.domain} and {@code tracker.river}.
 */
@NullMarked
package org.ouzelbook.stats.simulate;

import org.jspecify.annotations.NullMarked;
