package org.ouzelbook.stats.simulate.mechanism;

import java.util.OptionalDouble;

/**
 * A bird or a pair met once.
 *
 * @param id its name, unique in its season
 * @param visit the number of its visit in the season's list, from 0
 * @param metres where it was written down, from the lower end of the river
 * @param turnedBackAtMetres where the bird, driven along, turned back; empty for most
 */
public record Registration(String id, int visit, double metres, OptionalDouble turnedBackAtMetres) {}
