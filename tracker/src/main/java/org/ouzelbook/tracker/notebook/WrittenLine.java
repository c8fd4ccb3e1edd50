package org.ouzelbook.tracker.notebook;

import java.math.BigDecimal;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Direction;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.TravelMode;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.river.RiverNetwork;

/**
 * A record written as the notebook line that would make it, to be corrected. What a line cannot say (a long observer's name, a
 * label) is left out; who reads the line again keeps it.
 */
public final class WrittenLine {
    private static final double[] UNCERTAINTY_BY_DECIMALS = {500, 50, 20, 10};
    private static final Map<Activity, String> WORDS = words();

    private WrittenLine() {}

    private static Map<Activity, String> words() {
        Map<Activity, String> words = new EnumMap<>(Activity.class);
        Vocabulary.phrases().forEach((phrase, meaning) -> {
            if (meaning instanceof Vocabulary.Meaning.Did did) {
                words.putIfAbsent(did.activity(), phrase);
            }
        });
        words.put(Activity.FLYING_UP, "flew up");
        words.put(Activity.FLYING_DOWN, "flew down");
        return words;
    }

    /**
     * {@return a sighting as a line}
     *
     * @param sighting a sighting
     * @param network the rivers of its book
     * @param visit its visit
     */
    public static String of(Sighting sighting, RiverNetwork network, Optional<Visit> visit) {
        List<String> words = new ArrayList<>();
        if (!sighting.simultaneousWith().isEmpty()) {
            words.add("=");
        }
        words.addAll(place(sighting.place(), network, visit));
        sighting.time().ifPresent(time -> words.add(time(time)));
        Species usual =
                visit.flatMap(one -> one.lookedFor().stream().findFirst()).orElse(Species.DIPPER);
        if (!sighting.species().equals(usual)) {
            words.add(sighting.species().englishName());
        }
        words.addAll(birds(sighting));
        sighting.activities().stream()
                .sorted()
                .filter(activity -> !isFlight(activity))
                .forEach(activity -> words.add(WORDS.getOrDefault(activity, "")));
        sighting.breedingCode().map(BreedingCode::number).ifPresent(code -> words.add("code " + code));
        if (!sighting.rings().isEmpty()) {
            words.add("rings " + sighting.rings());
        }
        words.addAll(flight(sighting));
        String line = String.join(" ", words);
        return sighting.note().isBlank() ? line : line + " // " + sighting.note();
    }

    private static boolean isFlight(Activity activity) {
        return activity == Activity.FLYING_UP || activity == Activity.FLYING_DOWN;
    }

    private static List<String> place(Place place, RiverNetwork network, Optional<Visit> visit) {
        List<String> words = new ArrayList<>();
        int decimals = decimals(place.chainage(), place.uncertaintyMetres());
        boolean named =
                visit.filter(one -> one.riverId().equals(place.riverId())).isEmpty()
                        && network.rivers().size() > 1;
        words.add((named ? network.river(place.riverId()).name() + " " : "")
                + String.format(
                        Locale.ROOT, "%." + decimals + "f", place.chainage().km()));
        if (place.uncertaintyMetres() != UNCERTAINTY_BY_DECIMALS[decimals]) {
            words.add("± " + decimal(place.uncertaintyMetres()) + " m");
        }
        if (place.bank() != Bank.UNKNOWN) {
            words.add(place.bank() == Bank.LEFT ? "LB" : place.bank() == Bank.RIGHT ? "RB" : "midstream");
        }
        return words;
    }

    /** As many decimals as say the place, and its uncertainty with it where that can be. */
    private static int decimals(Chainage chainage, double uncertaintyMetres) {
        for (int decimals = 1; decimals <= 3; decimals++) {
            if (isExact(chainage, decimals) && UNCERTAINTY_BY_DECIMALS[decimals] == uncertaintyMetres) {
                return decimals;
            }
        }
        return isExact(chainage, 2) ? 2 : 3;
    }

    private static boolean isExact(Chainage chainage, int decimals) {
        double units = chainage.km() * Math.pow(10, decimals);
        return Math.abs(units - Math.rint(units)) < 1e-6;
    }

    private static String km(Chainage chainage) {
        return String.format(Locale.ROOT, isExact(chainage, 2) ? "%.2f" : "%.3f", chainage.km());
    }

    private static String decimal(double number) {
        return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
    }

    private static List<String> birds(Sighting sighting) {
        List<String> words = new ArrayList<>();
        boolean pair = sighting.count() == 2 && sighting.age() == Age.ADULT && sighting.sex() == Sex.UNKNOWN;
        if (pair) {
            words.add("pair");
            return words;
        }
        if (sighting.count() > 1) {
            words.add(String.valueOf(sighting.count()));
        }
        String age = switch (sighting.age()) {
            case ADULT -> "ad";
            case DEPENDENT_JUVENILE -> "juv dep";
            case INDEPENDENT_JUVENILE -> "juv indep";
            case JUVENILE -> "juv";
            case FIRST_YEAR -> "1y";
            case UNKNOWN -> "";
        };
        if (!age.isEmpty()) {
            words.add(age);
        }
        if (sighting.sex() != Sex.UNKNOWN) {
            words.add(sighting.sex() == Sex.MALE ? "m" : "f");
        }
        return words;
    }

    private static List<String> flight(Sighting sighting) {
        List<String> words = new ArrayList<>();
        boolean up = sighting.activities().contains(Activity.FLYING_UP);
        boolean down = sighting.activities().contains(Activity.FLYING_DOWN);
        if (up) {
            words.add("flew up");
        }
        if (down) {
            words.add("flew down");
        }
        sighting.flewTo().ifPresent(to -> {
            if (sighting.turnedBack()) {
                words.add("back at " + km(to));
            } else if (up != down) {
                words.add("to " + km(to));
            } else {
                words.add("flew to " + km(to));
            }
        });
        return words;
    }

    /**
     * {@return a visit as the line that opens it, its end included}
     *
     * @param visit a visit
     * @param network the rivers of its book
     */
    public static String of(Visit visit, RiverNetwork network) {
        List<String> parts = new ArrayList<>();
        String first = "visit " + visit.date();
        if (visit.walked().isPresent()) {
            boolean upstream =
                    visit.direction().map(way -> way == Direction.UPSTREAM).orElse(true);
            Chainage from = upstream
                    ? visit.walked().get().lower()
                    : visit.walked().get().upper();
            Chainage to = upstream
                    ? visit.walked().get().upper()
                    : visit.walked().get().lower();
            String river =
                    network.rivers().size() > 1 ? network.river(visit.riverId()).name() + " " : "";
            first += " " + river + km(from) + " to " + river + km(to);
        }
        parts.add(first);
        visit.start()
                .ifPresent(start -> parts.add(
                        time(start) + visit.end().map(end -> "-" + time(end)).orElse("")));
        visit.observers().forEach(observer -> parts.add("by " + observer));
        if (!visit.lookedFor().isEmpty()) {
            parts.add("looking for "
                    + visit.lookedFor().stream().map(Species::englishName).collect(Collectors.joining(", ")));
        }
        visit.mode().ifPresent(mode -> parts.add(mode == TravelMode.FOOT ? "foot" : "canoe"));
        if (!visit.level().isBlank()) {
            parts.add("level " + visit.level().replaceAll("\\s*[,;]\\s*", " "));
        }
        if (!visit.weather().isBlank()) {
            parts.add("weather " + visit.weather().replaceAll("\\s*[,;]\\s*", " "));
        }
        if (!visit.effective()) {
            parts.add("not effective");
        }
        String line = String.join(", ", parts);
        return visit.note().isBlank() ? line : line + " // " + visit.note();
    }

    private static String time(LocalTime time) {
        return String.format(Locale.ROOT, "%02d%02d", time.getHour(), time.getMinute());
    }
}
