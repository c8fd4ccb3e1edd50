package org.ouzelbook.ui.strip;

/**
 * A point of a drawing, in pixels from its top left corner.
 *
 * @param x to the right
 * @param y downwards
 */
public record Point(double x, double y) {}
