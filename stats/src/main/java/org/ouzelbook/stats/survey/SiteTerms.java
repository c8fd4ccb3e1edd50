package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.IntSummaryStatistics;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.ouzelbook.stats.estimator.likelihood.Covariate;
import org.ouzelbook.stats.estimator.occupancy.OccupancyModel;
import org.ouzelbook.stats.survey.SiteDays.SiteDay;

/**
 * What occupancy, colonisation, extinction and detection may depend on, from what every book holds.
 *
 * @param sites the sites
 * @param seasons the seasons, in order, without a gap
 * @param days the days, one for each row of detection
 */
record SiteTerms(List<Site> sites, List<Integer> seasons, List<SiteDay> days) {
    static final String SEASON = "season";
    static final String DAY = "day";
    static final String VISIT = "visit";
    static final String KM = "km";
    static final String RIVER = "river";

    /**
     * {@return the model with these terms}
     *
     * @throws IllegalArgumentException if a part cannot depend on a term
     */
    OccupancyModel model(SiteOccupancy.Model asked) {
        List<Row> ofSites =
                sites.stream().map(site -> new Row(site, 0, LocalDate.EPOCH, 0)).toList();
        List<Row> ofChanges = new ArrayList<>();
        for (Site site : sites) {
            seasons.stream().skip(1).forEach(season -> ofChanges.add(new Row(site, season, LocalDate.EPOCH, 0)));
        }
        List<Row> ofVisits = days.stream()
                .map(day -> new Row(sites.get(day.site()), day.date().getYear(), day.date(), day.occasion() + 1))
                .toList();
        return new OccupancyModel(
                covariates(asked.occupancyBy(), SiteOccupancy.OCCUPANCY_TERMS, ofSites),
                covariates(asked.colonisationBy(), SiteOccupancy.CHANGE_TERMS, ofChanges),
                covariates(asked.extinctionBy(), SiteOccupancy.CHANGE_TERMS, ofChanges),
                covariates(asked.detectionBy(), SiteOccupancy.DETECTION_TERMS, ofVisits));
    }

    /** One row of a part: a site, and as much of season and visit as the part has. */
    private record Row(Site site, int season, LocalDate date, int visit) {}

    private static List<Covariate> covariates(List<String> names, List<String> known, List<Row> rows) {
        return names.stream().map(name -> covariate(name, known, rows)).toList();
    }

    private static Covariate covariate(String name, List<String> known, List<Row> rows) {
        if (!known.contains(name)) {
            throw new IllegalArgumentException("No such term here: " + name + "; there are " + known);
        }
        return switch (name) {
            case KM ->
                Covariate.numbers(
                        name,
                        rows.stream()
                                .mapToDouble(row -> row.site.stretch().middle().km())
                                .toArray());
            case DAY ->
                Covariate.numbers(
                        name,
                        rows.stream()
                                .mapToDouble(row -> row.date.getDayOfYear())
                                .toArray());
            case RIVER ->
                Covariate.levels(
                        name, rows.stream().map(row -> row.site.river().name()).toList());
            case VISIT ->
                Covariate.levels(
                        name,
                        rows.stream().map(row -> String.valueOf(row.visit)).toList());
            default ->
                Covariate.levels(
                        name,
                        rows.stream().map(row -> String.valueOf(row.season)).toList());
        };
    }

    /** A few models worth comparing where nobody named one, the constant one first. */
    List<SiteOccupancy.Model> worthComparing() {
        boolean changes = seasons.size() > 2;
        boolean rivers = sites.stream().map(Site::river).distinct().count() > 1;
        List<String> none = List.of();
        List<String> season = List.of(SEASON);
        Set<SiteOccupancy.Model> models = new LinkedHashSet<>();
        for (List<String> detection : List.of(none, List.of(DAY), seasons.size() > 1 ? season : none)) {
            models.add(new SiteOccupancy.Model(none, none, none, detection));
            if (changes) {
                models.add(new SiteOccupancy.Model(none, season, season, detection));
            }
        }
        if (rivers) {
            List<String> river = List.of(RIVER);
            models.add(new SiteOccupancy.Model(river, none, none, none));
            models.add(new SiteOccupancy.Model(
                    river, seasons.size() > 1 ? river : none, seasons.size() > 1 ? river : none, none));
            models.add(new SiteOccupancy.Model(none, none, none, river));
        }
        models.add(new SiteOccupancy.Model(List.of(KM), none, none, none));
        return List.copyOf(models);
    }

    /** The seasons from the first to the last in which a site was visited. */
    static List<Integer> seasons(List<SiteDay> days) {
        IntStream years = days.stream().mapToInt(day -> day.date().getYear());
        IntSummaryStatistics span = years.summaryStatistics();
        return span.getCount() == 0
                ? List.of()
                : IntStream.rangeClosed(span.getMin(), span.getMax()).boxed().toList();
    }
}
