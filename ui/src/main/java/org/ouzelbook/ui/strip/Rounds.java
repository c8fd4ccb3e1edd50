package org.ouzelbook.ui.strip;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.NavigableMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;

/**
 * The dates of one river as rows: visits a few days apart that share out the river between them are one round, and one row;
 * so is a visit of that time that was missed. Two visits to the same water are never one row.
 */
final class Rounds {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
    private static final DateTimeFormatter DAY_OF_MONTH = DateTimeFormatter.ofPattern("d", Locale.ENGLISH);
    private static final long MOST_DAYS = 4;
    private static final double SHARED_METRES = 200;

    private final NavigableMap<LocalDate, LocalDate> firstDays = new TreeMap<>();
    private final NavigableMap<LocalDate, LocalDate> lastDays = new TreeMap<>();

    private Rounds() {}

    /**
     * {@return the rounds of one river}
     *
     * @param visits its visits
     * @param sightings its sightings; those on days without a visit get rows of their own
     */
    static Rounds of(List<Visit> visits, List<Sighting> sightings) {
        NavigableMap<LocalDate, List<Stretch>> byDay = new TreeMap<>();
        for (Visit visit : visits) {
            List<Stretch> walked = byDay.computeIfAbsent(visit.date(), day -> new ArrayList<>());
            visit.walked().ifPresent(walked::add);
        }
        Rounds rounds = new Rounds();
        List<Stretch> inRound = new ArrayList<>();
        for (LocalDate day : byDay.keySet()) {
            List<Stretch> walked = byDay.getOrDefault(day, List.of());
            boolean joins = !rounds.lastDays.isEmpty()
                    && ChronoUnit.DAYS.between(rounds.lastDays.lastKey(), day) <= MOST_DAYS
                    && shared(inRound, walked) <= SHARED_METRES;
            if (!joins) {
                inRound.clear();
            }
            inRound.addAll(walked);
            LocalDate first = joins ? rounds.lastDays.lastKey() : day;
            rounds.firstDays.put(day, first);
            rounds.lastDays.put(first, day);
        }
        for (Sighting sighting : sightings) {
            rounds.firstDays.putIfAbsent(sighting.date(), sighting.date());
        }
        return rounds;
    }

    private static double shared(List<Stretch> some, List<Stretch> others) {
        return some.stream()
                .flatMap(one -> others.stream().flatMap(other -> one.intersection(other).stream()))
                .mapToDouble(Stretch::length)
                .sum();
    }

    /** {@return the first day of each row} */
    SortedSet<LocalDate> rows() {
        return new TreeSet<>(firstDays.values());
    }

    /**
     * {@return the first day of the row that a day belongs to}
     *
     * @param day a day with a visit or a sighting
     */
    LocalDate row(LocalDate day) {
        return firstDays.getOrDefault(day, day);
    }

    /**
     * {@return the days of a row, as they stand beside it}
     *
     * @param firstDay the first day of the row
     */
    String words(LocalDate firstDay) {
        LocalDate last = lastDays.getOrDefault(firstDay, firstDay);
        if (last.equals(firstDay)) {
            return DAY.format(firstDay);
        }
        DateTimeFormatter first = last.getMonth() == firstDay.getMonth() ? DAY_OF_MONTH : DAY;
        return first.format(firstDay) + "–" + DAY.format(last);
    }
}
