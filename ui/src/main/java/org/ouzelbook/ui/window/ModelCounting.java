package org.ouzelbook.ui.window;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.ouzelbook.ui.app.ModelShading;
import org.ouzelbook.ui.app.ShadeByModel;
import org.ouzelbook.ui.app.Texts;

/** Counts by the model beside everything else, as soon as there is something to count; the strip shows it when it is ready. */
final class ModelCounting {
    private final BookViewModel book;
    private final Work work;

    /**
     * @param book the book
     * @param work does the counting, and nothing else
     * @param stop stops what it is doing
     */
    ModelCounting(BookViewModel book, Work work, Runnable stop) {
        this.book = book;
        this.work = work;
        book.contents().addListener((property, before, now) -> {
            stop.run();
            now.filter(there -> !there.maps().isEmpty() && there.behind().isEmpty())
                    .ifPresent(this::count);
        });
    }

    private void count(BookContents there) {
        work.start(
                Texts.of("window.work.model"),
                progress -> ShadeByModel.of(there.records(), there.maps().values(), progress),
                shadings -> show(there, shadings),
                this::failed);
    }

    private void show(BookContents there, Map<Integer, ModelShading> shadings) {
        if (book.contents().get().equals(Optional.of(there))) {
            book.shade(shadings);
        }
    }

    private void failed(Throwable failure) {
        if (!(failure instanceof CancellationException)) {
            book.failed(failure);
        }
    }
}
