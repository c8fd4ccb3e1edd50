package org.ouzelbook.ui.app;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.exchange.ImportAnswers;

/**
 * What to import, and how.
 *
 * @param book the book
 * @param files files, folders and zips
 * @param answers what the surveyor says beforehand
 * @param mode how far to go
 * @param rejectedTo where to write rows that stay out; empty for a name of the program's choice
 * @param workingFolder where such files go
 * @param who who imports
 */
public record ImportRequest(
        Path book,
        List<Path> files,
        ImportAnswers answers,
        Mode mode,
        Optional<Path> rejectedTo,
        Path workingFolder,
        String who) {
    /** How far an import goes. */
    public enum Mode {
        /** Only tell what would be done. */
        REHEARSE,
        /** Import if everything is ready. */
        ALL_OR_NOTHING,
        /** Import what is ready, and write out the rest. */
        WHAT_IS_READY
    }

    /** Copies the files. */
    public ImportRequest {
        files = List.copyOf(files);
    }
}
