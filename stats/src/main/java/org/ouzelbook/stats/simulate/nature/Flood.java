package org.ouzelbook.stats.simulate.nature;

import java.time.LocalDate;

/**
 * A spate that washes nests away.
 *
 * @param day when it came
 * @param shareOfNestsLost probability that a nest in use is lost
 */
public record Flood(LocalDate day, double shareOfNestsLost) {}
