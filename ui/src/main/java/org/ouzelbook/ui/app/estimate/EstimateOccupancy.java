package org.ouzelbook.ui.app.estimate;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.likelihood.LikelihoodFit;
import org.ouzelbook.stats.estimator.likelihood.ModelComparison;
import org.ouzelbook.stats.estimator.occupancy.OccupancyFit;
import org.ouzelbook.stats.estimator.occupancy.OccupancyModel;
import org.ouzelbook.stats.estimator.occupancy.SiteVisits;
import org.ouzelbook.stats.survey.CautionMessage;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.ui.app.WrongRequest;
import org.ouzelbook.ui.app.estimate.EstimateNests.Figure;

/** Occupancy of the sites of a table of visits, in one season or over many. */
public final class EstimateOccupancy {
    private EstimateOccupancy() {}

    /**
     * What is asked.
     *
     * @param occupancyBy what occupancy of the first season depends on
     * @param colonisationBy what colonisation depends on
     * @param extinctionBy what local extinction depends on
     * @param detectionBy what detection depends on
     * @param draws simulated sets of visits for the goodness of fit; empty for as many as take no long time
     * @param profile whether to give limits from the profile likelihood
     * @param compare whether to compare with the models that lack some of what is named
     * @param level level of the limits, between 0 and 1
     */
    public record Model(
            List<String> occupancyBy,
            List<String> colonisationBy,
            List<String> extinctionBy,
            List<String> detectionBy,
            Optional<Integer> draws,
            boolean profile,
            boolean compare,
            double level) {
        /** {@return the names in an option, with commas between} */
        public static List<String> names(String option) {
            return CovariateColumns.names(option);
        }

        List<String> names() {
            return Stream.of(occupancyBy, colonisationBy, extinctionBy, detectionBy)
                    .flatMap(List::stream)
                    .distinct()
                    .toList();
        }
    }

    /**
     * A fitted model.
     *
     * @param model how it was computed
     * @param source where that was published
     * @param n sites with a visit
     * @param sites sites of the table
     * @param seasons how many seasons
     * @param visits visits that were made
     * @param logLikelihood of the histories, without multinomial coefficients
     * @param aic Akaike's criterion
     * @param aicc the same for small samples; empty with too few sites
     * @param parameters coefficients and probabilities
     * @param profile limits of the coefficients from the profile likelihood; empty if not asked for
     * @param bySeason occupancy of the seasons
     * @param growth occupancy over that of the season before
     * @param turnover share of the occupied sites that were empty the season before
     * @param equilibrium share at which gains and losses balance; empty for one season
     * @param goodnessOfFit how well the model fits
     * @param models the model beside those that lack some of its covariates; empty if not asked for
     * @param occupied the sites one by one
     * @param level level of the limits
     * @param warnings what else to know
     */
    public record Occupied(
            Message model,
            String source,
            long n,
            int sites,
            int seasons,
            int visits,
            double logLikelihood,
            double aic,
            OptionalDouble aicc,
            List<Parameter> parameters,
            List<OccupancyFigures.Profile> profile,
            List<OccupancyFigures.Season> bySeason,
            List<OccupancyFigures.Change> growth,
            List<OccupancyFigures.Change> turnover,
            Optional<Figure> equilibrium,
            OccupancyFigures.Fit goodnessOfFit,
            List<OccupancyFigures.Compared> models,
            List<Site> occupied,
            double level,
            List<Message> warnings)
            implements TableAnswer {}

    /**
     * One site.
     *
     * @param site its name
     * @param probability that it was occupied, by season, given all its visits; empty where the visits do not tell
     */
    public record Site(String site, List<OptionalDouble> probability) {}

    /**
     * {@return the occupancy of a table's sites, or why it shows none}
     *
     * @param file the table
     * @param asked what is asked
     * @throws BadTable if the table must be mended first
     * @throws WrongRequest if changes are asked about and there is one season
     */
    public static TableAnswer of(Path file, Model asked) {
        OccupancyTable table = OccupancyTable.read(file, asked);
        SiteVisits visits = table.visits();
        if (visits.seasons() == 1
                && !(asked.colonisationBy().isEmpty() && asked.extinctionBy().isEmpty())) {
            throw new WrongRequest(Message.of("estimate.occupancy.oneSeason"));
        }
        Answer<OccupancyFit> answer = OccupancyFit.of(visits, table.model(), asked.level());
        if (answer instanceof Answer.NotEstimable<OccupancyFit> none) {
            return NoAnswer.of(OccupancyFit.method(visits), visits.visitedSites(), none.because(), table.warnings());
        }
        return occupied(table, asked, answer.found().orElseThrow());
    }

    private static Occupied occupied(OccupancyTable table, Model asked, OccupancyFit found) {
        LikelihoodFit fit = found.fit();
        Method method = OccupancyFit.method(table.visits());
        OccupancyFigures.Fit goodness = OccupancyFigures.Fit.of(found, asked.draws(), Progress.NONE);
        List<Message> warnings = new ArrayList<>(table.warnings());
        found.cautions().forEach(caution -> warnings.add(CautionMessage.of(caution)));
        goodness.warning().ifPresent(warnings::add);
        return new Occupied(
                MethodName.of(method),
                method.source(),
                fit.n(),
                table.visits().sites(),
                table.visits().seasons(),
                table.visits().visits().size(),
                fit.logLikelihood(),
                fit.aic(),
                fit.aicc(),
                OccupancyFigures.parameters(found, asked.level()),
                asked.profile() ? OccupancyFigures.profile(fit, asked.level()) : List.of(),
                OccupancyFigures.seasons(table.visits(), Answer.of(found), table.seasons()),
                OccupancyFigures.changes(found.growth(), table.seasons()),
                OccupancyFigures.changes(found.turnover(), table.seasons()),
                table.visits().seasons() == 1 ? Optional.empty() : Optional.of(Figure.of(found.equilibrium())),
                goodness,
                asked.compare() ? compared(table, asked.level()) : List.of(),
                sites(table, found),
                asked.level(),
                warnings);
    }

    private static List<Site> sites(OccupancyTable table, OccupancyFit found) {
        List<List<OptionalDouble>> probabilities = OccupancyFigures.probabilities(found);
        return IntStream.range(0, probabilities.size())
                .mapToObj(site -> new Site(table.siteNames().get(site), probabilities.get(site)))
                .toList();
    }

    private static List<OccupancyFigures.Compared> compared(OccupancyTable table, double level) {
        List<ModelComparison.Candidate<OccupancyModel>> candidates = new ArrayList<>();
        for (OccupancyModel model : table.model().simpler()) {
            OccupancyFit.of(table.visits(), model, level)
                    .found()
                    .ifPresent(found -> candidates.add(new ModelComparison.Candidate<>(model, found.fit())));
        }
        return ModelComparison.of(candidates).rows().stream()
                .map(OccupancyFigures.Compared::of)
                .toList();
    }
}
