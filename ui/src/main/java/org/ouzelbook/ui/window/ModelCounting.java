package org.ouzelbook.ui.window;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.TerritoryModel;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.ui.app.BookCounts;
import org.ouzelbook.ui.app.ModelShading;
import org.ouzelbook.ui.app.ShadeByModel;
import org.ouzelbook.ui.app.Texts;

/**
 * Counts by the model beside everything else, as soon as there is something to count. It learns once; first the strip shows what it
 * makes of each season, then the findings and the story of the year go by its counts.
 */
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
            now.ifPresent(this::count);
        });
        book.model().onCountAgain(() -> book.contents().get().ifPresent(this::count));
    }

    /** @param progress tells whether somebody has stopped it meanwhile */
    private record Shaded(TerritoryModel model, Map<Integer, ModelShading> shadings, Progress progress) {}

    private void count(BookContents there) {
        if (!there.maps().isEmpty() && there.behind().isEmpty()) {
            work.start(
                    Texts.of("window.work.model"),
                    progress -> shaded(there, progress),
                    shaded -> show(there, shaded),
                    failure -> failed(there, failure));
        }
    }

    /** Learning takes about as long as looking at all seasons, and that about as long as counting on each water. */
    private static Shaded shaded(BookContents there, Progress progress) {
        TerritoryModel model = TerritoryModel.of(
                there.records(),
                there.species(),
                MapSettings.usualFor(there.species()),
                (done, of) -> progress.goOn(done, 3L * of));
        return new Shaded(
                model,
                ShadeByModel.of(model, there.maps().values(), (done, of) -> progress.goOn(of + done, 3L * of)),
                progress);
    }

    private void show(BookContents there, Shaded shaded) {
        if (!shaded.progress().goOn(2, 3)) {
            failed(there, new CancellationException());
        } else if (isShown(there)) {
            book.shade(shaded.shadings());
            work.start(
                    Texts.of("window.work.model"),
                    progress -> BookCounts.byModel(
                            shaded.model(),
                            there.records(),
                            there.species(),
                            (done, of) -> progress.goOn(2L * of + done, 3L * of)),
                    counts -> book.counted(there, counts),
                    failure -> failed(there, failure));
        }
    }

    private boolean isShown(BookContents there) {
        return book.contents().get().equals(Optional.of(there));
    }

    /** Counting that was overtaken by a change is no news; counting that somebody stopped is. */
    private void failed(BookContents there, Throwable failure) {
        if (isShown(there)) {
            book.model().stop();
            book.say(Texts.of("window.modelStopped"));
        }
        if (!(failure instanceof CancellationException)) {
            book.failed(failure);
        }
    }
}
