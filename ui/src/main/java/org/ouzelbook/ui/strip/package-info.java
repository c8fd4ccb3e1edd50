/**
 * The river strip as a list of shapes, and the pens that draw them. The layout knows no JavaFX.
 */
@NullMarked
package org.ouzelbook.ui.strip;

import org.jspecify.annotations.NullMarked;
