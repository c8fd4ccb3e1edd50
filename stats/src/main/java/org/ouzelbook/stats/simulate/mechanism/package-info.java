/**
 * Seasons on invented rivers with known territories, on plain numbers, by mechanisms that differ in how birds share the water
 * and how they are found: what a count of territories is checked against. Start with {@link
 * org.ouzelbook.stats.simulate.mechanism.SimulatedBook}. Depends on {@code stats.simulate} alone.
 */
@NullMarked
package org.ouzelbook.stats.simulate.mechanism;

import org.jspecify.annotations.NullMarked;
