package org.ouzelbook.stats.survey;

import java.util.List;
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
 * @param rivers one map a river, in the order of the network
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
     * The map of one river.
     *
     * @param river the river
     * @param surveyed the water that effective visits covered, going upstream
     * @param visits visits of the season, effective or not
     * @param effectiveVisits visits that are effort for the species
     * @param count how many, and the range
     * @param territories every cluster, going upstream, counted or not
     * @param setAside sightings that took no part, each with its reason
     */
    public record RiverMap(
            River river,
            List<Stretch> surveyed,
            int visits,
            int effectiveVisits,
            Count count,
            List<Territory> territories,
            List<SetAside> setAside) {
        /** Copies the lists. */
        public RiverMap {
            surveyed = List.copyOf(surveyed);
            territories = List.copyOf(territories);
            setAside = List.copyOf(setAside);
        }

        /** {@return the length of surveyed water, in km} */
        public double surveyedKm() {
            return Stretch.totalLength(surveyed) / 1000;
        }
    }

    /**
     * The count by rule. The range comes from reading one rule at a time the other way round: edge territories in or out,
     * doubtful gaps split, birds of unknown age left out, one registration more or less asked for.
     *
     * @param likely territories that count
     * @param min the fewest under any other reading
     * @param max the most under any other reading
     * @param edge edge territories, counted or not
     * @param unassigned sightings in season that belong to no counted or edge territory
     */
    public record Count(int likely, int min, int max, int edge, int unassigned) {}

    /**
     * A sighting that took no part.
     *
     * @param sighting the sighting
     * @param because why
     */
    public record SetAside(Sighting sighting, Message because) {}
}
