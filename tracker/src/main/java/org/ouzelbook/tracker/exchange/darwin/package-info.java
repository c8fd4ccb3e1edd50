/**
 * Darwin Core archives: records of a book as sampling events, occurrences and measurements that other data sets can be joined
 * with, and back. Start with {@link org.ouzelbook.tracker.exchange.darwin.DarwinCoreArchive}. Depends on {@code tracker.domain},
 * {@code tracker.river}, {@code exchange.export} and {@code exchange.file}.
 *
 * <p>Sources: Darwin Core terms and text guide, TDWG; Humboldt Extension for ecological inventories, TDWG 2024.
 */
@NullMarked
package org.ouzelbook.tracker.exchange.darwin;

import org.jspecify.annotations.NullMarked;
