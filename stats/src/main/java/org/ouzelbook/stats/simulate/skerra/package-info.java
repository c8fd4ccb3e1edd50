/**
 * The invented island of the demo: its rivers, its people, ten seasons of its birds, and the field files that the people
 * kept. Start with {@link org.ouzelbook.stats.simulate.skerra.SkerraFiles}. Nothing here is of use for another river.
 * Depends on {@code stats.simulate}, its packages, {@code tracker.domain} and {@code tracker.river}.
 */
@NullMarked
package org.ouzelbook.stats.simulate.skerra;

import org.jspecify.annotations.NullMarked;
