package org.ouzelbook.stats.survey;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * The territories of one species in one season, by the published mapping rules. Derived from the records each time; never
 * stored.
 *
 * @param species whose territories
 * @param season the calendar year
 * @param settings the thresholds that made it
 * @param rivers one map a river that was asked about, in the order of the network
 * @param warnings what would mislead a reader who did not know it
 */
public record TerritoryMap(
        Species species, int season, MapSettings settings, List<RiverMap> rivers, List<Message> warnings) {
    /** Copies the lists. */
    public TerritoryMap {
        rivers = List.copyOf(rivers);
        warnings = List.copyOf(warnings);
    }

    /**
     * {@return the map of a species in a season}
     *
     * @param records the records of the book; those of other seasons and species are passed over, except that the warnings
     *     compare visits with the season before
     * @param species whose territories
     * @param season the calendar year
     * @param settings the thresholds
     * @param water which of the territories count
     */
    public static TerritoryMap of(
            SurveyRecords records, Species species, int season, MapSettings settings, Water water) {
        return MapMaker.of(Season.of(records, species, season, settings, water));
    }

    /**
     * {@return the likely count of one river as its map would tell it, found without working out ranges and reasons}
     *
     * @param records the records of the book
     * @param species whose territories
     * @param season the calendar year
     * @param settings the thresholds
     * @param riverId key of a river of the book
     */
    public static int counted(SurveyRecords records, Species species, int season, MapSettings settings, UUID riverId) {
        return MapMaker.counted(Season.of(records, species, season, settings, Water.ofRiver(riverId)), riverId);
    }

    /**
     * {@return the accepted territories of every river as their map would draw them, found without working out ranges and reasons}
     *
     * @param records the records of the book
     * @param species whose territories
     * @param season the calendar year
     * @param settings the thresholds
     */
    public static List<TerritoryOutline> outlines(
            SurveyRecords records, Species species, int season, MapSettings settings) {
        return MapMaker.outlines(Season.of(records, species, season, settings, Water.ALL));
    }

    /** {@return the counts of all rivers that had visits enough, taken together; empty if none had} */
    public Optional<Total> total() {
        List<RiverMap> counted = rivers.stream().filter(RiverMap::isCounted).toList();
        if (counted.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Total(
                counted.stream().mapToInt(river -> river.count().likely()).sum(),
                counted.stream().mapToInt(river -> river.count().min()).sum(),
                counted.stream().mapToInt(river -> river.count().max()).sum(),
                counted.stream().mapToDouble(RiverMap::surveyedKm).sum()));
    }

    /**
     * The counts of several rivers taken together.
     *
     * @param likely territories that count
     * @param min the fewest under any reading, river by river
     * @param max the most under any reading, river by river
     * @param surveyedKm their surveyed km
     */
    public record Total(int likely, int min, int max, double surveyedKm) {
        /** {@return territories per km; 0 without surveyed water} */
        public double perKm() {
            return surveyedKm > 0 ? likely / surveyedKm : 0;
        }
    }

    /**
     * The map of one river.
     *
     * @param river the river
     * @param surveyed the water that effective visits covered, going upstream, as far as it was asked about
     * @param visits visits of the season, effective or not
     * @param effectiveVisits days with visits that are effort for the species
     * @param visitEfficiency the share of accepted territories that an average effective visit past them found; empty where
     *     there is none
     * @param count how many, and the range
     * @param territories every cluster, going upstream, counted or not
     * @param setAside sightings that took no part, each with its reason
     */
    public record RiverMap(
            River river,
            List<Stretch> surveyed,
            int visits,
            int effectiveVisits,
            Optional<Double> visitEfficiency,
            Count count,
            List<Territory> territories,
            List<SetAside> setAside) {
        /** Copies the lists. */
        public RiverMap {
            surveyed = List.copyOf(surveyed);
            territories = List.copyOf(territories);
            setAside = List.copyOf(setAside);
        }

        /** {@return whether there were visits enough to count: fewer than two are a gap} */
        public boolean isCounted() {
            return effectiveVisits >= CountTrend.VISITS_TO_COUNT;
        }

        /** {@return the length of surveyed water, in km} */
        public double surveyedKm() {
            return Stretch.totalLength(surveyed) / 1000;
        }
    }

    /**
     * The count by rule, and what it would be with one rule at a time read the other way round.
     *
     * @param likely territories that count
     * @param min the fewest under any reading
     * @param max the most under any reading
     * @param edge edge territories that are not counted
     * @param unassigned sightings of living birds in season that belong to no accepted territory
     * @param readings each reading that was tried, with its count
     */
    public record Count(int likely, int min, int max, int edge, int unassigned, List<Reading> readings) {
        /** Copies the list. */
        public Count {
            readings = List.copyOf(readings);
        }
    }

    /**
     * The count with one rule read the other way round.
     *
     * @param rule the rule and how it was read
     * @param count territories that count then
     */
    public record Reading(Message rule, int count) {}

    /**
     * A sighting that took no part.
     *
     * @param sighting the sighting
     * @param because why
     */
    public record SetAside(Sighting sighting, Message because) {}
}
