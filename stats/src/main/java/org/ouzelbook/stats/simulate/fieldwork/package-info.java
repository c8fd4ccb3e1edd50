/**
 * What people see and write down of a simulated river: visits, sightings, nest checks, rings, kick samples. Start with
 * {@link org.ouzelbook.stats.simulate.fieldwork.SimulatedSurvey}. Depends on {@code stats.simulate}, {@code
 * stats.simulate.nature} and {@code tracker.domain}.
 */
@NullMarked
package org.ouzelbook.stats.simulate.fieldwork;

import org.jspecify.annotations.NullMarked;
