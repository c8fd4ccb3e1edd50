package org.ouzelbook.stats.simulate.fieldwork;

import org.ouzelbook.tracker.domain.Species;

/**
 * How nests are looked for and after.
 *
 * @param species whose nests
 * @param found probability that a nest is found before it ends
 * @param everyDays usual days between two checks
 * @param seenInto probability that a check counts what the nest holds
 * @param outcomeKnown probability that the last check shows how it ended
 */
public record NestSettings(Species species, double found, int everyDays, double seenInto, double outcomeKnown) {}
