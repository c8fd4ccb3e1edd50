package org.ouzelbook.stats.simulate.fieldwork;

import java.time.LocalDate;
import java.time.Year;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ouzelbook.stats.simulate.Draws;
import org.ouzelbook.stats.simulate.nature.Attempt;
import org.ouzelbook.stats.simulate.nature.Bird;
import org.ouzelbook.stats.simulate.nature.TruePair;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Species;

/** Which birds carry rings, since when, and how they are read. Two colours left, metal over one colour right. */
final class Ringing {
    private static final int AGE_WHEN_RINGED = 10;

    private final RingingSettings settings;
    private final Draws draws;
    private final List<String> free;
    private final Map<String, RingedBird> byBird = new LinkedHashMap<>();

    private Ringing(RingingSettings settings, Draws draws) {
        this.settings = settings;
        this.draws = draws;
        this.free = combinations(settings.colours());
    }

    static Ringing none() {
        return new Ringing(new RingingSettings(Species.DIPPER, 0, 0, 0, 0, List.of(), 0, 0), Draws.of(0));
    }

    static Ringing of(RingingSettings settings, List<TruePair> pairs, Draws draws) {
        Ringing ringing = new Ringing(settings, draws.branch("ringing"));
        pairs.stream()
                .filter(pair -> pair.species().equals(settings.species()))
                .filter(pair -> pair.season() >= settings.firstSeason() && pair.season() <= settings.lastSeason())
                .forEach(ringing::visit);
        return ringing;
    }

    List<RingedBird> birds() {
        return List.copyOf(byBird.values());
    }

    private static List<String> combinations(List<String> colours) {
        List<String> all = new ArrayList<>();
        for (String upper : colours) {
            for (String lower : colours) {
                colours.forEach(right -> all.add(upper + lower + right));
            }
        }
        return all;
    }

    private void visit(TruePair pair) {
        for (Attempt attempt : pair.attempts()) {
            LocalDate day = attempt.hatching().plusDays(AGE_WHEN_RINGED);
            if (!attempt.young().isEmpty() && draws.happens(settings.broods())) {
                attempt.young().forEach(young -> ring(young, Sex.UNKNOWN, Optional.of(Year.of(young.hatched())), day));
            }
        }
        LocalDate caught = LocalDate.of(pair.season(), 3, 1 + draws.below(28));
        for (Bird bird : List.of(pair.female(), pair.male())) {
            if (!byBird.containsKey(bird.label()) && draws.happens(settings.grown())) {
                ring(bird, bird.sex(), Optional.empty(), caught);
            }
        }
    }

    private void ring(Bird bird, Sex sex, Optional<Year> hatched, LocalDate day) {
        if (free.isEmpty()) {
            return;
        }
        String rings = free.remove(draws.below(free.size()));
        String label = "D%03d".formatted(byBird.size() + 1);
        String left = rings.substring(0, 2);
        String right = "m" + rings.substring(2);
        String metal = "SK%05d".formatted(4100 + byBird.size());
        String note = hatched.isPresent() ? "nestling" : "";
        byBird.put(
                bird.label(),
                new RingedBird(draws.key(), label, "", left, "", right, metal, sex, hatched, Optional.of(day), note));
    }

    /** Writes into the glimpse what was read of a bird's rings, if anything. */
    void read(Glimpse glimpse, Bird bird, LocalDate day, Draws chance) {
        RingedBird ringed = byBird.get(bird.label());
        if (ringed == null || ringed.ringed().map(since -> !since.isBefore(day)).orElse(true)) {
            return;
        }
        double luck = chance.uniform();
        if (luck < settings.readWhole()) {
            glimpse.rings = ringed.leftLower() + "/" + ringed.rightLower();
        } else if (luck < settings.readWhole() + settings.readInPart()) {
            glimpse.rings = chance.oneOf(List.of(
                    "?/" + ringed.rightLower(),
                    ringed.leftLower() + "/?",
                    ringed.leftLower().charAt(0) + "?/m?"));
        } else if (chance.happens(0.2)) {
            glimpse.note = "ringed, not read";
        }
    }
}
