package org.ouzelbook.ui.app.leak;

import java.util.concurrent.CancellationException;
import org.ouzelbook.tracker.domain.Progress;

/** How far a look through a file has come: by its bytes as they are packed, and within a part by the searches that are over. */
final class LookProgress implements Runnable {
    private static final int SEARCHES = 6;

    private final Progress progress;
    private final long bytes;
    private long begin;
    private long end;
    private int searches;

    LookProgress(Progress progress, long bytes) {
        this.progress = progress;
        this.bytes = bytes;
    }

    /** The next part ends at this byte. */
    void part(long byteBehind) {
        begin = end;
        end = byteBehind;
        searches = 0;
        run();
    }

    /** A search through the part is over. */
    void searched() {
        searches = Math.min(SEARCHES, searches + 1);
        run();
    }

    /**
     * Tells.
     *
     * @throws CancellationException if the look is to stop
     */
    @Override
    public void run() {
        if (!progress.goOn(begin + (end - begin) * searches / SEARCHES, bytes)) {
            throw new CancellationException("Stopped while a file was looked through");
        }
    }
}
