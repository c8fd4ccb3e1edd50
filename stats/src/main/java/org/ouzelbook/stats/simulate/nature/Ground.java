package org.ouzelbook.stats.simulate.nature;

import java.util.UUID;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * A piece of a pair's water on one river; a pair at a confluence holds two.
 *
 * @param riverId the river
 * @param stretch the piece
 */
public record Ground(UUID riverId, Stretch stretch) {}
