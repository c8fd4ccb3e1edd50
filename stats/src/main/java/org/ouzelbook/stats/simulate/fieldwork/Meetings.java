package org.ouzelbook.stats.simulate.fieldwork;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import org.ouzelbook.stats.simulate.Draws;
import org.ouzelbook.stats.simulate.nature.Attempt.Phase;
import org.ouzelbook.stats.simulate.nature.Bird;
import org.ouzelbook.stats.simulate.nature.Ground;
import org.ouzelbook.stats.simulate.nature.TruePair;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Stretch;

/** Whom the observers meet on one visit, of one species. */
final class Meetings {
    private static final double BORDER_GAP_METRES = 200;
    private static final double ROAMING_METRES = 2000;

    private final FieldVisit visit;
    private final Detection detection;
    private final Ringing ringing;
    private final Draws sites;
    private final Draws draws;
    private final LocalDate day;
    private final List<Glimpse> glimpses = new ArrayList<>();

    /**
     * @param sites the branch for what lasts at a site: how easily its birds are found
     * @param draws the branch for this visit
     */
    private Meetings(FieldVisit visit, Detection detection, Ringing ringing, Draws sites, Draws draws) {
        this.visit = visit;
        this.detection = detection;
        this.ringing = ringing;
        this.sites = sites;
        this.draws = draws;
        this.day = visit.visit().date();
    }

    static List<Glimpse> on(
            FieldVisit visit, List<TruePair> pairs, Detection detection, Ringing ringing, Draws sites, Draws draws) {
        Meetings meetings = new Meetings(visit, detection, ringing, sites, draws);
        List<TruePair> found = pairs.stream().filter(meetings::finds).toList();
        found.forEach(meetings::meet);
        meetings.quarrels(found);
        if (!pairs.isEmpty()) {
            meetings.strays(pairs.get(0));
            pairs.forEach(meetings::roamingYoung);
        }
        return meetings.glimpses;
    }

    private boolean finds(TruePair pair) {
        double monthsOff = Math.abs(day.getDayOfYear()
                        - detection.best().atYear(day.getYear()).getDayOfYear())
                / 30.0;
        double logOdds = Draws.logOdds(detection.found())
                + sites.branch(pair.site().name()).normal(0, detection.betweenPairs())
                + visit.skill()
                - detection.lossPerMonth() * monthsOff
                - (Behaviour.phase(pair, day) == Phase.INCUBATION ? detection.lossIncubating() : 0);
        return draws.branch("finds", pair.site().name()).happens(Draws.probability(logOdds));
    }

    private void meet(TruePair pair) {
        Draws chance = draws.branch("meets", pair.site().name());
        int times = 1 + chance.poisson(detection.repeats());
        for (int i = 0; i < times; i++) {
            boolean atNest = chance.happens(detection.focalShare());
            Ground ground = atNest ? pair.home() : anyGround(pair, chance);
            Stretch stretch = ground.stretch();
            double metres = atNest
                    ? clipped(chance.normal(pair.site().at().metres(), detection.focalSpreadMetres()), stretch)
                    : chance.between(stretch.lower().metres(), stretch.upper().metres());
            double written = rounded(metres + chance.normal(0, detection.placeErrorMetres()));
            if (visit.covers(ground.riverId(), metres) && visit.covers(ground.riverId(), written)) {
                Glimpse glimpse = glimpse(pair, written, chance);
                Behaviour.fill(glimpse, pair, day, atNest, chance);
                flush(glimpse, stretch, chance);
                look(glimpse, pair, chance);
                glimpses.add(glimpse);
            }
        }
    }

    private Glimpse glimpse(TruePair pair, double metres, Draws chance) {
        return new Glimpse(pair.species(), metres, visit.passing(metres).plusMinutes(chance.below(4)));
    }

    private static Ground anyGround(TruePair pair, Draws chance) {
        double whole = pair.grounds().stream()
                .mapToDouble(ground -> ground.stretch().length())
                .sum();
        double at = chance.uniform() * whole;
        for (Ground ground : pair.grounds()) {
            at -= ground.stretch().length();
            if (at < 0) {
                return ground;
            }
        }
        return pair.home();
    }

    private static double clipped(double metres, Stretch stretch) {
        return Math.min(stretch.upper().metres(), Math.max(stretch.lower().metres(), metres));
    }

    private static double rounded(double metres) {
        return Math.max(0, Math.round(metres / 10) * 10.0);
    }

    /** A bird driven ahead flies on, and turns back over the observer at the end of its water. */
    private void flush(Glimpse glimpse, Stretch ground, Draws chance) {
        boolean busy = glimpse.age != Age.ADULT || glimpse.activities.contains(Activity.CARRYING_FOOD);
        if (busy || !chance.happens(detection.flushed())) {
            return;
        }
        double end = visit.upstream() ? ground.upper().metres() : ground.lower().metres();
        double room = Math.abs(end - glimpse.metres);
        double flown = Math.max(80, chance.exponential(300));
        glimpse.turnedBack = flown >= room;
        double metres =
                visit.upstream() ? glimpse.metres + Math.min(flown, room) : glimpse.metres - Math.min(flown, room);
        glimpse.flewTo = OptionalDouble.of(rounded(metres));
        glimpse.does(visit.upstream() ? Activity.FLYING_UP : Activity.FLYING_DOWN);
    }

    private void look(Glimpse glimpse, TruePair pair, Draws chance) {
        if (glimpse.age == Age.ADULT) {
            Bird bird = chance.happens(0.5) ? pair.female() : pair.male();
            ringing.read(glimpse, bird, day, chance);
        }
    }

    private void quarrels(List<TruePair> found) {
        List<TruePair> along = found.stream()
                .filter(pair -> pair.home().riverId().equals(visit.visit().riverId()))
                .sorted(Comparator.comparing(pair -> pair.site().at()))
                .toList();
        for (int i = 1; i < along.size(); i++) {
            TruePair below = along.get(i - 1);
            TruePair above = along.get(i);
            double lower = below.home().stretch().upper().metres();
            double upper = above.home().stretch().lower().metres();
            Draws chance =
                    draws.branch("quarrel", below.site().name(), above.site().name());
            if (upper - lower <= BORDER_GAP_METRES && chance.happens(detection.quarrels())) {
                UUID quarrel = chance.key();
                double meeting = (lower + upper) / 2;
                LocalTime time = visit.passing(meeting);
                quarrel(below, meeting - chance.between(20, 90), time, quarrel, chance);
                quarrel(above, meeting + chance.between(20, 90), time, quarrel, chance);
            }
        }
    }

    private void quarrel(TruePair pair, double metres, LocalTime time, UUID quarrel, Draws chance) {
        double written = rounded(metres);
        if (visit.covers(pair.home().riverId(), written)) {
            Glimpse glimpse = new Glimpse(pair.species(), written, time);
            glimpse.does(chance.happens(0.6) ? Activity.AGGRESSION : Activity.SINGING);
            glimpse.quarrel = Optional.of(quarrel);
            glimpses.add(glimpse);
        }
    }

    private void strays(TruePair any) {
        Stretch walked = visit.visit().walked().orElseThrow();
        Draws chance = draws.branch("strays");
        int met = chance.poisson(detection.straysPerKm() * walked.length() / 1000);
        for (int i = 0; i < met; i++) {
            double metres = rounded(
                    chance.between(walked.lower().metres() + 5, walked.upper().metres() - 5));
            Glimpse glimpse = glimpse(any, metres, chance);
            glimpse.age = chance.happens(0.5) ? Age.ADULT : Age.UNKNOWN;
            Behaviour.plain(glimpse, 0.05, chance);
            glimpses.add(glimpse);
        }
    }

    private void roamingYoung(TruePair pair) {
        long roaming = pair.attempts().stream()
                .filter(attempt -> !attempt.young().isEmpty() && day.isAfter(attempt.independence()))
                .mapToLong(attempt -> attempt.young().size())
                .sum();
        Draws chance = draws.branch("young", pair.site().name());
        int met = chance.poisson(detection.roamingYoung() * roaming);
        for (int i = 0; i < met; i++) {
            double metres = rounded(chance.normal(pair.site().at().metres(), ROAMING_METRES));
            if (visit.covers(pair.home().riverId(), metres)) {
                Glimpse glimpse = glimpse(pair, metres, chance);
                glimpse.age = chance.oneOf(List.of(
                        Age.INDEPENDENT_JUVENILE, Age.INDEPENDENT_JUVENILE, Age.INDEPENDENT_JUVENILE, Age.JUVENILE));
                glimpse.does(Activity.FEEDING);
                glimpses.add(glimpse);
            }
        }
    }
}
