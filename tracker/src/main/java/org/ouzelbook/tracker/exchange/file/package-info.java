/**
 * Text tables as files: what is in a folder or zip, how a file is encoded and separated, its rows one by one. Start with
 * {@link org.ouzelbook.tracker.exchange.file.TableFile}. Depends on {@code tracker.domain} and FastCSV.
 */
@NullMarked
package org.ouzelbook.tracker.exchange.file;

import org.jspecify.annotations.NullMarked;
