package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.ouzelbook.stats.estimator.segmentation.Acceptance;
import org.ouzelbook.stats.survey.Territory.Standing;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;

/**
 * What a map is made from: the records of one species in one year, the effort on each river, and the rules.
 *
 * @param records all records that were given
 * @param species the species
 * @param year the calendar year
 * @param settings the rules
 * @param water the water asked about
 * @param sightings sightings of the species in the year, on the rivers of the network
 * @param nests nests of the species that were checked in the season
 * @param decisions what surveyors decided about it
 * @param efforts the effort by river
 */
record Season(
        SurveyRecords records,
        Species species,
        int year,
        MapSettings settings,
        Water water,
        List<Sighting> sightings,
        List<NestHistory> nests,
        SeasonDecisions decisions,
        Map<UUID, Effort> efforts) {

    static Season of(SurveyRecords records, Species species, int year, MapSettings settings, Water water) {
        Map<UUID, Effort> efforts = new HashMap<>();
        for (River river : records.rivers().rivers()) {
            efforts.put(river.id(), Effort.of(records.visits(), river.id(), species, year, settings));
        }
        List<Sighting> sightings = records.sightings().stream()
                .filter(sighting ->
                        sighting.species().equals(species) && sighting.date().getYear() == year)
                .filter(sighting -> efforts.containsKey(sighting.place().riverId()))
                .toList();
        List<Nest> nests = records.nests().stream()
                .filter(nest -> nest.species().equals(species))
                .filter(nest -> efforts.containsKey(nest.place().riverId()))
                .toList();
        return new Season(
                records,
                species,
                year,
                settings,
                water,
                sightings,
                NestHistory.of(records, nests, year, settings),
                SeasonDecisions.of(records, species, year),
                Map.copyOf(efforts));
    }

    Effort effort(UUID riverId) {
        Effort effort = efforts.get(riverId);
        if (effort == null) {
            throw new IllegalArgumentException("No river has the key " + riverId);
        }
        return effort;
    }

    /** The river in whose mouth the water of a river ends: nothing binds records that have another one. */
    UUID outlet(UUID riverId) {
        return records.rivers().outlet(riverId).id();
    }

    /**
     * What makes a territory of a river acceptable.
     *
     * @param more registrations asked for beyond the rule; −1 for one fewer, but never fewer than two because of it
     */
    Acceptance acceptance(UUID riverId, int more) {
        int few = asked(settings.minimumRegistrations().orElse(settings.registrationsWithFewVisits()), more);
        int many = asked(settings.minimumRegistrations().orElse(settings.registrationsWithManyVisits()), more);
        return new Acceptance(
                effort(riverId).visitedWater(),
                few,
                Math.max(few, many),
                settings.manyVisits(),
                settings.minimumSpreadDays());
    }

    private static int asked(int registrations, int more) {
        return more >= 0 ? registrations + more : Math.max(Math.min(2, registrations), registrations + more);
    }

    /** Whether the rules accept these records as one territory. */
    boolean accepts(Cluster cluster, int more) {
        return acceptance(cluster.riverId(), more)
                .accepts(
                        cluster.members().stream().anyMatch(member -> settings.isDecisive(member.code())),
                        cluster.days().size(),
                        cluster.spreadDays(),
                        cluster.lowest().metres(),
                        cluster.highest().metres());
    }

    /** Distance along the water; infinite where no water joins the two. */
    double metresBetween(Member one, Member other) {
        return one.place().riverId().equals(other.place().riverId())
                ? Math.abs(one.metres() - other.metres())
                : records.rivers().distance(one.place(), other.place()).orElse(Double.POSITIVE_INFINITY);
    }

    boolean isSurveyed(Member member) {
        return effort(member.place().riverId()).surveyed(member.place().chainage());
    }

    /** How many of a cluster's registrations lie on surveyed water. */
    int inside(Cluster cluster) {
        return cluster.members().stream()
                .filter(this::isSurveyed)
                .mapToInt(member -> member.dates().size())
                .sum();
    }

    /** What the rules say of a cluster, for the water asked about. */
    Standing standing(Cluster cluster) {
        if (!cluster.accepted()) {
            return Standing.NOT_ACCEPTED;
        }
        int inside = inside(cluster);
        if (inside == 0) {
            return Standing.OUTSIDE;
        }
        if (!water.contains(cluster.riverId(), middle(cluster))) {
            return Standing.ELSEWHERE;
        }
        return inside > settings.edgeShareInside() * cluster.registrations() ? Standing.COUNTED : Standing.EDGE;
    }

    boolean isEdge(Cluster cluster) {
        int inside = inside(cluster);
        return cluster.accepted() && inside > 0 && inside < cluster.registrations();
    }

    /** The place of the middle registration on surveyed water: the one reach that a territory across reaches counts for. */
    private Chainage middle(Cluster cluster) {
        List<Chainage> places = places(cluster, true);
        if (places.isEmpty()) {
            places = places(cluster, false);
        }
        return places.get((places.size() - 1) / 2);
    }

    private List<Chainage> places(Cluster cluster, boolean onlySurveyed) {
        List<Chainage> places = new ArrayList<>();
        for (Member member : cluster.atHome()) {
            if (!onlySurveyed || isSurveyed(member)) {
                member.dates().forEach(date -> places.add(member.place().chainage()));
            }
        }
        return places;
    }

    /** How many clusters have this standing on a river. */
    int count(List<Cluster> clusters, UUID riverId, Standing standing) {
        int count = 0;
        for (Cluster cluster : clusters) {
            boolean possible = cluster.accepted() == (standing != Standing.NOT_ACCEPTED);
            if (possible && cluster.riverId().equals(riverId) && standing(cluster) == standing) {
                count++;
            }
        }
        return count;
    }
}
