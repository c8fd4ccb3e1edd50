/** Bundles: everything that a book holds in one zip, to be put together with another book. */
@NullMarked
package org.ouzelbook.tracker.exchange.bundle;

import org.jspecify.annotations.NullMarked;
