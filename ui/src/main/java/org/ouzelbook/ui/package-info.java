/** The program's door. Start with {@link org.ouzelbook.ui.Main}. Depends on {@code ui.cli}. */
@NullMarked
package org.ouzelbook.ui;

import org.jspecify.annotations.NullMarked;
