package org.ouzelbook.stats.simulate.mechanism;

/**
 * Two registrations of one visit that were seen at once, and so were different birds.
 *
 * @param one a registration
 * @param other another
 */
public record Together(String one, String other) {}
