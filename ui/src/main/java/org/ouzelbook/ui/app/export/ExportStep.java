package org.ouzelbook.ui.app.export;

import org.ouzelbook.tracker.domain.Progress;

/** What an export does, one thing after another. */
public enum ExportStep {
    /** Reads the book. */
    READING,
    /** Makes the file. */
    WRITING,
    /** Looks in a file for everybody for what must stay private. */
    LOOKING;

    /** Hears of an export. */
    @FunctionalInterface
    public interface Listener {
        /** Listens to nothing and never stops. */
        Listener NONE = step -> Progress.NONE;

        /**
         * {@return what hears how far a step has come}
         *
         * @param step the step that begins
         */
        Progress at(ExportStep step);
    }
}
