package org.ouzelbook.stats.simulate.fieldwork;

/**
 * Somebody who walks the river.
 *
 * @param initials how the records name this person
 * @param skill log-odds added to finding a pair; 0 for the common run of observers
 */
public record Observer(String initials, double skill) {}
