package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.likelihood.ModelComparison;
import org.ouzelbook.stats.estimator.occupancy.OccupancyFit;
import org.ouzelbook.stats.estimator.occupancy.OccupancyModel;
import org.ouzelbook.stats.estimator.occupancy.SiteVisit;
import org.ouzelbook.stats.estimator.occupancy.SiteVisits;
import org.ouzelbook.stats.survey.SiteDays.SiteDay;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;

/**
 * Which sites along the rivers birds occupied, season by season, allowing for birds that visits missed.
 *
 * <p>Sites are stretches, reaches or places; seasons are years; a visit is a day that covered the site. Sites that no visit ever
 * covered are not among those asked about.
 *
 * @param species whose sites
 * @param settings what a site, a visit and a detection are
 * @param seasons the seasons from the first to the last with a visit, those between without one too
 * @param sites the sites, river by river, going upstream
 * @param visits the visits to them, in the order of the seasons
 * @param terms what each part of the model depends on, by name
 * @param fit the fitted model, or why there is none
 * @param compared models compared, the best first; empty if not asked for
 * @param warnings what would mislead a reader who did not know it
 */
public record SiteOccupancy(
        Species species,
        SiteSettings settings,
        List<Integer> seasons,
        List<Site> sites,
        SiteVisits visits,
        Model terms,
        Answer<OccupancyFit> fit,
        List<ModelComparison.Row<OccupancyModel>> compared,
        List<Message> warnings) {
    /** What occupancy of the first season may depend on. */
    public static final List<String> OCCUPANCY_TERMS = List.of(SiteTerms.KM, SiteTerms.RIVER);

    /** What colonisation and extinction may depend on. */
    public static final List<String> CHANGE_TERMS = List.of(SiteTerms.SEASON, SiteTerms.KM, SiteTerms.RIVER);

    /** What detection may depend on. */
    public static final List<String> DETECTION_TERMS =
            List.of(SiteTerms.SEASON, SiteTerms.DAY, SiteTerms.VISIT, SiteTerms.KM, SiteTerms.RIVER);

    /** A criterion this much lower speaks for another model. Source: Burnham and Anderson (2002), section 2.6. */
    private static final double MUCH_BETTER = 2;

    /** Copies the lists. */
    public SiteOccupancy {
        seasons = List.copyOf(seasons);
        sites = List.copyOf(sites);
        compared = List.copyOf(compared);
        warnings = List.copyOf(warnings);
    }

    /**
     * What each part of a model depends on, by name; without names it is constant.
     *
     * @param occupancyBy of {@link #OCCUPANCY_TERMS}
     * @param colonisationBy of {@link #CHANGE_TERMS}
     * @param extinctionBy of {@link #CHANGE_TERMS}
     * @param detectionBy of {@link #DETECTION_TERMS}
     */
    public record Model(
            List<String> occupancyBy,
            List<String> colonisationBy,
            List<String> extinctionBy,
            List<String> detectionBy) {
        /** The model in which everything is constant. */
        public static final Model CONSTANT = new Model(List.of(), List.of(), List.of(), List.of());

        /** Copies the lists. */
        public Model {
            occupancyBy = List.copyOf(occupancyBy);
            colonisationBy = List.copyOf(colonisationBy);
            extinctionBy = List.copyOf(extinctionBy);
            detectionBy = List.copyOf(detectionBy);
        }
    }

    /**
     * {@return the occupancy of the sites of a book}
     *
     * @param records the records
     * @param species whose sites
     * @param years the seasons that are asked about
     * @param water the water that is asked about
     * @param settings what a site, a visit and a detection are
     * @param model what the model depends on
     * @param compare whether to compare it with others: those that lack some of its terms or, if it has none, a few sensible ones
     * @param level level of the limits, between 0 and 1
     * @throws IllegalArgumentException if a part of the model cannot depend on a term
     */
    public static SiteOccupancy of(
            SurveyRecords records,
            Species species,
            List<Integer> years,
            Water water,
            SiteSettings settings,
            Model model,
            boolean compare,
            double level) {
        List<Site> all = Site.all(records, water, settings);
        SiteDays found = SiteDays.of(records, species, years, all, settings);
        int[] known = found.days().stream()
                .mapToInt(SiteDay::site)
                .sorted()
                .distinct()
                .toArray();
        List<Site> sites = IntStream.of(known).mapToObj(all::get).toList();
        List<SiteDay> days = found.days().stream()
                .map(day ->
                        new SiteDay(Arrays.binarySearch(known, day.site()), day.date(), day.occasion(), day.found()))
                .toList();
        List<Integer> seasons = SiteTerms.seasons(days);
        SiteVisits visits = new SiteVisits(
                sites.size(),
                seasons.size(),
                days.stream()
                        .map(day -> new SiteVisit(
                                day.site(), seasons.indexOf(day.date().getYear()), day.occasion(), day.found()))
                        .toList());
        SiteTerms terms = new SiteTerms(sites, seasons, days);
        OccupancyModel asked = terms.model(model);
        Answer<OccupancyFit> fit =
                sites.isEmpty() ? Answer.notEstimable(Reason.NO_VISITS) : OccupancyFit.of(visits, asked, level);
        List<ModelComparison.Row<OccupancyModel>> compared =
                compare && fit.found().isPresent() ? compared(visits, model, asked, terms, level) : List.of();
        return new SiteOccupancy(
                species,
                settings,
                seasons,
                sites,
                visits,
                model,
                fit,
                compared,
                warnings(found, years, all, days, seasons, compared, asked));
    }

    private static List<ModelComparison.Row<OccupancyModel>> compared(
            SiteVisits visits, Model model, OccupancyModel asked, SiteTerms terms, double level) {
        List<OccupancyModel> models = model.equals(Model.CONSTANT)
                ? terms.worthComparing().stream().map(terms::model).toList()
                : asked.simpler();
        return ModelComparison.of(models.stream()
                        .flatMap(one -> OccupancyFit.of(visits, one, level).found().stream()
                                .map(fit -> new ModelComparison.Candidate<>(one, fit.fit())))
                        .toList())
                .rows();
    }

    private static List<Message> warnings(
            SiteDays found,
            List<Integer> years,
            List<Site> all,
            List<SiteDay> days,
            List<Integer> seasons,
            List<ModelComparison.Row<OccupancyModel>> compared,
            OccupancyModel asked) {
        List<Message> warnings = new ArrayList<>();
        warnings.add(Message.of("occupancy.warning.neighbours"));
        compared.stream()
                .filter(row -> row.model().equals(asked) && row.delta() > MUCH_BETTER)
                .forEach(row -> warnings.add(Message.of("occupancy.warning.betterModel", row.delta())));
        List<String> gaps = seasons.stream()
                .filter(season -> days.stream().noneMatch(day -> day.date().getYear() == season))
                .map(String::valueOf)
                .toList();
        if (!gaps.isEmpty()) {
            warnings.add(Message.of("occupancy.warning.gaps", gaps));
        }
        if (found.partly() > 0) {
            warnings.add(Message.of("occupancy.warning.partly", found.partly()));
        }
        if (found.unused(years) > 0) {
            warnings.add(Message.of("occupancy.warning.unused", found.unused(years)));
        }
        if (found.vague() > 0) {
            warnings.add(Message.of("occupancy.warning.vague", found.vague()));
        }
        if (overlap(all)) {
            warnings.add(Message.of("occupancy.warning.overlap"));
        }
        return warnings;
    }

    private static boolean overlap(List<Site> sites) {
        return IntStream.range(1, sites.size())
                .anyMatch(i -> sites.get(i).river().equals(sites.get(i - 1).river())
                        && sites.get(i)
                                        .stretch()
                                        .lower()
                                        .compareTo(sites.get(i - 1).stretch().upper())
                                < 0);
    }

    /**
     * {@return the detection histories, by site, then season, a sign for each visit: {@code 1} found, {@code 0} not found, {@code -}
     * not covered}
     */
    public List<List<String>> histories() {
        StringBuilder[][] histories = new StringBuilder[sites.size()][seasons.size()];
        visits.visits().stream()
                .sorted(Comparator.comparingInt(SiteVisit::occasion))
                .forEach(visit -> {
                    StringBuilder before = histories[visit.site()][visit.season()];
                    StringBuilder history = before == null ? new StringBuilder() : before;
                    history.append("-".repeat(visit.occasion() - history.length()));
                    histories[visit.site()][visit.season()] = history.append(visit.detected() ? '1' : '0');
                });
        return Stream.of(histories)
                .map(ofSite -> Stream.of(ofSite)
                        .map(history -> history == null ? "" : history.toString())
                        .toList())
                .toList();
    }
}
