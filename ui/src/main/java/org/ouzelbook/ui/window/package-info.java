/**
 * JavaFX panes and their view-models.
 */
@NullMarked
package org.ouzelbook.ui.window;

import org.jspecify.annotations.NullMarked;
