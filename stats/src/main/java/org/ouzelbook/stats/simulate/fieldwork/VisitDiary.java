package org.ouzelbook.stats.simulate.fieldwork;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.stats.simulate.Draws;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Direction;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.TravelMode;
import org.ouzelbook.tracker.domain.Visit;

/** The visits of a season as they came about: made, broken off, made in bad conditions, or missed. */
final class VisitDiary {
    private static final double POOR = -2.5;
    private static final List<String> WEATHER =
            List.of("dry, light wind", "dry, calm", "cloudy", "bright, cold", "light showers", "mild, some wind");
    private static final List<String> BROKEN_OFF = List.of(
            "broken off: rain", "broken off: dusk", "broken off: path flooded", "broken off: cattle on the bank");
    private static final List<String> MISSED = List.of("missed: spate", "missed: snow", "missed: nobody free");

    private final FieldSeason plan;
    private final List<Species> lookedFor;

    private VisitDiary(FieldSeason plan, List<Species> lookedFor) {
        this.plan = plan;
        this.lookedFor = lookedFor;
    }

    static List<FieldVisit> of(FieldSeason plan, List<Species> lookedFor, Draws draws) {
        VisitDiary diary = new VisitDiary(plan, lookedFor);
        List<FieldVisit> visits = new ArrayList<>();
        for (int round = 0; round < plan.rounds().size(); round++) {
            for (Walk walk : plan.walks()) {
                String label = plan.season() + "-" + (round + 1) + walk.letter();
                visits.add(diary.visit(label, plan.rounds().get(round), walk, draws.branch("visit", label)));
            }
        }
        return visits;
    }

    private FieldVisit visit(String label, LocalDate round, Walk walk, Draws draws) {
        LocalTime start = LocalTime.of(7, 0).plusMinutes(5L * draws.below(20));
        double chance = draws.uniform();
        if (chance < plan.missed()) {
            return visit(label, round, walk, start, Optional.empty(), false, "", draws.oneOf(MISSED), 0, draws);
        }
        if (chance < plan.missed() + plan.partial()) {
            Stretch part = part(walk, draws.between(0.35, 0.8));
            String why = draws.oneOf(BROKEN_OFF);
            return visit(label, round, walk, start, Optional.of(part), true, "normal", why, walk.skill(), draws);
        }
        if (chance < plan.missed() + plan.partial() + plan.poor()) {
            double skill = walk.skill() + POOR;
            Optional<Stretch> whole = Optional.of(walk.stretch());
            return visit(label, round, walk, start, whole, false, "spate", "water brown and loud", skill, draws);
        }
        String level = draws.oneOf(List.of("low", "normal", "normal", "a little high"));
        return visit(label, round, walk, start, Optional.of(walk.stretch()), true, level, "", walk.skill(), draws);
    }

    private static Stretch part(Walk walk, double share) {
        double gone = Math.round(walk.stretch().length() * share / 100) * 100.0;
        return walk.direction() == Direction.UPSTREAM
                ? new Stretch(
                        walk.stretch().lower(),
                        new Chainage(walk.stretch().lower().metres() + gone))
                : new Stretch(
                        new Chainage(walk.stretch().upper().metres() - gone),
                        walk.stretch().upper());
    }

    private FieldVisit visit(
            String label,
            LocalDate round,
            Walk walk,
            LocalTime start,
            Optional<Stretch> walked,
            boolean effective,
            String level,
            String note,
            double skill,
            Draws draws) {
        Optional<LocalTime> end = walked.map(stretch -> start.plusMinutes(FieldVisit.minutes(stretch.length()) + 5));
        Visit visit = new Visit(
                draws.key(),
                label,
                walk.riverId(),
                round.plusDays(walk.daysAfter()),
                walked.map(stretch -> start),
                end,
                walked,
                Optional.of(walk.direction()),
                Optional.of(TravelMode.FOOT),
                walk.observers().stream().map(Observer::initials).toList(),
                lookedFor,
                level,
                walked.isPresent() ? draws.oneOf(WEATHER) : "",
                effective,
                note);
        return new FieldVisit(visit, skill);
    }
}
