package org.ouzelbook.stats.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ouzelbook.stats.survey.Notebook.ARREL;

import java.time.Duration;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.survey.Territory.Standing;
import org.ouzelbook.stats.survey.TerritoryMap.RiverMap;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Message;

class OddBooksTest {
    private static RiverMap arrel(TerritoryMap map) {
        return map.rivers().get(0);
    }

    @Test
    void mapsAnEmptyBook() {
        TerritoryMap map = new Notebook().map(2026);

        assertThat(arrel(map).count().likely()).isZero();
        assertThat(arrel(map).surveyedKm()).isZero();
        assertThat(map.warnings()).isEmpty();
    }

    @Test
    void countsNothingWhereNobodyLooked() {
        Notebook book = new Notebook();
        book.casual("x", "2026-03-01", ARREL, 12).noted();
        book.casual("y", "2026-04-01", ARREL, 12).noted();

        TerritoryMap map = book.map(2026);

        assertThat(arrel(map).count().likely()).isZero();
        assertThat(arrel(map).territories().get(0).standing()).isEqualTo(Standing.OUTSIDE);
        assertThat(map.warnings()).extracting(Message::key).contains("map.warning.noEffort");
    }

    @Test
    void acceptsNothingAfterOneVisit() {
        Notebook book = new Notebook().visit("V1", "2026-03-01", ARREL, 10, 14);
        book.bird("x", "V1", 12).pair().noted();

        TerritoryMap map = book.map(2026);

        assertThat(arrel(map).count().likely()).isZero();
        assertThat(arrel(map).territories().get(0).because()).contains(Message.of("map.because.tooFew", 1, 1, 2));
        assertThat(map.warnings()).extracting(Message::key).contains("map.warning.fewVisits");
    }

    @Test
    void mapsVisitsWithoutABird() {
        RiverMap map = arrel(new Notebook()
                .visit("V1", "2026-03-01", ARREL, 10, 14)
                .visit("V2", "2026-04-01", ARREL, 10, 14)
                .map(2026));

        assertThat(map.surveyedKm()).isEqualTo(4.0);
        assertThat(map.territories()).isEmpty();
    }

    @Test
    void mapsEveryBirdAtOneStone() {
        Notebook book = new Notebook();
        for (int i = 1; i <= 5; i++) {
            book.visit("V" + i, "2026-04-" + (10 + i * 3), ARREL, 10, 14);
            book.bird("s" + i, "V" + i, 12).noted();
        }

        RiverMap map = arrel(book.map(2026));

        assertThat(map.count().likely()).isEqualTo(1);
        assertThat(map.territories().get(0).stretch().length()).isZero();
    }

    /** Generous: a hundredth of this is usual on an idle machine. */
    @Test
    void mapsThreeHundredBirdsInOneKilometre() {
        Notebook book = new Notebook();
        for (int i = 1; i <= 6; i++) {
            book.visit("V" + i, "2026-0" + (2 + i / 2) + "-" + (i % 2 == 0 ? "15" : "28"), ARREL, 10, 14);
        }
        Random random = new Random(7);
        for (int i = 0; i < 300; i++) {
            book.bird("x" + i, "V" + (1 + i % 6), 12 + random.nextDouble())
                    .aged(Age.ADULT)
                    .noted();
        }
        SurveyRecords records = book.records();

        RiverMap map = Assertions.assertTimeoutPreemptively(Duration.ofSeconds(30), () -> arrel(book.map(2026)));

        assertThat(map.territories())
                .extracting(territory -> territory.registrations().size())
                .isEqualTo(List.of(records.sightings().size()));
        assertThat(map.count().likely()).isEqualTo(1);
    }
}
