package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.stats.estimator.segmentation.Constraint;
import org.ouzelbook.stats.estimator.segmentation.Decided;
import org.ouzelbook.stats.estimator.segmentation.Registration;
import org.ouzelbook.stats.estimator.segmentation.SurveyedLine;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * One river in one season as the model of territories sees it: the water that was walked, with as much beyond as a territory
 * can reach, each registration with its visit, and what is known besides.
 *
 * @param river key of the river
 * @param effort the effort on it
 * @param line the line
 * @param registered the sightings that became registrations, in the line's order
 */
record ModelLine(UUID river, Effort effort, SurveyedLine line, List<Sighting> registered) {
    /** Weight of a map that puts two nests into one territory, or limits where one bird went. */
    static final double HARDLY = 1e-3;

    /** A territory ends within this distance of the place where its bird turned back. Common practice, no source. */
    private static final double TURN_METRES = 100;

    /** A holder turns within these 200 m at either end; a bird without a ground anywhere in some 2 km. Own arithmetic. */
    private static final double TURN_FITS = 5;

    private static final double TURN_ELSEWHERE = 0.05;

    /** Two birds no farther apart can be seen at one time, in metres. Common practice, no source. */
    private static final double IN_SIGHT = 500;

    /** Weight of a limit between the two ends of a flight. Common practice, no source. */
    private static final double FLIGHT = 0.05;

    /**
     * The line of a river; empty where no effective visit went.
     *
     * @param season the season
     * @param field what its records say for certain
     * @param river key of the river
     * @param water all the water that the river has
     * @param reach the longest territory, in metres
     * @param notes whether the book ever notes birds as seen at once
     */
    static Optional<ModelLine> of(Season season, Field field, UUID river, Stretch water, double reach, boolean notes) {
        Effort effort = season.effort(river);
        if (effort.surveyed().isEmpty() || !(water.length() > 0)) {
            return Optional.empty();
        }
        double walkedFrom = effort.surveyed().get(0).lower().metres();
        double walkedTo =
                effort.surveyed().get(effort.surveyed().size() - 1).upper().metres();
        double lower = Math.max(water.lower().metres(), walkedFrom - reach);
        double upper = Math.min(water.upper().metres(), walkedTo + reach);
        List<Member> members = field.on(river).stream()
                .filter(member -> member.metres() >= lower && member.metres() <= upper)
                .toList();
        List<Registration> registrations = new ArrayList<>();
        List<Sighting> registered = new ArrayList<>();
        Decided decided = season.decisions().on(river);
        List<Constraint> constraints = new ArrayList<>();
        for (Member member : members) {
            if (member instanceof Member.Seen seen) {
                registrations.add(registration(seen, effort));
                registered.add(seen.sighting());
                flights(seen.sighting(), constraints);
            } else if (decided.vacant().stream()
                    .noneMatch(span -> span.lower() <= member.metres() && member.metres() <= span.upper())) {
                constraints.add(new Constraint.Held(member.metres()));
            }
        }
        links(field, river, effort, constraints);
        decisions(decided, constraints);
        return Optional.of(new ModelLine(
                river,
                effort,
                new SurveyedLine(lower, upper, effort.visitedWater(), registrations, constraints, notes ? IN_SIGHT : 0),
                List.copyOf(registered)));
    }

    static Registration registration(Member.Seen seen, Effort effort) {
        return new Registration(seen.metres(), effort.visit(seen.sighting().date()));
    }

    /**
     * The line of a river as far as some water and what a territory can reach beyond it; without a visit where none was made.
     *
     * @param known the line so far
     * @param walked the water, going up; not empty
     * @param water all the water that the river has
     * @param reach the longest territory, in metres
     */
    static SurveyedLine asFarAs(Optional<ModelLine> known, List<Stretch> walked, Stretch water, double reach) {
        double lower = Math.max(water.lower().metres(), walked.get(0).lower().metres() - reach);
        double upper = Math.min(
                water.upper().metres(), walked.get(walked.size() - 1).upper().metres() + reach);
        return known.map(ModelLine::line)
                .map(line -> new SurveyedLine(
                        Math.min(lower, line.lower()),
                        Math.max(upper, line.upper()),
                        line.visits(),
                        line.registrations(),
                        line.constraints(),
                        line.inSight()))
                .orElseGet(() -> new SurveyedLine(lower, upper, List.of(), List.of(), List.of(), 0));
    }

    /** Whether a record on the river lies on the line. */
    boolean holds(Member member) {
        return line.lower() <= member.metres() && member.metres() <= line.upper();
    }

    /** The day of each visit. */
    List<Long> days() {
        return effort.effective().stream().map(day -> day.date().toEpochDay()).toList();
    }

    /** How much of a stretch a day's visits covered, in metres. */
    double walked(LocalDate date, double lower, double upper) {
        int visit = effort.visit(date);
        return visit < 0 ? 0 : effort.visitedWater().get(visit).lengthWithin(lower, upper);
    }

    /** Whether a day's visits met a bird on a stretch. */
    boolean met(LocalDate date, double lower, double upper) {
        int visit = effort.visit(date);
        return visit >= 0
                && line.registrations().stream()
                        .anyMatch(one -> one.visit() == visit && lower <= one.position() && one.position() <= upper);
    }

    private static void flights(Sighting sighting, List<Constraint> constraints) {
        if (sighting.flewTo().isEmpty()) {
            return;
        }
        double from = sighting.place().chainage().metres();
        double to = sighting.flewTo().map(Chainage::metres).orElseThrow();
        constraints.add(
                sighting.turnedBack()
                        ? new Constraint.Turn(from, to, TURN_METRES, TURN_FITS, TURN_ELSEWHERE)
                        : new Constraint.Bond(Math.min(from, to), Math.max(from, to), FLIGHT));
    }

    private static void links(Field field, UUID river, Effort effort, List<Constraint> constraints) {
        for (Field.Link link : field.links()) {
            if (!link.one().place().riverId().equals(river)
                    || !link.other().place().riverId().equals(river)) {
                continue;
            }
            double lower = Math.min(link.one().metres(), link.other().metres());
            double upper = Math.max(link.one().metres(), link.other().metres());
            if (link.one() instanceof Member.Seen one
                    && link.other() instanceof Member.Seen other
                    && link.kind() == Field.Kind.SIMULTANEOUS) {
                constraints.add(new Constraint.Simultaneous(registration(one, effort), registration(other, effort)));
            } else {
                constraints.add(
                        link.kind().apart()
                                ? new Constraint.Apart(lower, upper, HARDLY)
                                : new Constraint.Bond(lower, upper, HARDLY));
            }
        }
    }

    private static void decisions(Decided decided, List<Constraint> constraints) {
        decided.limits().forEach(metres -> constraints.add(new Constraint.Limit(metres)));
        for (Decided.Span span : decided.together()) {
            constraints.add(new Constraint.Bond(span.lower(), span.upper(), 0));
            constraints.add(new Constraint.Held(span.lower()));
        }
        decided.vacant().forEach(span -> constraints.add(new Constraint.Vacant(span.lower(), span.upper())));
    }
}
