/**
 * A line as one writes it in a notebook, read as sightings, or as the start or the end of a visit. Start with
 * {@link org.ouzelbook.tracker.notebook.NotebookLine}. Depends on {@code tracker.domain} and {@code tracker.place}.
 */
@NullMarked
package org.ouzelbook.tracker.notebook;

import org.jspecify.annotations.NullMarked;
