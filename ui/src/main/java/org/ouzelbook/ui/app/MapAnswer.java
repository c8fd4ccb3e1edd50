package org.ouzelbook.ui.app;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.Territory.Standing;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.stats.survey.TerritoryMap.RiverMap;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.BreedingCode.EvidenceClass;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;

/**
 * How many territories there were, where, and why: the answer of {@code map}. Its names are those that scripts rely on.
 *
 * @param species whose territories
 * @param season the calendar year
 * @param settings every threshold of the rules
 * @param rivers one element a river that was asked about
 * @param warnings what would mislead a reader who did not know it
 * @param decisions what surveyors decided about the season
 * @param withoutDecisions the answer as it would be without those decisions; empty if there are none
 */
public record MapAnswer(
        Species species,
        int season,
        MapSettings settings,
        List<OnRiver> rivers,
        List<Message> warnings,
        List<DecisionAnswer> decisions,
        Optional<MapAnswer> withoutDecisions) {

    /**
     * {@return the answer that a map gives}
     *
     * @param map a map
     * @param level confidence level of the intervals
     */
    public static MapAnswer of(TerritoryMap map, double level) {
        return new MapAnswer(
                map.species(),
                map.season(),
                map.settings(),
                map.rivers().stream().map(river -> OnRiver.of(river, level)).toList(),
                map.warnings(),
                List.of(),
                Optional.empty());
    }

    /** {@return this answer beside the one that is made without the surveyor's decisions} */
    MapAnswer beside(MapAnswer without, List<DecisionAnswer> made) {
        return new MapAnswer(species, season, settings, rivers, warnings, made, Optional.of(without));
    }

    /**
     * The answer for one river.
     *
     * @param river its name
     * @param surveyedKm water that effective visits covered
     * @param visits visits of the season, effective or not
     * @param effectiveVisits days with effective visits
     * @param byRule the count by the mapping rules
     * @param byModel the count by the model
     * @param territories every cluster, going upstream
     * @param setAside sightings that took no part
     */
    public record OnRiver(
            String river,
            double surveyedKm,
            int visits,
            int effectiveVisits,
            ByRule byRule,
            ByModel byModel,
            List<Cluster> territories,
            List<SetAside> setAside) {

        static OnRiver of(RiverMap map, double level) {
            TerritoryMap.Count count = map.count();
            return new OnRiver(
                    map.river().name(),
                    map.surveyedKm(),
                    map.visits(),
                    map.effectiveVisits(),
                    new ByRule(
                            count.likely(),
                            count.min(),
                            count.max(),
                            count.edge(),
                            count.unassigned(),
                            count.readings()),
                    ByModel.notYet(level),
                    map.territories().stream().map(Cluster::of).toList(),
                    map.setAside().stream()
                            .map(one -> new SetAside(name(one.sighting()), one.because()))
                            .toList());
        }

        /** {@return how many counted territories show this evidence} */
        public long counted(EvidenceClass evidence) {
            return territories.stream()
                    .filter(Cluster::accepted)
                    .filter(territory -> territory.evidence().equals(Optional.of(evidence)))
                    .count();
        }
    }

    /**
     * The count by the mapping rules.
     *
     * @param count territories that count
     * @param min the fewest when one rule is read the other way round
     * @param max the most
     * @param edge edge territories that do not count
     * @param unassigned sightings that belong to no accepted territory
     * @param readings each rule that was read the other way round
     */
    public record ByRule(int count, int min, int max, int edge, int unassigned, List<TerritoryMap.Reading> readings) {}

    /**
     * The count by the model.
     *
     * @param estimate the expected number
     * @param lower lower limit
     * @param upper upper limit
     * @param level confidence level
     * @param distribution the probability of each number
     * @param why why there is no number
     */
    public record ByModel(
            OptionalDouble estimate,
            OptionalDouble lower,
            OptionalDouble upper,
            double level,
            Optional<Map<String, Double>> distribution,
            Optional<Message> why) {
        static ByModel notYet(double level) {
            return new ByModel(
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    level,
                    Optional.empty(),
                    Optional.of(Message.of("app.map.noModel")));
        }
    }

    /**
     * One territory, or a cluster that is none.
     *
     * @param id its letter
     * @param fromKm its lower end
     * @param toKm its upper end
     * @param centreKm the middle of its registrations
     * @param accepted whether it counts
     * @param edge whether it lies across the limit of the surveyed water
     * @param standing what the rules say of it
     * @param evidence the class of its breeding evidence
     * @param breedingCode its highest breeding code
     * @param probability the model's probability that it is a territory
     * @param sightings its registrations, by label
     * @param nests its nests, by label
     * @param because why it stands or does not
     * @param hangsOn what would change the answer
     */
    public record Cluster(
            String id,
            double fromKm,
            double toKm,
            double centreKm,
            boolean accepted,
            boolean edge,
            Standing standing,
            Optional<EvidenceClass> evidence,
            Optional<Integer> breedingCode,
            OptionalDouble probability,
            List<String> sightings,
            List<String> nests,
            List<Message> because,
            List<Message> hangsOn) {

        static Cluster of(Territory territory) {
            Optional<BreedingCode> code = territory.evidence().map(Territory.Evidence::code);
            return new Cluster(
                    territory.id(),
                    territory.stretch().lower().km(),
                    territory.stretch().upper().km(),
                    territory.centre().km(),
                    territory.standing() == Standing.COUNTED,
                    territory.edge(),
                    territory.standing(),
                    code.flatMap(BreedingCode::evidenceClass),
                    code.map(BreedingCode::number),
                    OptionalDouble.empty(),
                    territory.registrations().stream().map(MapAnswer::name).toList(),
                    territory.nests().stream().map(Nest::label).toList(),
                    territory.because(),
                    territory.hangsOn().stream()
                            .map(Territory.HangsOn::otherwise)
                            .toList());
        }
    }

    /**
     * A sighting that took no part.
     *
     * @param sighting its label
     * @param because why
     */
    public record SetAside(String sighting, Message because) {}

    private static String name(Sighting sighting) {
        return sighting.label().isBlank()
                ? Texts.of("map.sighting.unlabelled", sighting.place().chainage(), sighting.date())
                : sighting.label();
    }
}
