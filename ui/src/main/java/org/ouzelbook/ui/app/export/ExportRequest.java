package org.ouzelbook.ui.app.export;

import java.nio.file.Path;
import java.util.Optional;
import org.ouzelbook.tracker.exchange.export.Audience;

/**
 * What to export, and how.
 *
 * @param book the book
 * @param format the form
 * @param audience who may read it
 * @param publishing how records are published, for {@link ExportFormat#DARWIN_CORE}
 * @param season only records of this year; empty for all, with the territories of the last one
 * @param out where to; empty for a name made of the book's, which may be written again
 * @param replace whether a file that is there may be written over
 */
public record ExportRequest(
        Path book,
        ExportFormat format,
        Audience audience,
        Publishing publishing,
        Optional<Integer> season,
        Optional<Path> out,
        boolean replace) {}
