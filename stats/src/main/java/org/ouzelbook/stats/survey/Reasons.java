package org.ouzelbook.stats.survey;

import static org.ouzelbook.stats.survey.SeasonDecisions.where;

import java.time.LocalDate;
import java.time.MonthDay;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.ouzelbook.stats.estimator.segmentation.Acceptance;
import org.ouzelbook.stats.survey.Territory.Standing;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.DecisionKind;
import org.ouzelbook.tracker.domain.Message;

/** Why a cluster stands, or does not, and what bounds it, in sentences that name the lines of the notebook. */
final class Reasons {
    private final Season season;
    private final Field field;
    private final List<Cluster> listed;
    private final Cluster cluster;
    private final List<Message> reasons = new ArrayList<>();

    private Reasons(Season season, Field field, List<Cluster> listed, int place) {
        this.season = season;
        this.field = field;
        this.listed = listed;
        this.cluster = listed.get(place);
    }

    /**
     * The reasons for one cluster.
     *
     * @param listed every cluster of its river, going upstream
     * @param place which of them
     */
    static List<Message> of(Season season, Field field, List<Cluster> listed, int place) {
        Reasons reasons = new Reasons(season, field, listed, place);
        reasons.sayWhatIsThere();
        reasons.sayWhetherAccepted();
        reasons.sayWhereItCounts();
        reasons.sayWhatBindsIt();
        if (place > 0) {
            reasons.sayWhatSeparates(place - 1);
        }
        if (place + 1 < listed.size()) {
            reasons.sayWhatSeparates(place + 1);
        }
        reasons.sayWhereItEnds();
        reasons.sayTheEvidence();
        reasons.sayWhatWasNoted();
        return List.copyOf(reasons.reasons);
    }

    private void say(String key, Object... facts) {
        reasons.add(Message.of(key, facts));
    }

    private void sayWhatIsThere() {
        List<Member.Seen> sightings = cluster.sightings();
        if (!sightings.isEmpty()) {
            LocalDate first = sightings.get(0).first();
            LocalDate last = sightings.get(sightings.size() - 1).first();
            long days = sightings.stream().map(Member.Seen::first).distinct().count();
            say(
                    "map.because.sightings",
                    sightings.size(),
                    names(sightings),
                    days,
                    MonthDay.from(first),
                    MonthDay.from(last),
                    ChronoUnit.DAYS.between(first, last));
        }
        for (Member.Nesting nest : cluster.nests()) {
            say(
                    "map.because.nest",
                    nest.name(),
                    nest.dates().size(),
                    nest.dates().stream().map(MonthDay::from).toList());
        }
        if (cluster.nests().size() > 1) {
            say("map.because.attempts", cluster.nests().size());
        }
    }

    private void sayWhetherAccepted() {
        if (cluster.accepted()) {
            cluster.members().stream()
                    .filter(member -> season.settings().isDecisive(member.code()))
                    .min((one, other) -> one.first().compareTo(other.first()))
                    .ifPresent(member -> say(
                            "map.because.decisive", member.name(), member.code().number()));
            return;
        }
        List<Decision> vacant = season.decisions().about(cluster, DecisionKind.NO_TERRITORY);
        if (!vacant.isEmpty()) {
            vacant.forEach(
                    decision -> say("map.because.decidedNone", where(decision), SeasonDecisions.words(decision)));
            return;
        }
        Acceptance acceptance = season.acceptance(cluster.riverId(), 0);
        double lower = cluster.lowest().metres();
        double upper = cluster.highest().metres();
        int visits = acceptance.visitsCovering(lower, upper);
        int days = cluster.days().size();
        int needed = acceptance.daysNeeded(lower, upper);
        if (days < needed) {
            say(visits == 0 ? "map.because.noVisits" : "map.because.tooFew", days, visits, needed);
        } else {
            say("map.because.tooClose", cluster.spreadDays(), season.settings().minimumSpreadDays(), visits);
        }
    }

    private void sayWhereItCounts() {
        Standing standing = season.standing(cluster);
        int inside = season.inside(cluster);
        int all = cluster.registrations();
        if (standing == Standing.OUTSIDE) {
            say("map.because.outside");
        } else if (standing == Standing.ELSEWHERE) {
            say("map.because.elsewhere");
        } else if (season.isEdge(cluster)) {
            say(standing == Standing.COUNTED ? "map.because.edgeCounted" : "map.because.edgeNotCounted", inside, all);
        }
    }

    private void sayWhatBindsIt() {
        season.decisions()
                .about(cluster, DecisionKind.TOGETHER)
                .forEach(decision -> say("map.because.decidedOne", where(decision), SeasonDecisions.words(decision)));
        cluster.members().stream()
                .map(member -> member.place().riverId())
                .filter(river -> !river.equals(cluster.riverId()))
                .findFirst()
                .ifPresent(river -> say(
                        "map.because.joined",
                        season.records().rivers().river(river).name(),
                        names(cluster.on(river)),
                        season.records().rivers().river(cluster.riverId()).name()));
        for (Field.Link link : field.links()) {
            boolean inside =
                    cluster.holds(link.one().id()) && cluster.holds(link.other().id());
            if (inside && link.kind() == Field.Kind.SAME_RINGS) {
                say("map.because.sameRings", link.one().name(), link.other().name());
            } else if (inside && link.kind() == Field.Kind.BROOD) {
                say("map.because.brood", link.other().name(), link.one().name());
            }
        }
        DoubtfulGap.of(cluster, field, season)
                .ifPresent(gap -> say("map.because.gap", gap.metres() / 1000, gap.from(), gap.to()));
    }

    private void sayWhatSeparates(int neighbourPlace) {
        Cluster neighbour = listed.get(neighbourPlace);
        String letter = MapMaker.letter(neighbourPlace);
        Separation separation = Separation.between(cluster, neighbour, field, season);
        for (Field.Link link : separation.links()) {
            boolean mineFirst = cluster.holds(link.one().id());
            Member mine = mineFirst ? link.one() : link.other();
            Member theirs = mineFirst ? link.other() : link.one();
            if (link.kind() == Field.Kind.SIMULTANEOUS) {
                say("map.because.simultaneous", letter, mine.name(), theirs.name(), MonthDay.from(mine.first()));
            } else {
                say("map.because.twoNests", letter, mine.name(), theirs.name());
            }
        }
        for (Field.Wall wall : separation.walls()) {
            if (!cluster.holds(wall.sighting().id())) {
                say(
                        "map.because.otherTurnedBack",
                        letter,
                        new Chainage(wall.metres()),
                        Member.name(wall.sighting()),
                        MonthDay.from(wall.sighting().date()));
            }
        }
        for (Decision decision : separation.decisions()) {
            say(
                    decision.kind() == DecisionKind.BOUNDARY
                            ? "map.because.decidedBoundary"
                            : "map.because.decidedBetween",
                    letter,
                    where(decision),
                    SeasonDecisions.words(decision));
        }
        double together = Separation.lengthTogether(cluster, neighbour);
        if (together > season.settings().maximumLengthMetres()) {
            say(
                    "map.because.tooLong",
                    letter,
                    together / 1000,
                    season.settings().maximumLengthMetres() / 1000);
        }
    }

    private void sayWhereItEnds() {
        for (Field.Wall wall : field.walls()) {
            if (cluster.holds(wall.sighting().id())) {
                say(
                        wall.isUpperEnd() ? "map.because.upperEnd" : "map.because.lowerEnd",
                        new Chainage(wall.metres()),
                        Member.name(wall.sighting()),
                        MonthDay.from(wall.sighting().date()));
            }
        }
    }

    private void sayTheEvidence() {
        Grading.of(cluster, season.settings()).ifPresent(evidence -> {
            BreedingCode code = evidence.code();
            List<Member> behind = Grading.behind(cluster, evidence);
            if (code.number() == 4 && behind.size() >= 2) {
                Member first = behind.get(0);
                Member last = behind.get(1);
                say(
                        "map.because.heldTerritory",
                        first.name(),
                        MonthDay.from(first.first()),
                        last.name(),
                        MonthDay.from(last.first()),
                        ChronoUnit.DAYS.between(first.first(), last.first()));
            } else {
                code.evidenceClass()
                        .ifPresent(shown -> say("map.because.evidence", shown, code.number(), names(behind)));
            }
        });
    }

    private void sayWhatWasNoted() {
        season.decisions().followed().stream()
                .filter(decision -> decision.kind() == DecisionKind.NOTE)
                .filter(decision -> decision.riverId().equals(cluster.riverId()))
                .filter(decision ->
                        decision.stretch().intersection(cluster.stretch()).isPresent())
                .forEach(decision -> say("map.because.noted", where(decision), SeasonDecisions.words(decision)));
    }

    private static List<Object> names(List<? extends Member> members) {
        return members.stream().map(Member::name).toList();
    }
}
