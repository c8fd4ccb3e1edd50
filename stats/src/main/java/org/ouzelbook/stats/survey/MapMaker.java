package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.stats.survey.Admission.Aside;
import org.ouzelbook.stats.survey.Admission.DoubtfulAge;
import org.ouzelbook.stats.survey.Territory.Standing;
import org.ouzelbook.stats.survey.TerritoryMap.Count;
import org.ouzelbook.stats.survey.TerritoryMap.Reading;
import org.ouzelbook.stats.survey.TerritoryMap.RiverMap;
import org.ouzelbook.stats.survey.TerritoryMap.SetAside;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Stretch;

/** Makes the map of a season: which records take part, the clusters, what the rules say of each, and how many there are. */
final class MapMaker {
    private final Season season;
    private final Admission admission;
    private final Field field;
    private final List<Cluster> clusters;
    private final Readings readings;
    private final Map<UUID, Field> byWater;
    private final Map<UUID, HangingRecords> hanging = new HashMap<>();

    private MapMaker(Season season) {
        this.season = season;
        this.admission = Admission.of(season.sightings(), season.settings(), DoubtfulAge.USUAL);
        this.field = Field.of(admission.admitted(), season);
        this.clusters = Clustering.of(field, season, 0);
        this.readings = Readings.of(season, field, clusters);
        this.byWater = field.byWater(season::outlet);
    }

    static TerritoryMap of(Season season) {
        MapMaker maker = new MapMaker(season);
        List<RiverMap> maps = season.records().rivers().rivers().stream()
                .filter(river -> season.water().includes(river.id()))
                .map(maker::riverMap)
                .toList();
        return new TerritoryMap(season.species(), season.year(), season.settings(), maps, maker.warnings());
    }

    /** How many territories of a river count, without a word on why: as of the map, in a small part of its time. */
    static int counted(Season season, UUID riverId) {
        Admission admission = Admission.of(season.sightings(), season.settings(), DoubtfulAge.USUAL);
        Field field = Field.of(admission.admitted(), season);
        return season.count(Clustering.of(field, season, 0), riverId, Standing.COUNTED);
    }

    /** The accepted territories, river by river, going upstream: as of the map, in a small part of its time. */
    static List<TerritoryOutline> outlines(Season season) {
        Admission admission = Admission.of(season.sightings(), season.settings(), DoubtfulAge.USUAL);
        Field field = Field.of(admission.admitted(), season);
        List<Cluster> clusters = Clustering.of(field, season, 0);
        List<TerritoryOutline> outlines = new ArrayList<>();
        for (River river : season.records().rivers().rivers()) {
            List<Cluster> listed = on(river, clusters);
            for (int i = 0; i < listed.size(); i++) {
                Cluster cluster = listed.get(i);
                if (season.standing(cluster) != Standing.NOT_ACCEPTED) {
                    outlines.add(new TerritoryOutline(
                            season.species(),
                            season.year(),
                            river,
                            letter(i),
                            stretch(cluster, field),
                            centre(cluster),
                            Grading.of(cluster, season.settings())));
                }
            }
        }
        return outlines;
    }

    private static List<Cluster> on(River river, List<Cluster> clusters) {
        return clusters.stream()
                .filter(cluster -> cluster.riverId().equals(river.id()))
                .toList();
    }

    private List<Message> warnings() {
        List<Message> warnings = new ArrayList<>(EffortWarnings.of(season));
        warnings.addAll(RecordWarnings.of(season, admission));
        warnings.addAll(ClusterWarnings.of(season, field, clusters));
        return warnings;
    }

    private RiverMap riverMap(River river) {
        Effort effort = season.effort(river.id()).within(season.water(), river.id());
        List<Cluster> listed = on(river, clusters);
        List<Territory> territories = new ArrayList<>();
        for (int i = 0; i < listed.size(); i++) {
            if (touchesWater(listed.get(i))) {
                territories.add(territory(listed, i));
            }
        }
        List<Aside> aside = admission.aside().stream()
                .filter(one -> season.water()
                        .contains(river.id(), one.sighting().place().chainage()))
                .filter(one -> one.sighting().place().riverId().equals(river.id()))
                .sorted(Comparator.comparing(one -> one.sighting().date()))
                .toList();
        return new RiverMap(
                river,
                effort.surveyed(),
                effort.visits().size(),
                effort.effective().size(),
                VisitEfficiency.of(listed, effort),
                count(river.id(), territories, aside),
                territories,
                aside.stream()
                        .map(one -> new SetAside(one.sighting(), one.because()))
                        .toList());
    }

    private boolean touchesWater(Cluster cluster) {
        return cluster.members().stream()
                .anyMatch(member -> season.water()
                        .contains(member.place().riverId(), member.place().chainage()));
    }

    private Territory territory(List<Cluster> listed, int place) {
        Cluster cluster = listed.get(place);
        UUID water = season.outlet(cluster.riverId());
        Field here = Objects.requireNonNull(byWater.get(water));
        return new Territory(
                letter(place),
                stretch(cluster, field),
                arm(cluster),
                centre(cluster),
                season.standing(cluster),
                season.isEdge(cluster),
                Grading.of(cluster, season.settings()),
                cluster.sightings().stream().map(Member.Seen::sighting).toList(),
                cluster.nests().stream().map(nest -> nest.history().nest()).toList(),
                Reasons.of(season, here, listed, place),
                hanging.computeIfAbsent(water, river -> new HangingRecords(season, here))
                        .of(listed, place));
    }

    static String letter(int place) {
        String last = String.valueOf((char) ('A' + place % 26));
        return place < 26 ? last : letter(place / 26 - 1) + last;
    }

    private static Stretch stretch(Cluster cluster, Field field) {
        Chainage lower = cluster.lowest();
        Chainage upper = cluster.highest();
        for (Field.Wall wall : field.walls()) {
            if (wall.riverId().equals(cluster.riverId())
                    && cluster.holds(wall.sighting().id())) {
                Chainage end = new Chainage(wall.metres());
                lower = lower.compareTo(end) <= 0 ? lower : end;
                upper = upper.compareTo(end) >= 0 ? upper : end;
            }
        }
        return new Stretch(lower, upper);
    }

    private static Optional<Territory.Arm> arm(Cluster cluster) {
        return cluster.members().stream()
                .map(member -> member.place().riverId())
                .filter(river -> !river.equals(cluster.riverId()))
                .findFirst()
                .map(river -> {
                    List<Member> members = cluster.on(river);
                    return new Territory.Arm(
                            river,
                            new Stretch(
                                    members.get(0).place().chainage(),
                                    members.get(members.size() - 1).place().chainage()));
                });
    }

    private static Chainage centre(Cluster cluster) {
        List<Member> home = cluster.atHome();
        double below = home.get((home.size() - 1) / 2).metres();
        double above = home.get(home.size() / 2).metres();
        return new Chainage((below + above) / 2);
    }

    private Count count(UUID riverId, List<Territory> territories, List<Aside> aside) {
        List<Reading> tried = readings.on(riverId);
        int likely = standing(territories, Standing.COUNTED);
        int unassigned =
                (int) aside.stream().filter(one -> one.reason().unassigned()).count();
        for (Territory territory : territories) {
            unassigned += territory.accepted() ? 0 : territory.registrations().size();
        }
        return new Count(
                likely,
                tried.stream().mapToInt(Reading::count).reduce(likely, Math::min),
                tried.stream().mapToInt(Reading::count).reduce(likely, Math::max),
                standing(territories, Standing.EDGE),
                unassigned,
                tried);
    }

    private static int standing(List<Territory> territories, Standing standing) {
        return (int) territories.stream()
                .filter(territory -> territory.standing() == standing)
                .count();
    }
}
