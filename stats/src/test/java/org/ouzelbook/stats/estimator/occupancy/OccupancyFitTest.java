package org.ouzelbook.stats.estimator.occupancy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.RealMatrix;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.likelihood.Coefficient;
import org.ouzelbook.stats.estimator.likelihood.Covariate;

/** Where values come from is told in {@code SOURCES.md} beside the tables. */
class OccupancyFitTest {
    private static final double LEVEL = 0.95;
    private static final Offset<Double> LIKELIHOOD = within(1e-6);
    private static final Offset<Double> ESTIMATE = within(1e-6);
    private static final Offset<Double> ERROR = within(1e-6);
    private static final List<List<String>> FOUR_VISITS = List.of(List.of("1", "2", "3", "4"));

    private static final DetectionTable SALAMANDERS =
            DetectionTable.of("salamanders.csv", List.of(List.of("1", "2", "3", "4", "5")));
    private static final DetectionTable SITES = DetectionTable.of("invented-sites.csv", FOUR_VISITS);
    private static final DetectionTable SEASONS = DetectionTable.of(
            "invented-seasons.csv",
            IntStream.rangeClosed(1, 4)
                    .mapToObj(season -> List.of(season + ".1", season + ".2", season + ".3"))
                    .toList());

    private static OccupancyFit fit(SiteVisits visits, OccupancyModel model) {
        return OccupancyFit.of(visits, model, LEVEL).found().orElseThrow();
    }

    private static OccupancyModel oneSeason(List<Covariate> occupancy, List<Covariate> detection) {
        return new OccupancyModel(occupancy, List.of(), List.of(), detection);
    }

    private static List<Estimate> probabilities(OccupancyFit fit) {
        return fit.probabilities().stream()
                .map(one -> one.estimate().found().orElseThrow())
                .toList();
    }

    private static double[] values(List<Estimate> estimates) {
        return estimates.stream().mapToDouble(Estimate::value).toArray();
    }

    private static double[] errors(List<Estimate> estimates) {
        return estimates.stream()
                .mapToDouble(estimate -> estimate.standardError().orElseThrow())
                .toArray();
    }

    private static List<Estimate> coefficients(OccupancyFit fit) {
        return fit.fit().coefficients(LEVEL).stream()
                .map(one -> one.estimate().found().orElseThrow())
                .toList();
    }

    private static List<Estimate> found(List<Answer<Estimate>> answers) {
        return answers.stream().map(answer -> answer.found().orElseThrow()).toList();
    }

    /** MacKenzie et al. (2006), chapter 4: −2 log-likelihood 161.7586, ψ 0.595 (0.123), p 0.259. */
    @Test
    void reproducesTheSalamandersWithConstantDetection() {
        OccupancyFit fit = fit(SALAMANDERS.visits(), OccupancyModel.constant());

        assertThat(-2 * fit.fit().logLikelihood()).isCloseTo(161.7585895, LIKELIHOOD);
        assertThat(values(probabilities(fit))).containsExactly(new double[] {0.594622560, 0.258729090}, ESTIMATE);
        assertThat(errors(probabilities(fit))).containsExactly(new double[] {0.122598544, 0.057701937}, ERROR);
        assertThat(fit.fit().covariance().getEntry(0, 1)).isCloseTo(-0.08329334767, ERROR);
        assertThat(fit.occupied(38)[0]).isCloseTo(0.2471561853, ESTIMATE);
        assertThat(fit.visits().naive()).containsExactly(new SiteVisits.Naive(39, 18));
        assertThat(fit.cautions()).isEmpty();
    }

    /**
     * Of a site without a find, the log odds are those of ψ plus the logarithm of 1 − p for each visit (MacKenzie et al. 2006, section
     * 4.4: ψ(1 − p)⁵ over that and 1 − ψ), so in one season the variance can be written down.
     */
    @Test
    void tellsOfJustTheseSitesWhatTheirVisitsLeaveOpen() {
        OccupancyFit fit = fit(SALAMANDERS.visits(), OccupancyModel.constant());
        double occupied = fit.occupied(38)[0];
        double chance = occupied * (1 - occupied);
        double byDetection = -5 * values(probabilities(fit))[1];
        RealMatrix covariance = fit.fit().covariance();
        double ofOdds = covariance.getEntry(0, 0)
                + 2 * byDetection * covariance.getEntry(0, 1)
                + byDetection * byDetection * covariance.getEntry(1, 1);

        Estimate share = fit.ofTheseSites().get(0).found().orElseThrow();

        assertThat(share.value()).isCloseTo((18 + 21 * occupied) / 39, ESTIMATE);
        assertThat(share.standardError().orElseThrow())
                .isCloseTo(Math.sqrt(21 * chance + Math.pow(21 * chance, 2) * ofOdds) / 39, ERROR);
        assertThat(share.lower()).isBetween(18 / 39.0, share.value());
        assertThat(share.upper()).isBetween(share.value(), 1.0);
    }

    /** Where a bird that is there is always found, the share found is the share. */
    @Test
    void nothingIsLeftOpenWhereDetectionIsCertain() {
        List<SiteVisit> visits = IntStream.range(0, 20)
                .boxed()
                .flatMap(site -> IntStream.range(0, 3).mapToObj(visit -> new SiteVisit(site, 0, visit, site < 8)))
                .toList();
        Estimate share = fit(new SiteVisits(20, 1, visits), OccupancyModel.constant())
                .ofTheseSites()
                .get(0)
                .found()
                .orElseThrow();

        assertThat(share.value()).isCloseTo(0.4, ESTIMATE);
        assertThat(share.upper() - share.lower()).isCloseTo(0, within(1e-3));
    }

    /** MacKenzie et al. (2006), chapter 4: −2 log-likelihood 155.7144, p 0.18, 0.13, 0.40, 0.35, 0.27. */
    @Test
    void reproducesTheSalamandersWithDetectionBySurvey() {
        OccupancyFit fit = fit(SALAMANDERS.visits(), oneSeason(List.of(), List.of(SALAMANDERS.occasionOfVisits())));

        assertThat(-2 * fit.fit().logLikelihood()).isCloseTo(155.7143912, LIKELIHOOD);
        assertThat(values(probabilities(fit)))
                .containsExactly(
                        new double[] {0.579878663, 0.17687166, 0.13265375, 0.39796124, 0.35374333, 0.26530749},
                        ESTIMATE);
        assertThat(errors(probabilities(fit)))
                .containsExactly(
                        new double[] {0.117567033, 0.08451253, 0.07405403, 0.11900406, 0.11369995, 0.10101810}, ERROR);
    }

    @Test
    void agreesWithAnIndependentFitWithCovariatesAndMissingVisits() {
        OccupancyFit fit = fit(SITES.visits(), oneSeason(List.of(SITES.ofSites("x")), List.of(SITES.ofVisits("w"))));

        assertThat(fit.fit().logLikelihood()).isCloseTo(-138.4811242, LIKELIHOOD);
        assertThat(values(coefficients(fit)))
                .containsExactly(new double[] {0.313645686, 1.158640261, -0.254684231, 0.746164717}, ESTIMATE);
        assertThat(errors(coefficients(fit)))
                .containsExactly(new double[] {0.304629549, 0.381202856, 0.199932499, 0.179469379}, ERROR);
        assertThat(fit.fit().covariance().getEntry(0, 2)).isCloseTo(-0.0176903649, ERROR);
        assertThat(fit.fit().covariance().getEntry(2, 3)).isCloseTo(-0.0055284097, ERROR);
        assertThat(fit.occupied(1)[0]).isCloseTo(0.107673995, ESTIMATE);
        assertThat(fit.occupied(5)[0]).isCloseTo(0.036339090, ESTIMATE);
        assertThat(IntStream.range(0, 80)
                        .mapToDouble(site -> fit.occupied(site)[0])
                        .sum())
                .isCloseTo(46.2358886, within(1e-5));
    }

    @Test
    void agreesWithAnIndependentFitOfDetectionByVisit() {
        OccupancyFit fit = fit(SITES.visits(), oneSeason(List.of(), List.of(SITES.occasionOfVisits())));

        assertThat(fit.fit().logLikelihood()).isCloseTo(-155.6002888, LIKELIHOOD);
        assertThat(values(probabilities(fit)).clone())
                .containsExactly(
                        new double[] {0.578317104, 0.445853734, 0.474454473, 0.465159536, 0.496210175}, ESTIMATE);
    }

    @Test
    void agreesWithAnIndependentFitOverSeasons() {
        OccupancyFit fit = fit(SEASONS.visits(), OccupancyModel.constant());

        assertThat(fit.fit().logLikelihood()).isCloseTo(-322.6599537, LIKELIHOOD);
        assertThat(values(probabilities(fit)))
                .containsExactly(new double[] {0.638958288, 0.127458346, 0.166421558, 0.522642035}, ESTIMATE);
        assertThat(errors(probabilities(fit)))
                .containsExactly(new double[] {0.0796392805, 0.0539176858, 0.0447082543, 0.0334825643}, ERROR);
        assertThat(values(found(fit.occupancy())))
                .containsExactly(new double[] {0.638958288, 0.578639634, 0.536047420, 0.505972201}, ESTIMATE);
        assertThat(values(found(fit.growth())))
                .containsExactly(new double[] {0.90559845, 0.92639250, 0.94389448}, ESTIMATE);
        assertThat(fit.equilibrium().found().orElseThrow().value()).isCloseTo(0.433708955, ESTIMATE);
    }

    @Test
    void agreesWithIndependentFitsBySeason() {
        OccupancyFit detection = fit(
                SEASONS.visits(),
                new OccupancyModel(List.of(), List.of(), List.of(), List.of(SEASONS.seasonOfVisits())));
        OccupancyFit changes = fit(
                SEASONS.visits(),
                new OccupancyModel(
                        List.of(), List.of(SEASONS.seasonOfChanges()), List.of(SEASONS.seasonOfChanges()), List.of()));

        assertThat(detection.fit().logLikelihood()).isCloseTo(-320.2585938, LIKELIHOOD);
        assertThat(values(probabilities(detection)))
                .containsExactly(
                        new double[] {
                            0.651654970, 0.123562507, 0.155070382, 0.482350017, 0.614888067, 0.516034218, 0.440313720
                        },
                        ESTIMATE);
        assertThat(changes.fit().logLikelihood()).isCloseTo(-321.0956890, LIKELIHOOD);
        assertThat(values(probabilities(changes)))
                .containsExactly(
                        new double[] {
                            0.595011465,
                            0.316834441,
                            0.026856360,
                            0.115783322,
                            0.152070064,
                            0.173968613,
                            0.196144088,
                            0.532628703
                        },
                        ESTIMATE);
        assertThat(changes.equilibrium()).isEqualTo(Answer.notEstimable(Reason.CHANGES_BY_SEASON));
    }

    @Test
    void agreesWithAnIndependentFitOverSeasonsWithACovariate() {
        OccupancyFit fit = fit(
                SEASONS.visits(),
                new OccupancyModel(
                        List.of(SEASONS.ofSites("x")), List.of(SEASONS.ofChanges("x")), List.of(), List.of()));

        assertThat(fit.fit().logLikelihood()).isCloseTo(-318.9805795, LIKELIHOOD);
        assertThat(values(coefficients(fit)))
                .containsExactly(
                        new double[] {0.483045427, 0.334153046, -1.551872608, 1.152883932, -1.530528903, 0.132898269},
                        ESTIMATE);
        assertThat(errors(coefficients(fit)))
                .containsExactly(
                        new double[] {0.339945266, 0.304878906, 0.441847821, 0.524948936, 0.316846577, 0.134275898},
                        ERROR);
    }

    /** The statistic of MacKenzie and Bailey (2004) over all 16 histories, summed up independently. */
    @Test
    void sumsTheHistoriesUp() {
        SiteVisits visits =
                DetectionTable.of("invented-histories.csv", FOUR_VISITS).visits();
        OccupancyFit fit = fit(visits, OccupancyModel.constant());

        assertThat(values(probabilities(fit))).containsExactly(new double[] {0.5035615355, 0.3888965290}, ESTIMATE);
        assertThat(fit.chiSquare()).isCloseTo(12.8174886769, within(1e-6));
    }

    /** From the occupancy of each season by hand, with finite differences of the likelihood's own fit. */
    @Test
    void turnoverIsWhatWasGainedOverWhatIsHeld() {
        OccupancyFit fit = fit(SEASONS.visits(), OccupancyModel.constant());

        Estimate first = fit.turnover().get(0).found().orElseThrow();

        assertThat(first.value()).isCloseTo(0.127458346 * (1 - 0.638958288) / 0.578639634, ESTIMATE);
        assertThat(first.lower()).isLessThan(first.value());
    }

    @Test
    void aSeasonAloneIsTheFirstOfMany() {
        SiteVisits one = SITES.visits();
        SiteVisits two = new SiteVisits(one.sites(), 2, one.visits());
        double alone = fit(one, OccupancyModel.constant()).fit().logLikelihood();

        OccupancyFit many = fit(two, OccupancyModel.constant());

        assertThat(many.fit().logLikelihood()).isCloseTo(alone, within(1e-8));
        assertThat(many.fit().coefficients(LEVEL).get(1).estimate())
                .isEqualTo(Answer.notEstimable(Reason.NOT_TOLD_APART));
        assertThat(many.fit().coefficients(LEVEL).get(0).estimate().found()).isPresent();
    }

    @Test
    void certainDetectionIsAProportion() {
        List<SiteVisit> visits = new ArrayList<>();
        for (int site = 0; site < 20; site++) {
            visits.add(new SiteVisit(site, 0, 0, site < 7));
            visits.add(new SiteVisit(site, 0, 1, site < 7));
        }
        OccupancyFit fit = fit(new SiteVisits(20, 1, visits), OccupancyModel.constant());

        List<Estimate> estimates = probabilities(fit);

        assertThat(estimates.get(0).value()).isCloseTo(0.35, within(1e-6));
        assertThat(estimates.get(0).standardError().orElseThrow()).isCloseTo(Math.sqrt(0.35 * 0.65 / 20), within(1e-5));
        assertThat(estimates.get(1).value()).isEqualTo(1);
        assertThat(estimates.get(1).lower()).isBetween(0.7, 0.95);
    }

    @Test
    void everywhereAndAlwaysIsOneWithALimit() {
        List<SiteVisit> visits = new ArrayList<>();
        for (int site = 0; site < 10; site++) {
            visits.add(new SiteVisit(site, 0, 0, true));
            visits.add(new SiteVisit(site, 0, 1, true));
        }
        OccupancyFit fit = fit(new SiteVisits(10, 1, visits), OccupancyModel.constant());

        assertThat(probabilities(fit)).allSatisfy(estimate -> {
            assertThat(estimate.value()).isEqualTo(1);
            assertThat(estimate.standardError()).isEmpty();
            assertThat(estimate.lower()).isBetween(0.6, 0.95);
        });
        assertThat(fit.goodnessOfFit(5, 1)).isEqualTo(Answer.notEstimable(Reason.NOTHING_TO_TEST));
    }

    @Test
    void refusesWhatSaysNothing() {
        List<SiteVisit> nothing = List.of(new SiteVisit(0, 0, 0, false), new SiteVisit(1, 0, 0, false));

        assertThat(OccupancyFit.of(new SiteVisits(3, 1, List.of()), OccupancyModel.constant(), LEVEL))
                .isEqualTo(Answer.notEstimable(Reason.NO_VISITS));
        assertThat(OccupancyFit.of(new SiteVisits(3, 1, nothing), OccupancyModel.constant(), LEVEL))
                .isEqualTo(Answer.notEstimable(Reason.NEVER_DETECTED, 2, 2));
    }

    @Test
    void oneVisitEachDoesNotTellOccupancyFromDetection() {
        List<SiteVisit> visits = new ArrayList<>();
        for (int site = 0; site < 30; site++) {
            visits.add(new SiteVisit(site, 0, 0, site < 12));
        }
        OccupancyFit fit = fit(new SiteVisits(30, 1, visits), OccupancyModel.constant());

        assertThat(fit.fit().coefficients(LEVEL))
                .extracting(Coefficient::estimate)
                .containsOnly(Answer.notEstimable(Reason.NOT_TOLD_APART));
        assertThat(fit.cautions()).extracting("reason").contains(Reason.ONE_VISIT_A_SEASON);
    }

    @Test
    void aCovariateThatSeparatesIsOneSided() {
        List<SiteVisit> visits = new ArrayList<>();
        double[] slope = new double[24];
        for (int site = 0; site < 24; site++) {
            slope[site] = site;
            for (int visit = 0; visit < 4; visit++) {
                visits.add(new SiteVisit(site, 0, visit, site >= 12 && (site + visit) % 3 != 0));
            }
        }
        OccupancyFit fit =
                fit(new SiteVisits(24, 1, visits), oneSeason(List.of(Covariate.numbers("slope", slope)), List.of()));

        Estimate estimate = coefficients(fit).get(1);

        assertThat(estimate.value()).isInfinite().isPositive();
        assertThat(estimate.lower()).isPositive().isFinite();
    }

    /**
     * Histories 10, 01, 11 and 00: with x₁ = 2 sites found once and x₂ = 1 twice, p = 2 x₂ / (x₁ + 2 x₂) = 1/2 and ψ = (3/4) / (3/4) = 1,
     * just at the end of its range, where the likelihood comes to rest only at infinity. Worked by hand from MacKenzie et al. (2002).
     */
    @Test
    void standsExactlyAtTheEndOfItsRange() {
        boolean[][] histories = {{true, false}, {false, true}, {true, true}, {false, false}};
        List<SiteVisit> visits = new ArrayList<>();
        for (int site = 0; site < 4; site++) {
            visits.add(new SiteVisit(site, 0, 0, histories[site][0]));
            visits.add(new SiteVisit(site, 0, 1, histories[site][1]));
        }
        List<Estimate> estimates = probabilities(fit(new SiteVisits(4, 1, visits), OccupancyModel.constant()));

        assertThat(estimates.get(0).value()).isEqualTo(1);
        assertThat(estimates.get(0).lower()).isBetween(0.3, 0.9);
        assertThat(estimates.get(1).value()).isCloseTo(0.5, within(1e-4));
    }
}
