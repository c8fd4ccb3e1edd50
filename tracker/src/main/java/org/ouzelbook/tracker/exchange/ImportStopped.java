package org.ouzelbook.tracker.exchange;

import org.ouzelbook.tracker.domain.Progress;

/** The surveyor stopped an import; nothing of it is in the book. */
public final class ImportStopped extends RuntimeException {
    private static final long serialVersionUID = 1;
    private static final int EVERY = 1000;

    private ImportStopped() {
        super("Stopped on request");
    }

    /** Tells how far the work is, every so many rows, and ends it if asked to. */
    static void ask(Progress progress, long done, long total) {
        if (done % EVERY == 0 && !progress.goOn(done, total)) {
            throw new ImportStopped();
        }
    }
}
