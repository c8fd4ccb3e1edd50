/**
 * Walks recorded by a receiver: waypoints as rows of sightings, tracks as rows of visits with what they cover. Start with {@link
 * org.ouzelbook.tracker.exchange.trip.GpxTrip}. Depends on {@code tracker.domain}, {@code tracker.river}, {@code exchange.cell} and
 * {@code exchange.file}.
 */
@NullMarked
package org.ouzelbook.tracker.exchange.trip;

import org.jspecify.annotations.NullMarked;
