package org.ouzelbook.ui.strip;

/**
 * A place on a drawing that answers to a click, a key or a question.
 *
 * @param area where it lies
 * @param subject what it stands for
 * @param name what it is called aloud
 */
public record HitArea(Rect area, Subject subject, String name) {}
