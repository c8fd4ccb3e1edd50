package org.ouzelbook.ui.app;

import java.time.LocalDate;
import java.util.function.Predicate;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.tracker.store.BookView;
import org.ouzelbook.tracker.store.SightingQuery;

/**
 * Reads the records of a book as analyses want them: a bird that two people wrote down, a visit that they made together, and an
 * observer whose name is spelt in several ways, count once where a person decided that they are one.
 */
public final class BookRecords {
    private BookRecords() {}

    /**
     * {@return the records of a book}
     *
     * @param view the book
     * @param which which sightings
     * @param asked the days whose visits, sightings, nest checks and kick samples are read; all other records are read whole
     */
    public static SurveyRecords of(BookView view, SightingQuery which, Predicate<LocalDate> asked) {
        CountedOnce once = CountedOnce.of(view);
        return new SurveyRecords(
                view.network(),
                view.landmarks(),
                view.reaches(),
                once.visits(view.visits()).stream()
                        .filter(visit -> asked.test(visit.date()))
                        .toList(),
                once.sightings(view.sightings(which)).stream()
                        .filter(sighting -> asked.test(sighting.date()))
                        .toList(),
                view.nests(),
                view.nestChecks().stream()
                        .filter(check -> asked.test(check.date()))
                        .toList(),
                view.ringedBirds(),
                view.kickSamples().stream()
                        .filter(sample -> asked.test(sample.date()))
                        .toList(),
                view.decisions());
    }

    /**
     * {@return every record of a book as it was written, also those that stand for one bird or visit together}
     *
     * @param view the book
     */
    public static SurveyRecords asWritten(BookView view) {
        return new SurveyRecords(
                view.network(),
                view.landmarks(),
                view.reaches(),
                view.visits(),
                view.sightings(SightingQuery.ALL),
                view.nests(),
                view.nestChecks(),
                view.ringedBirds(),
                view.kickSamples(),
                view.decisions());
    }
}
