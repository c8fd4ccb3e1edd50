/**
 * From records to answers: what a season's or a book's records mean, in the terms of the field. Start with
 * {@link org.ouzelbook.stats.survey.TerritoryMap}. Depends on {@code stats.estimator} and {@code tracker.domain} and {@code
 * tracker.river}; knows no store and no screen.
 */
@NullMarked
package org.ouzelbook.stats.survey;

import org.jspecify.annotations.NullMarked;
