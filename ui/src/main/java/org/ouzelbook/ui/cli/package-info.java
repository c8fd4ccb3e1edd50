/**
 * Commands, tables and JSON for the terminal. No JavaFX types, so that a machine without a display can run it.
 */
@NullMarked
package org.ouzelbook.ui.cli;

import org.jspecify.annotations.NullMarked;
