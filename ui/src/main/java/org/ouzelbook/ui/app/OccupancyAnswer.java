package org.ouzelbook.ui.app;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CancellationException;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.occupancy.OccupancyFit;
import org.ouzelbook.stats.survey.CautionMessage;
import org.ouzelbook.stats.survey.SiteOccupancy;
import org.ouzelbook.stats.survey.SiteSettings;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.estimate.EstimateNests.Figure;
import org.ouzelbook.ui.app.estimate.OccupancyFigures;
import org.ouzelbook.ui.app.estimate.OccupancyFigures.Change;
import org.ouzelbook.ui.app.estimate.OccupancyFigures.Compared;
import org.ouzelbook.ui.app.estimate.OccupancyFigures.Fit;
import org.ouzelbook.ui.app.estimate.OccupancyFigures.Season;
import org.ouzelbook.ui.app.estimate.Parameter;

/**
 * Which sites birds occupied, season by season, allowing for birds that were missed: the answer of {@code occupancy}. Its names are
 * those that scripts rely on. Sites may be nest sites: it is private.
 *
 * @param species whose sites
 * @param settings what a site, a visit and a detection are
 * @param sites how many sites
 * @param seasons how many seasons
 * @param visits how many visits to a site
 * @param model how it was computed
 * @param source where that was published
 * @param logLikelihood of the histories; empty without a fit
 * @param aic Akaike's criterion; empty without a fit
 * @param aicc the same for small samples; empty without a fit or with too few sites
 * @param parameters coefficients and probabilities
 * @param bySeason naive and estimated occupancy of the seasons
 * @param growth occupancy over that of the season before
 * @param turnover share of the occupied sites that were empty the season before
 * @param equilibrium share at which gains and losses balance; empty for one season
 * @param goodnessOfFit how well the model fits; empty without a fit
 * @param models models compared, the best first; empty if not asked for
 * @param occupied the sites one by one
 * @param level level of the limits
 * @param why why there is no fit
 * @param warnings what would mislead a reader who did not know it
 */
public record OccupancyAnswer(
        Species species,
        Settings settings,
        int sites,
        int seasons,
        int visits,
        Message model,
        String source,
        OptionalDouble logLikelihood,
        OptionalDouble aic,
        OptionalDouble aicc,
        List<Parameter> parameters,
        List<Season> bySeason,
        List<Change> growth,
        List<Change> turnover,
        Optional<Figure> equilibrium,
        Optional<Fit> goodnessOfFit,
        List<Compared> models,
        List<Site> occupied,
        double level,
        Optional<Message> why,
        List<Message> warnings) {
    /** About how much of the work is done when the model is fitted, and its fit has yet to be tested. */
    private static final double FITTED = 0.1;

    /**
     * What a site, a visit and a detection are.
     *
     * @param sites what the sites are
     * @param stretchMetres length of a stretch
     * @param placeMetres water on either side of a landmark
     * @param found what counts as a detection
     * @param coveredShare share of a site that a visit must cover
     * @param seasonFrom first day of the season
     * @param seasonTo last day of the season
     */
    public record Settings(
            SiteSettings.Kind sites,
            double stretchMetres,
            double placeMetres,
            SiteSettings.Found found,
            double coveredShare,
            MonthDay seasonFrom,
            MonthDay seasonTo) {
        private static Settings of(SiteSettings settings) {
            return new Settings(
                    settings.kind(),
                    settings.stretchMetres(),
                    settings.placeMetres(),
                    settings.found(),
                    settings.coveredShare(),
                    settings.season().seasonFrom(),
                    settings.season().seasonTo());
        }
    }

    /**
     * One site.
     *
     * @param site its name: that of its reach or landmark, or else its km
     * @param river its river
     * @param fromKm its lower end
     * @param toKm its upper end
     * @param history a sign for each visit, by season: 1 found, 0 not found, - not covered
     * @param probability that it was occupied, by season, given all its visits; empty where they do not tell, none without a fit
     */
    public record Site(
            String site,
            String river,
            double fromKm,
            double toKm,
            List<String> history,
            List<OptionalDouble> probability) {}

    /**
     * What is asked beside the scope.
     *
     * @param settings what is changed in the usual settings of the species
     * @param terms what the parts of the model depend on
     * @param compare whether to compare models
     * @param draws simulated sets of visits for the goodness of fit; empty for as many as take no long time
     */
    public record Question(
            UnaryOperator<SiteSettings> settings,
            SiteOccupancy.Model terms,
            boolean compare,
            Optional<Integer> draws) {}

    /**
     * {@return the occupancy of the sites of a book}
     *
     * @param book an open book
     * @param scope what is asked; without a season, of all seasons
     * @param question what else is asked
     * @throws WrongRequest if the book has no such river or reach, no visit that looked for the species, no named sites, or a part
     *     cannot depend on what was named
     */
    public static OccupancyAnswer of(Book book, Scope scope, Question question) {
        return of(SurveyReading.of(book, scope), question, Progress.NONE);
    }

    /**
     * {@return the occupancy of the sites of records that are read already}
     *
     * @param records every record
     * @param scope what is asked, of all days
     * @param question what else is asked
     * @param progress hears how far the work has come, and may stop it
     * @throws CancellationException if it is stopped
     * @throws WrongRequest as for a book
     */
    public static OccupancyAnswer of(SurveyRecords records, Scope scope, Question question, Progress progress) {
        return of(SurveyReading.of(records, scope), question, progress);
    }

    private static OccupancyAnswer of(SurveyReading reading, Question question, Progress progress) {
        Scope scope = reading.scope();
        List<Integer> seasons = scope.season().map(List::of).orElseGet(reading::seasons);
        if (reading.records().visits().stream()
                .filter(visit -> visit.lookedFor().contains(scope.species()))
                .map(Visit::date)
                .map(LocalDate::getYear)
                .noneMatch(seasons::contains)) {
            throw new WrongRequest(Message.of("app.occupancy.noVisits", scope.species()));
        }
        SiteSettings settings = question.settings.apply(SiteSettings.usualFor(scope.species()));
        check(question.terms);
        SiteOccupancy found = SiteOccupancy.of(
                reading.records(),
                scope.species(),
                seasons,
                reading.water(),
                settings,
                question.terms,
                question.compare,
                scope.level());
        if (found.sites().isEmpty()) {
            throw new WrongRequest(Message.of("app.occupancy.noSites", settings.kind()));
        }
        boolean changes = !question.terms.colonisationBy().isEmpty()
                || !question.terms.extinctionBy().isEmpty();
        if (found.seasons().size() == 1 && changes) {
            throw new WrongRequest(Message.of("app.occupancy.oneSeason"));
        }
        SurveyReading.goOn(progress);
        return of(found, question.draws, scope.level(), progress.part(FITTED, 1));
    }

    private static void check(SiteOccupancy.Model terms) {
        check("--occupancy-by", terms.occupancyBy(), SiteOccupancy.OCCUPANCY_TERMS);
        check("--colonisation-by", terms.colonisationBy(), SiteOccupancy.CHANGE_TERMS);
        check("--extinction-by", terms.extinctionBy(), SiteOccupancy.CHANGE_TERMS);
        check("--detection-by", terms.detectionBy(), SiteOccupancy.DETECTION_TERMS);
    }

    private static void check(String option, List<String> names, List<String> known) {
        names.stream().filter(name -> !known.contains(name)).findFirst().ifPresent(name -> {
            throw new WrongRequest(Message.of("app.occupancy.term", option, name, known));
        });
    }

    private static OccupancyAnswer of(SiteOccupancy found, Optional<Integer> draws, double level, Progress progress) {
        Optional<OccupancyFit> fit = found.fit().found();
        Optional<Fit> goodness = fit.map(one -> Fit.of(one, draws, progress));
        List<Message> warnings = new ArrayList<>(found.warnings());
        fit.ifPresent(one -> one.cautions().forEach(caution -> warnings.add(CautionMessage.of(caution))));
        goodness.flatMap(Fit::warning).ifPresent(warnings::add);
        return new OccupancyAnswer(
                found.species(),
                Settings.of(found.settings()),
                found.sites().size(),
                found.seasons().size(),
                found.visits().visits().size(),
                new Message("term.Method." + OccupancyFit.method(found.visits()).name(), List.of()),
                OccupancyFit.method(found.visits()).source(),
                Numbers.of(fit, one -> one.fit().logLikelihood()),
                Numbers.of(fit, one -> one.fit().aic()),
                fit.map(one -> one.fit().aicc()).orElse(OptionalDouble.empty()),
                fit.map(one -> OccupancyFigures.parameters(one, level)).orElse(List.of()),
                OccupancyFigures.seasons(found.visits(), found.fit(), found.seasons()),
                fit.map(one -> OccupancyFigures.changes(one.growth(), found.seasons()))
                        .orElse(List.of()),
                fit.map(one -> OccupancyFigures.changes(one.turnover(), found.seasons()))
                        .orElse(List.of()),
                fit.filter(one -> found.seasons().size() > 1).map(one -> Figure.of(one.equilibrium())),
                goodness,
                found.compared().stream().map(Compared::of).toList(),
                sites(found),
                level,
                found.fit() instanceof Answer.NotEstimable<OccupancyFit> not
                        ? Optional.of(CautionMessage.of(not.because()))
                        : Optional.empty(),
                warnings);
    }

    private static List<Site> sites(SiteOccupancy found) {
        List<List<String>> histories = found.histories();
        List<List<OptionalDouble>> probabilities =
                found.fit().found().map(OccupancyFigures::probabilities).orElse(List.of());
        return IntStream.range(0, found.sites().size())
                .mapToObj(place -> site(
                        found.sites().get(place),
                        histories.get(place),
                        probabilities.isEmpty() ? List.of() : probabilities.get(place)))
                .toList();
    }

    private static Site site(
            org.ouzelbook.stats.survey.Site site, List<String> history, List<OptionalDouble> probability) {
        double from = site.stretch().lower().km();
        double to = site.stretch().upper().km();
        return new Site(
                site.name().orElseGet(() -> String.format(Locale.ROOT, "km %.1f–%.1f", from, to)),
                site.river().name(),
                from,
                to,
                history,
                probability);
    }
}
