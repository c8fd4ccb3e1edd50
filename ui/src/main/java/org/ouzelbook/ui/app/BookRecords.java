package org.ouzelbook.ui.app;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.Predicate;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.store.BookView;
import org.ouzelbook.tracker.store.SightingQuery;

/**
 * Reads the records of a book as analyses want them: a bird that two people wrote down, a visit that they made together, and an
 * observer whose name is spelt in several ways, count once where a person decided that they are one.
 */
public final class BookRecords {
    private static final int TOLD_EVERY = 1000;

    private BookRecords() {}

    /**
     * {@return the records of a book}
     *
     * @param view the book
     * @param which which sightings
     * @param asked the days whose visits, sightings, nest checks and kick samples are read; all other records are read whole
     */
    public static SurveyRecords of(BookView view, SightingQuery which, Predicate<LocalDate> asked) {
        return once(view, asWritten(view, view.sightings(which)), asked);
    }

    /**
     * {@return the records of a book, of which those that were written as one bird or visit count once}
     *
     * @param view the book
     * @param written its records as they were written
     * @param asked the days whose visits, sightings, nest checks and kick samples are kept; all other records are kept whole
     */
    public static SurveyRecords once(BookView view, SurveyRecords written, Predicate<LocalDate> asked) {
        CountedOnce once = CountedOnce.of(view);
        return new SurveyRecords(
                written.rivers(),
                written.landmarks(),
                written.reaches(),
                once.visits(written.visits()).stream()
                        .filter(visit -> asked.test(visit.date()))
                        .toList(),
                once.sightings(written.sightings()).stream()
                        .filter(sighting -> asked.test(sighting.date()))
                        .toList(),
                written.nests(),
                written.nestChecks().stream()
                        .filter(check -> asked.test(check.date()))
                        .toList(),
                written.ringedBirds(),
                written.kickSamples().stream()
                        .filter(sample -> asked.test(sample.date()))
                        .toList(),
                written.decisions());
    }

    /**
     * {@return every record of a book as it was written, also those that stand for one bird or visit together}
     *
     * @param view the book
     */
    public static SurveyRecords asWritten(BookView view) {
        return asWritten(view, Progress.NONE);
    }

    /**
     * {@return every record of a book as it was written, also those that stand for one bird or visit together}
     *
     * @param view the book
     * @param progress hears how many sightings were read
     * @throws CancellationException if it is stopped
     */
    public static SurveyRecords asWritten(BookView view, Progress progress) {
        List<Sighting> sightings = new ArrayList<>();
        view.eachSighting(SightingQuery.ALL, sighting -> {
            sightings.add(sighting);
            if (sightings.size() % TOLD_EVERY == 0 && !progress.goOn(sightings.size(), 0)) {
                throw new CancellationException("Stopped while a book was read");
            }
        });
        return asWritten(view, sightings);
    }

    private static SurveyRecords asWritten(BookView view, List<Sighting> sightings) {
        return new SurveyRecords(
                view.network(),
                view.landmarks(),
                view.reaches(),
                view.visits(),
                sightings,
                view.nests(),
                view.nestChecks(),
                view.ringedBirds(),
                view.kickSamples(),
                view.decisions());
    }
}
