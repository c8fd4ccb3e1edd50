package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.interval.GarwoodInterval;
import org.ouzelbook.stats.estimator.interval.WilsonInterval;
import org.ouzelbook.stats.survey.Territory.Standing;
import org.ouzelbook.stats.survey.TerritoryMap.RiverMap;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * How dense a species' territories lie, by season and water: territories by rule over the km that effective visits covered.
 *
 * <p>The interval is the exact one for a Poisson count. It says how far the density of a longer river like this one may lie
 * from what these km show, if territories lay at random; it knows nothing of pairs that were missed or of clusters that could
 * be read otherwise, for which each row gives the range of the count. Territories are more regular than random, so it is
 * rather too wide. Beside it stands the count by the model, whose limits cover just that: pairs missed, and other readings.
 *
 * @param species whose territories
 * @param settings the thresholds of the maps
 * @param rows by season, then by water
 * @param warnings the warnings of the maps, each once
 */
public record SeasonDensity(Species species, MapSettings settings, List<Row> rows, List<Message> warnings) {
    /** A known nest site is occupied if an accepted territory reaches within this distance. Common practice, no source. */
    public static final double SITE_WITHIN_METRES = 100;

    /** Copies the lists. */
    public SeasonDensity {
        rows = List.copyOf(rows);
        warnings = List.copyOf(warnings);
    }

    /**
     * {@return the densities of a species, by rule alone}
     *
     * @param records the records of the book
     * @param species whose territories
     * @param seasons calendar years
     * @param settings the thresholds of the maps
     * @param waters what to give a row each; {@link Water#ALL} gives each river one
     * @param level level of the intervals, between 0 and 1
     */
    public static SeasonDensity of(
            SurveyRecords records,
            Species species,
            List<Integer> seasons,
            MapSettings settings,
            List<Water> waters,
            double level) {
        return of(records, species, seasons, settings, waters, level, ModelledCounts.NONE);
    }

    /**
     * {@return the densities of a species}
     *
     * @param records the records of the book
     * @param species whose territories
     * @param seasons calendar years
     * @param settings the thresholds of the maps
     * @param waters what to give a row each; {@link Water#ALL} gives each river one
     * @param level level of the intervals, between 0 and 1
     * @param modelled what the model counts on the same waters; {@link ModelledCounts#NONE} for the counts by rule alone
     */
    public static SeasonDensity of(
            SurveyRecords records,
            Species species,
            List<Integer> seasons,
            MapSettings settings,
            List<Water> waters,
            double level,
            ModelledCounts modelled) {
        return of(SeasonMaps.of(records, species, settings), seasons, waters, level, modelled, Progress.NONE);
    }

    /**
     * {@return the densities of a species}
     *
     * @param maps the maps, those that are there and those to be made
     * @param seasons calendar years
     * @param waters what to give a row each; {@link Water#ALL} gives each river one
     * @param level level of the intervals, between 0 and 1
     * @param modelled what the model counts on the same waters; {@link ModelledCounts#NONE} for the counts by rule alone
     * @param progress hears how far the mapping has come, and may stop it
     * @throws java.util.concurrent.CancellationException if it is stopped
     */
    public static SeasonDensity of(
            SeasonMaps maps,
            List<Integer> seasons,
            List<Water> waters,
            double level,
            ModelledCounts modelled,
            Progress progress) {
        return of(
                maps.records(), maps.species(), maps.settings(), maps.all(seasons, waters, progress), level, modelled);
    }

    /**
     * {@return the densities that maps show}
     *
     * @param records the records that the maps were made from
     * @param maps maps of one species by the same settings, one a season, by season; one or more
     * @param water the water that they were made for
     * @param level level of the intervals, between 0 and 1
     * @param modelled what the model counts on the same water; {@link ModelledCounts#NONE} for the counts by rule alone
     * @throws IllegalArgumentException if there is no map
     */
    public static SeasonDensity of(
            SurveyRecords records, List<TerritoryMap> maps, Water water, double level, ModelledCounts modelled) {
        List<WaterMap> mapped = WaterMap.of(maps, water);
        TerritoryMap first = maps.get(0);
        return of(records, first.species(), first.settings(), mapped, level, modelled);
    }

    private static SeasonDensity of(
            SurveyRecords records,
            Species species,
            MapSettings settings,
            List<WaterMap> maps,
            double level,
            ModelledCounts modelled) {
        List<Row> rows = new ArrayList<>();
        Set<Message> warnings = new LinkedHashSet<>();
        for (WaterMap one : maps) {
            one.map()
                    .rivers()
                    .forEach(river -> rows.add(row(
                            one.map().season(),
                            river,
                            one.water(),
                            records.landmarks(),
                            level,
                            modelled.on(one.map().season(), river.river().id(), one.water()))));
            warnings.addAll(one.map().warnings());
        }
        return new SeasonDensity(species, settings, rows, List.copyOf(warnings));
    }

    /**
     * The density of one water in one season.
     *
     * @param season the calendar year
     * @param river the river
     * @param reach name of the reach; empty for the whole river or a stretch without a name
     * @param asked the stretch asked about; empty for the whole river
     * @param surveyedKm km that effective visits covered
     * @param territories territories that count
     * @param min the fewest under any reading of the rules
     * @param max the most under any reading of the rules
     * @param edge edge territories that are not among them
     * @param model territories by the model; empty where it was not asked or cannot tell
     * @param perKm territories per km; not estimable without surveyed water
     * @param perKmWithEdges the same with every edge territory counted
     * @param knownSites share of the known nest sites on surveyed water that are occupied; not estimable without one
     * @param spacingKm middle distance between the centres of neighbouring territories that count; empty below two
     * @param longestEmpty the longest surveyed stretch without a counted or an edge territory; empty if there is none
     */
    public record Row(
            int season,
            River river,
            Optional<String> reach,
            Optional<Stretch> asked,
            double surveyedKm,
            int territories,
            int min,
            int max,
            int edge,
            Optional<ModelledCount> model,
            Answer<Estimate> perKm,
            Answer<Estimate> perKmWithEdges,
            Answer<Estimate> knownSites,
            OptionalDouble spacingKm,
            Optional<Stretch> longestEmpty) {}

    private static Row row(
            int season,
            RiverMap map,
            Water water,
            List<Landmark> landmarks,
            double level,
            Optional<ModelledCount> model) {
        TerritoryMap.Count count = map.count();
        double km = map.surveyedKm();
        return new Row(
                season,
                map.river(),
                water.name(),
                water.stretch(),
                km,
                count.likely(),
                count.min(),
                count.max(),
                count.edge(),
                model,
                GarwoodInterval.of(count.likely(), km, level),
                GarwoodInterval.of(count.likely() + count.edge(), km, level),
                knownSites(map, water, landmarks, level),
                spacingKm(map),
                longestEmpty(map));
    }

    private static Answer<Estimate> knownSites(RiverMap map, Water water, List<Landmark> landmarks, double level) {
        List<Landmark> sites = landmarks.stream()
                .filter(Landmark::nestSite)
                .filter(site -> site.place().riverId().equals(map.river().id()))
                .filter(site -> water.contains(map.river().id(), site.place().chainage()))
                .filter(site -> map.surveyed().stream()
                        .anyMatch(stretch -> stretch.contains(site.place().chainage())))
                .toList();
        long occupied = sites.stream()
                .filter(site -> map.territories().stream()
                        .filter(Territory::accepted)
                        .anyMatch(territory -> metresTo(territory.stretch(), site) <= SITE_WITHIN_METRES))
                .count();
        return WilsonInterval.of(occupied, sites.size(), level);
    }

    private static double metresTo(Stretch stretch, Landmark site) {
        return stretch.contains(site.place().chainage())
                ? 0
                : Math.min(
                        stretch.lower().distanceTo(site.place().chainage()),
                        stretch.upper().distanceTo(site.place().chainage()));
    }

    private static OptionalDouble spacingKm(RiverMap map) {
        List<Territory> counted = map.territories().stream()
                .filter(territory -> territory.standing() == Standing.COUNTED)
                .toList();
        List<Double> distances = new ArrayList<>();
        for (int i = 1; i < counted.size(); i++) {
            distances.add(counted.get(i).centre().distanceTo(counted.get(i - 1).centre()));
        }
        distances.sort(null);
        int size = distances.size();
        return size == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of((distances.get((size - 1) / 2) + distances.get(size / 2)) / 2000);
    }

    private static Optional<Stretch> longestEmpty(RiverMap map) {
        List<Stretch> empty = map.surveyed();
        for (Territory territory : map.territories()) {
            if (territory.accepted()) {
                empty = empty.stream()
                        .flatMap(stretch -> without(stretch, territory.stretch()).stream())
                        .toList();
            }
        }
        return empty.stream().max((one, other) -> Double.compare(one.length(), other.length()));
    }

    private static List<Stretch> without(Stretch stretch, Stretch taken) {
        if (stretch.intersection(taken).isEmpty()) {
            return List.of(stretch);
        }
        List<Stretch> rest = new ArrayList<>();
        if (stretch.lower().compareTo(taken.lower()) < 0) {
            rest.add(new Stretch(stretch.lower(), taken.lower()));
        }
        if (taken.upper().compareTo(stretch.upper()) < 0) {
            rest.add(new Stretch(taken.upper(), stretch.upper()));
        }
        return rest;
    }
}
