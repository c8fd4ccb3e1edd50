package org.ouzelbook.stats.survey;

import static org.ouzelbook.stats.survey.Notebook.ARREL;

import java.util.List;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;

/**
 * Thirteen sightings on six visits to km 12–17 of the Arrel Water in 2026, invented so that every rule of the mapping has
 * something to decide: expected are three territories (three to four), an edge and a bird without one.
 */
final class SixVisits {
    private static final List<String> DATES =
            List.of("2026-02-24", "2026-03-16", "2026-03-30", "2026-04-13", "2026-04-27", "2026-05-11");

    private SixVisits() {}

    static Notebook notebook() {
        Notebook book = new Notebook();
        for (int i = 0; i < DATES.size(); i++) {
            book.visit("V" + (i + 1), DATES.get(i), ARREL, 12, 17);
        }
        book.bird("a1", "V1", 12.5).doing(Activity.SINGING).noted();
        book.bird("a2", "V2", 12.7).pair().noted();
        book.bird("a3", "V3", 12.6).doing(Activity.CARRYING_MATERIAL).noted();
        book.bird("a4", "V5", 12.6).doing(Activity.CARRYING_FOOD).noted();
        book.bird("b1", "V1", 14.2).doing(Activity.SINGING).noted();
        book.bird("b2", "V2", 14.0).pair().sameTimeAs("c1").noted();
        book.bird("b3", "V4", 14.2).turnedBackAt(14.55).noted();
        book.bird("c1", "V2", 14.9).sameTimeAs("b2").noted();
        book.bird("c2", "V3", 15.2).doing(Activity.SINGING).noted();
        book.bird("c3", "V5", 15.1).turnedBackAt(14.6).noted();
        book.bird("d1", "V6", 16.8).aged(Age.INDEPENDENT_JUVENILE).noted();
        book.bird("e1", "V1", 16.9).doing(Activity.SINGING).noted();
        book.bird("e2", "V3", 17.1).noted();
        return book;
    }
}
