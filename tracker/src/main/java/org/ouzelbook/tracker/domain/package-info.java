/**
 * The records and vocabularies of the field: rivers, visits, sightings, nests, rings, samples, and the quantities they
 * are told in. Start with {@link org.ouzelbook.tracker.domain.Sighting}. Depends on the JDK only.
 */
@NullMarked
package org.ouzelbook.tracker.domain;

import org.jspecify.annotations.NullMarked;
