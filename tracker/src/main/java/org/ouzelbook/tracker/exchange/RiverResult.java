package org.ouzelbook.tracker.exchange;

/**
 * What became of a river in a file.
 *
 * @param name its name
 * @param km the length of its line, in km
 * @param added whether it was added; otherwise the book has it already
 */
public record RiverResult(String name, double km, boolean added) {}
