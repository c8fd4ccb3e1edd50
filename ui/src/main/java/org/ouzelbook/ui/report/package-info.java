/**
 * The page for the local group: HTML with inline SVG. No JavaFX.
 */
@NullMarked
package org.ouzelbook.ui.report;

import org.jspecify.annotations.NullMarked;
