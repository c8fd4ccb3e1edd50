package org.ouzelbook.ui.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ouzelbook.stats.estimator.segmentation.LinePosterior.Ground;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.Territory.Standing;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.stats.survey.TerritoryMap.RiverMap;
import org.ouzelbook.stats.survey.TerritoryModel;
import org.ouzelbook.stats.survey.Water;
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
 * @param model what the model learnt of the species and its surveyors
 * @param decisions what surveyors decided about the season
 * @param withoutDecisions the answer as it would be without those decisions; empty if there are none
 */
public record MapAnswer(
        Species species,
        int season,
        MapSettings settings,
        List<OnRiver> rivers,
        List<Message> warnings,
        ModelLearnt model,
        List<DecisionAnswer> decisions,
        Optional<MapAnswer> withoutDecisions) {

    /**
     * {@return the answer that a map gives, with the model's beside it}
     *
     * @param map a map
     * @param model the model of the same records
     * @param water the water that the map was made for
     * @param level confidence level of the intervals
     */
    public static MapAnswer of(TerritoryMap map, TerritoryModel model, Water water, double level) {
        return new MapAnswer(
                map.species(),
                map.season(),
                map.settings(),
                map.rivers().stream()
                        .map(river -> OnRiver.of(river, RiverByModel.of(map.season(), river, model, water, level)))
                        .toList(),
                warnings(map, model),
                ModelLearnt.of(model, level),
                List.of(),
                Optional.empty());
    }

    private static List<Message> warnings(TerritoryMap map, TerritoryModel model) {
        List<Message> warnings = new ArrayList<>(map.warnings());
        TerritoryModel.Learnt learnt = model.learnt();
        if (learnt.isLittle()) {
            warnings.add(Message.of("map.model.littleData", learnt.registrations(), learnt.riverSeasons()));
        }
        return warnings;
    }

    /** {@return this answer beside the one that is made without the surveyor's decisions} */
    MapAnswer beside(MapAnswer without, List<DecisionAnswer> made) {
        return new MapAnswer(species, season, settings, rivers, warnings, model, made, Optional.of(without));
    }

    /**
     * {@return this answer with other warnings}
     *
     * @param others the warnings
     */
    public MapAnswer withWarnings(List<Message> others) {
        return new MapAnswer(species, season, settings, rivers, others, model, decisions, withoutDecisions);
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

        static OnRiver of(RiverMap map, RiverByModel model) {
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
                    model.answer(),
                    map.territories().stream()
                            .map(territory -> Cluster.of(territory, model))
                            .toList(),
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
     * @param probability the model's probability that there is a territory at its centre
     * @param lowerEnd where the model puts the lower end of that territory
     * @param upperEnd where it puts the upper end
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
            Optional<ByModel.End> lowerEnd,
            Optional<ByModel.End> upperEnd,
            List<String> sightings,
            List<String> nests,
            List<Message> because,
            List<Message> hangsOn) {

        static Cluster of(Territory territory, RiverByModel model) {
            Optional<Ground> ground = model.ground(territory);
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
                    Numbers.of(ground, Ground::probability),
                    ground.map(Ground::lower).map(RiverByModel::end),
                    ground.map(Ground::upper).map(RiverByModel::end),
                    territory.registrations().stream().map(MapAnswer::name).toList(),
                    territory.nests().stream().map(Nest::label).toList(),
                    model.because(territory, ground),
                    model.hangsOn(territory));
        }
    }

    /**
     * A sighting that took no part.
     *
     * @param sighting its label
     * @param because why
     */
    public record SetAside(String sighting, Message because) {}

    static String name(Sighting sighting) {
        return sighting.label().isBlank()
                ? Texts.of("map.sighting.unlabelled", sighting.place().chainage(), sighting.date())
                : sighting.label();
    }
}
