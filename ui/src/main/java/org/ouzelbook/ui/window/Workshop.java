package org.ouzelbook.ui.window;

import java.util.List;

/**
 * Everything that works beside the window's thread, each on its own, so that a line is saved at once whatever else is going on.
 *
 * @param saving opens, reads and changes the book
 * @param mapping maps the seasons that were changed
 * @param counting counts by the model, which takes longest
 * @param telling works out findings and sentences
 */
record Workshop(BackgroundWork saving, BackgroundWork mapping, BackgroundWork counting, BackgroundWork telling)
        implements AutoCloseable {
    Workshop() {
        this(new BackgroundWork(), new BackgroundWork(), new BackgroundWork(), new BackgroundWork());
    }

    /** {@return all of them} */
    List<BackgroundWork> all() {
        return List.of(saving, mapping, counting, telling);
    }

    /** Asks whatever runs now to stop, and to leave everything as it was. */
    void stop() {
        all().forEach(BackgroundWork::stop);
    }

    /** Lets no further work start. */
    @Override
    public void close() {
        all().forEach(BackgroundWork::close);
    }
}
