package org.ouzelbook.stats.simulate.nature;

import org.ouzelbook.tracker.domain.Sex;

/**
 * One bird through its life.
 *
 * @param label its name in the truth; unique within its species
 * @param sex its sex
 * @param hatched the year in which it hatched
 */
public record Bird(String label, Sex sex, int hatched) {}
