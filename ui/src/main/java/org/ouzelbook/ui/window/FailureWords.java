package org.ouzelbook.ui.window;

import java.util.concurrent.CancellationException;
import org.ouzelbook.tracker.exchange.ImportStopped;
import org.ouzelbook.tracker.store.BookException;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.WrongRequest;

/** Why something did not work, in words. */
final class FailureWords {
    private FailureWords() {}

    /**
     * {@return the words}
     *
     * @param failure why it did not work
     */
    static String of(Throwable failure) {
        if (failure instanceof BookException refused) {
            return Texts.of(refused.told());
        }
        if (failure instanceof WrongRequest wrong) {
            return Texts.of(wrong.message());
        }
        if (failure instanceof CancellationException || failure instanceof ImportStopped) {
            return Texts.of("window.stopped");
        }
        return Texts.of("window.failed", String.valueOf(failure.getMessage()));
    }
}
