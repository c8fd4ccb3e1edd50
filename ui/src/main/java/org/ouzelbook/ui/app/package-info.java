/**
 * Use cases, one class each, shared by the window and the command line, and the one file of texts. No JavaFX, no printing.
 */
@NullMarked
package org.ouzelbook.ui.app;

import org.jspecify.annotations.NullMarked;
