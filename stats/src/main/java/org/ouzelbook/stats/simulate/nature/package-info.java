/**
 * What happens on a simulated river, whether anybody looks or not: sites, pairs and their ground, broods, lives, the river
 * bed. Start with {@link org.ouzelbook.stats.simulate.nature.Nature}. Depends on {@code stats.simulate} and {@code
 * tracker.domain}.
 */
@NullMarked
package org.ouzelbook.stats.simulate.nature;

import org.jspecify.annotations.NullMarked;
