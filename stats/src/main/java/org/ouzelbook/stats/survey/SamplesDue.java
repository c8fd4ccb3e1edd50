package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.UUID;
import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.tracker.domain.Place;

/**
 * The kick samples that a year still needs so that it can be compared with the years before: the same places at the same time of
 * year. Each sample of the last year in which a place was sampled asks for one within a week of its day; one within 45 days of it
 * is taken for that one, since spring and autumn samples lie further apart. Samples within 100 m of each other are of one place.
 * The days and the metres: common practice, no source.
 *
 * @param due the samples, the earliest first
 */
public record SamplesDue(List<Due> due) {
    private static final int DAYS_AROUND = 7;
    private static final int SAME_SEASON_DAYS = 45;
    private static final double SAME_PLACE_METRES = 100;

    /** Copies the list. */
    public SamplesDue {
        due = List.copyOf(due);
    }

    /**
     * A sample that is due.
     *
     * @param place where
     * @param last when the sample was taken that it is to be compared with
     * @param from the first day
     * @param to the last day
     * @param minutes for how long the last was kicked; empty if nobody wrote it down
     */
    public record Due(Place place, LocalDate last, LocalDate from, LocalDate to, OptionalDouble minutes) {}

    /**
     * {@return the samples that a year still needs}
     *
     * @param records the records of the book
     * @param year the calendar year
     */
    public static SamplesDue of(SurveyRecords records, int year) {
        List<KickSample> before = records.kickSamples().stream()
                .filter(sample -> sample.date().getYear() < year)
                .toList();
        List<KickSample> taken = records.kickSamples().stream()
                .filter(sample -> sample.date().getYear() == year)
                .toList();
        List<Due> due = new ArrayList<>();
        for (KickSample sample : before) {
            boolean later = before.stream()
                    .anyMatch(other -> samePlace(sample, other)
                            && other.date().getYear() > sample.date().getYear());
            LocalDate day = sample.date().plusYears(year - (long) sample.date().getYear());
            boolean done = taken.stream()
                    .anyMatch(other -> samePlace(sample, other)
                            && Math.abs(ChronoUnit.DAYS.between(day, other.date())) <= SAME_SEASON_DAYS);
            boolean asked = due.stream()
                    .anyMatch(other -> samePlace(sample.place(), other.place())
                            && Math.abs(ChronoUnit.DAYS.between(day, other.from())) <= SAME_SEASON_DAYS);
            if (!later && !done && !asked) {
                due.add(new Due(
                        sample.place(),
                        sample.date(),
                        day.minusDays(DAYS_AROUND),
                        day.plusDays(DAYS_AROUND),
                        sample.minutes()));
            }
        }
        due.sort(Comparator.comparing(Due::from)
                .thenComparing(one -> one.place().chainage().metres()));
        return new SamplesDue(due);
    }

    private static boolean samePlace(KickSample one, KickSample other) {
        return samePlace(one.place(), other.place());
    }

    private static boolean samePlace(Place one, Place other) {
        UUID river = one.riverId();
        return river.equals(other.riverId()) && one.chainage().distanceTo(other.chainage()) <= SAME_PLACE_METRES;
    }
}
