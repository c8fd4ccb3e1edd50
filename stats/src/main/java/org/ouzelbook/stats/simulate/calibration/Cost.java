package org.ouzelbook.stats.simulate.calibration;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.ouzelbook.stats.simulate.mechanism.BookPlan;
import org.ouzelbook.stats.simulate.mechanism.FieldPlan;
import org.ouzelbook.stats.simulate.mechanism.Mechanism.Kind;
import org.ouzelbook.stats.simulate.mechanism.SimulatedBook;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryModel;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Species;

/** What the model costs: how long it takes to learn from a book and then to count one season, as rivers and books grow. */
public final class Cost {
    private static final int[] KM = {12, 25, 50};
    private static final int[] SEASONS = {5, 10, 20};
    private static final int VISITS = 5;
    private static final double MEDIAN_METRES = 800;
    private static final long SEED = 3;

    private Cost() {}

    /**
     * Measures and writes the page.
     *
     * @param arguments the page to write
     * @throws IOException if it cannot be written
     * @throws IllegalArgumentException if it is not named
     */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length != 1) {
            throw new IllegalArgumentException("Name the page");
        }
        row(book(KM[0], SEASONS[0]), KM[0]);
        StringBuilder rows = new StringBuilder();
        for (int seasons : SEASONS) {
            for (int km : KM) {
                rows.append(row(book(km, seasons), km)).append('\n');
            }
        }
        Files.writeString(Path.of(arguments[0]), page(rows.toString()));
    }

    private static SimulatedBook book(int km, int seasons) {
        FieldPlan field = new FieldPlan(1000.0 * km, false, VISITS, 0.2, 0.3, 0.1);
        return SimulatedBook.of(new BookPlan(Kind.NEST_CENTRED, MEDIAN_METRES, seasons, field), SEED);
    }

    private static String row(SimulatedBook book, int km) {
        SurveyRecords records = BookCounter.records(book);
        long start = System.nanoTime();
        TerritoryModel model = TerritoryModel.of(records, Species.DIPPER, BookCounter.SETTINGS, Progress.NONE);
        long learnt = System.nanoTime();
        model.count(BookCounter.FIRST_YEAR, records.rivers().rivers().get(0).id(), Water.ALL)
                .orElseThrow()
                .expected();
        long counted = System.nanoTime();
        return String.format(
                Locale.ROOT,
                "| %d | %d | %d | %.1f | %.2f |",
                km,
                book.seasons().size(),
                records.sightings().size(),
                (learnt - start) / 1e9,
                (counted - learnt) / 1e9);
    }

    private static String page(String rows) {
        return String.format(
                """
                # What the count by model costs

                Made with

                ```
                java -cp 'ui/target/ouzelbook/lib/*' %s docs/model-cost.md
                ```

                on %d processors, Java %s. Invented rivers, %d visits a season, territories of %.0f m. Learning is done once a book and
                command; a season is then counted under 24 natures. Times on one machine, one run: compare them with each other.

                | km | seasons | sightings | seconds to learn | seconds for one season |
                |---|---|---|---|---|
                %s""",
                Cost.class.getName(),
                Runtime.getRuntime().availableProcessors(),
                System.getProperty("java.version"),
                VISITS,
                MEDIAN_METRES,
                rows);
    }
}
