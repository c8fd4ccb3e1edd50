package org.ouzelbook.ui.cli;

import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.ui.app.Texts;

/** One line that tells a waiting person how far the work has come, on a screen only, and goes away at the end. */
final class ProgressLine implements Progress, AutoCloseable {
    private static final long PAUSE_NANOS = 200_000_000;
    private static final String CLEAR_LINE = "\r\u001b[K";

    private final Terminal terminal;
    private String what;
    private long shownAt = System.nanoTime();
    private boolean shown;

    /**
     * Starts silent; the line appears when the work has taken a moment.
     *
     * @param terminal where to
     * @param what what is being done, such as "Reading sightings.csv"
     */
    ProgressLine(Terminal terminal, String what) {
        this.terminal = terminal;
        this.what = what;
    }

    /** Says that something else is being done now. */
    ProgressLine now(String doing) {
        what = doing;
        return this;
    }

    @Override
    public boolean goOn(long done, long total) {
        long now = System.nanoTime();
        if (terminal.errIsScreen() && now - shownAt >= PAUSE_NANOS) {
            shownAt = now;
            shown = true;
            String far = total > 0
                    ? Texts.of("cli.progress.share", what, (double) done / total)
                    : Texts.of("cli.progress.count", what, done);
            terminal.err().print(CLEAR_LINE + far);
            terminal.err().flush();
        }
        return true;
    }

    @Override
    public void close() {
        if (shown) {
            terminal.err().print(CLEAR_LINE);
            terminal.err().flush();
        }
    }
}
