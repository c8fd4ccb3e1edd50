package org.ouzelbook.tracker.place;

/**
 * A place at the start of some words.
 *
 * @param words how many words told it; 1 or more
 * @param reading what they mean
 */
public record PlaceScan(int words, PlaceReading reading) {}
