package org.ouzelbook.stats.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.ouzelbook.stats.survey.Notebook.ARREL;
import static org.ouzelbook.stats.survey.Notebook.at;
import static org.ouzelbook.stats.survey.Notebook.key;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.occupancy.OccupancyFit;
import org.ouzelbook.stats.survey.SiteOccupancy.Model;
import org.ouzelbook.stats.survey.SiteSettings.Found;
import org.ouzelbook.stats.survey.SiteSettings.Kind;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.LandmarkKind;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.NestStage;
import org.ouzelbook.tracker.domain.Species;

class SiteOccupancyTest {
    private static final SiteSettings USUAL = SiteSettings.usualFor(Species.DIPPER);

    private static SiteSettings sites(Kind kind, Found found) {
        return new SiteSettings(kind, 500, 100, found, USUAL.coveredShare(), USUAL.season());
    }

    private static SiteOccupancy of(
            Notebook book, SiteSettings settings, Model model, boolean compare, Integer... years) {
        return SiteOccupancy.of(
                book.records(), Species.DIPPER, List.of(years), Water.ALL, settings, model, compare, 0.95);
    }

    private static SiteOccupancy of(Notebook book, SiteSettings settings) {
        return of(book, settings, Model.CONSTANT, false, 2026);
    }

    private static List<String> histories(SiteOccupancy found) {
        return found.histories().stream().map(site -> String.join(" ", site)).toList();
    }

    /** Four stretches of 500 m; the second visit ended at km 1.2, the third was in spate, the last after the season. */
    private static Notebook notebook() {
        return new Notebook()
                .visit("V1", "2026-03-01", ARREL, 0, 2)
                .visit("V2", "2026-03-20", ARREL, 0, 1.2)
                .visit("V3", "2026-04-05", ARREL, 0, 2, false)
                .visit("V4", "2026-04-20", ARREL, 0, 2)
                .visit("V5", "2026-09-20", ARREL, 0, 2)
                .bird("onTheLine", "V1", 0.5)
                .noted()
                .bird("beyondTheTurn", "V2", 1.1)
                .noted()
                .bird("inSpate", "V3", 1.3)
                .noted()
                .bird("pair", "V4", 0.2)
                .pair()
                .noted()
                .bird("song", "V4", 1.9)
                .doing(Activity.SINGING)
                .noted()
                .bird("young", "V5", 1.3)
                .aged(Age.INDEPENDENT_JUVENILE)
                .noted()
                .casual("byChance", "2026-04-02", ARREL, 1.3)
                .noted();
    }

    /** Worked by hand from the notebook above. */
    @Test
    void aSiteThatAVisitDidNotCoverIsMissingAndNeverAZero() {
        SiteOccupancy found = of(notebook(), USUAL);

        assertThat(histories(found)).containsExactly("001", "100", "0-0", "0-1");
        assertThat(found.sites())
                .extracting(site -> site.stretch().lower().km())
                .containsExactly(0.0, 0.5, 1.0, 1.5);
        assertThat(found.visits().naive().get(0).detected()).isEqualTo(3);
        assertThat(found.warnings())
                .contains(Message.of("occupancy.warning.partly", 1), Message.of("occupancy.warning.unused", 3L));
    }

    @Test
    void whatCountsAsFoundIsASetting() {
        assertThat(histories(of(notebook(), sites(Kind.STRETCHES, Found.PROBABLE))))
                .containsExactly("001", "000", "0-0", "0-0");
        assertThat(of(notebook(), sites(Kind.STRETCHES, Found.CONFIRMED)).fit())
                .isInstanceOfSatisfying(
                        Answer.NotEstimable.class,
                        not -> assertThat(not.because().reason()).isEqualTo(Reason.NEVER_DETECTED));
    }

    /** A check of a nest with eggs on the day of a walk is a find; on another day there was no walk that could have missed it. */
    @Test
    void aNestInUseOnTheDayOfAVisitIsAFind() {
        Notebook book = notebook()
                .nest("N1", ARREL, 1.3)
                .check("N1", "2026-04-20", NestStage.EGGS)
                .nest("N2", ARREL, 0.7)
                .check("N2", "2026-04-21", NestStage.EGGS);

        assertThat(histories(of(book, USUAL))).containsExactly("001", "100", "0-1", "0-1");
        assertThat(histories(of(book, sites(Kind.STRETCHES, Found.CONFIRMED))))
                .containsExactly("000", "000", "0-1", "0-0");
    }

    @Test
    void sitesMayBeNamed() {
        Notebook book = notebook()
                .reach("lower", ARREL, 0, 1)
                .reach("upper", ARREL, 1, 2)
                .landmark(new Landmark(key("M"), "Mill Bridge", LandmarkKind.BRIDGE, at(ARREL, 0.2), List.of(), false))
                .landmark(new Landmark(key("O"), "Otter Stone", LandmarkKind.ROCK, at(ARREL, 0.3), List.of(), false))
                .landmark(new Landmark(key("K"), "Kirk Weir", LandmarkKind.WEIR, at(ARREL, 1.95), List.of(), false));

        SiteOccupancy reaches = of(book, sites(Kind.REACHES, Found.ADULT));
        SiteOccupancy places = of(book, sites(Kind.PLACES, Found.ADULT));

        assertThat(histories(reaches)).containsExactly("101", "0-1");
        assertThat(places.sites())
                .extracting(site -> site.name().orElseThrow() + " "
                        + Math.round(site.stretch().lower().metres()) + " "
                        + Math.round(site.stretch().upper().metres()))
                .containsExactly("Mill Bridge 100 250", "Otter Stone 250 400", "Kirk Weir 1850 2000");
        assertThat(histories(places)).containsExactly("001", "000", "0-1");
    }

    /**
     * Eight sites, two visits to each: two found twice, two once, four never. With two visits the likelihood is highest at p = 2 x₂ / (x₁
     * + 2 x₂) = 2/3 and ψ = (x₁ + x₂) / n / (1 − (1 − p)²) = 9/16, worked by hand from MacKenzie et al. (2002), equation 1.
     */
    @Test
    void twoVisitsHaveAnAnswerInClosedForm() {
        Notebook book = new Notebook().visit("V1", "2026-03-01", ARREL, 0, 4).visit("V2", "2026-03-20", ARREL, 0, 4);
        for (double km : new double[] {0.1, 0.6, 2.2}) {
            book.bird("a" + km, "V1", km).noted();
        }
        for (double km : new double[] {0.3, 0.8, 3.7}) {
            book.bird("b" + km, "V2", km).noted();
        }

        OccupancyFit fit = of(book, USUAL).fit().found().orElseThrow();

        assertThat(fit.occupancy().get(0).found().orElseThrow().value()).isCloseTo(9 / 16.0, within(1e-6));
        assertThat(fit.probabilities().get(1).estimate().found().orElseThrow().value())
                .isCloseTo(2 / 3.0, within(1e-6));
    }

    @Test
    void comparesAFewModelsAndSaysIfAnotherIsMuchBetter() {
        Notebook book = new Notebook();
        IntStream.rangeClosed(2021, 2024).forEach(year -> {
            for (String day : List.of("-03-01", "-03-20", "-04-10")) {
                String visit = year + day;
                book.visit(visit, visit, ARREL, 0, 6);
                for (int site = 0; site < 12; site++) {
                    boolean found = day.equals("-04-10") ? site < 9 : site < 2 + year - 2021;
                    if (found) {
                        book.bird(visit + site, visit, site / 2.0 + 0.2).noted();
                    }
                }
            }
        });

        SiteOccupancy found = of(book, USUAL, Model.CONSTANT, true, 2021, 2022, 2023, 2024);
        SiteOccupancy byVisit = of(
                book,
                USUAL,
                new Model(List.of(), List.of(), List.of(), List.of("visit")),
                true,
                2021,
                2022,
                2023,
                2024);

        assertThat(found.compared().get(0).model().detection())
                .extracting(one -> one.name())
                .containsExactly("day");
        assertThat(found.compared().stream().mapToDouble(row -> row.weight()).sum())
                .isCloseTo(1, within(1e-9));
        assertThat(found.warnings()).extracting(Message::key).contains("occupancy.warning.betterModel");
        assertThat(byVisit.compared()).hasSize(2);
        assertThat(byVisit.warnings()).extracting(Message::key).doesNotContain("occupancy.warning.betterModel");
    }

    @Test
    void aSeasonThatNobodyWalkedIsBridged() {
        Notebook book = notebook();
        for (String day : List.of("2024-03-01", "2024-03-20")) {
            book.visit(day, day, ARREL, 0, 2).bird("x" + day, day, 0.3).noted();
        }

        SiteOccupancy found = of(book, USUAL, Model.CONSTANT, false, 2024, 2026);

        assertThat(found.seasons()).containsExactly(2024, 2025, 2026);
        assertThat(histories(found)).containsExactly("11  001", "00  100", "00  0-0", "00  0-1");
        assertThat(found.warnings()).contains(Message.of("occupancy.warning.gaps", List.of("2025")));
    }

    @Test
    void refusesATermThatAPartCannotDependOn() {
        assertThatIllegalArgumentException()
                .isThrownBy(() ->
                        of(notebook(), USUAL, new Model(List.of("day"), List.of(), List.of(), List.of()), false, 2026))
                .withMessageContaining("day");
        assertThat(of(new Notebook(), USUAL).fit()).isEqualTo(Answer.notEstimable(Reason.NO_VISITS));
    }
}
