/**
 * Looks in files that are meant for everybody for what would tell a nest, a ring or a person. Every public output goes through
 * {@link org.ouzelbook.ui.app.leak.LeakCheck} before it is written.
 */
@NullMarked
package org.ouzelbook.ui.app.leak;

import org.jspecify.annotations.NullMarked;
