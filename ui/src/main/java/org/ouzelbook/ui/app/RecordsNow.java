package org.ouzelbook.ui.app;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Function;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.Entry;
import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.BookView;
import org.ouzelbook.tracker.store.SightingQuery;
import org.ouzelbook.tracker.store.TouchedRecord;

/**
 * All records of a book in memory, as they were after one step of its history; they follow the book by reading only what later
 * steps touched, so that a line is logged as quickly in a book of a hundred thousand sightings as in a new one.
 *
 * @param records the records
 * @param step number of the last step that they know
 * @param changedSeasons the seasons whose records differ from those before; empty where any may
 */
public record RecordsNow(SurveyRecords records, long step, Optional<Set<Integer>> changedSeasons) {
    /** With more changes than this at once the book is read anew. */
    private static final int MOST_FOLLOWED = 2000;

    private static final Comparator<Visit> VISITS = Comparator.comparing(Visit::date)
            .thenComparing(visit -> visit.start().orElse(LocalTime.MAX))
            .thenComparing(Visit::label);
    private static final Comparator<Sighting> SIGHTINGS = Comparator.comparing(Sighting::date)
            .thenComparing(sighting -> sighting.time().orElse(LocalTime.MAX))
            .thenComparing(sighting -> sighting.place().chainage());

    /** Copies the seasons. */
    public RecordsNow {
        changedSeasons = changedSeasons.map(Set::copyOf);
    }

    /**
     * {@return the records of a book}
     *
     * @param book an open book
     */
    public static RecordsNow read(Book book) {
        return book.read(RecordsNow::read);
    }

    private static RecordsNow read(BookView view) {
        return new RecordsNow(BookRecords.of(view, SightingQuery.ALL, day -> true), view.lastStep(), Optional.empty());
    }

    /**
     * {@return the records as they are now}
     *
     * @param book the same book
     */
    public RecordsNow followed(Book book) {
        return book.read(view -> view.touchedAfter(step, MOST_FOLLOWED)
                .flatMap(touched -> followed(view, touched))
                .orElseGet(() -> read(view)));
    }

    private Optional<RecordsNow> followed(BookView view, Set<TouchedRecord> touched) {
        boolean onlyFieldWork = touched.stream()
                .map(TouchedRecord::type)
                .allMatch(type -> type.equals(Sighting.class)
                        || type.equals(Visit.class)
                        || type.equals(Decision.class)
                        || type.equals(KickSample.class));
        if (!onlyFieldWork) {
            return Optional.empty();
        }
        Map<UUID, Optional<Entry>> now = new HashMap<>();
        CountedOnce once = CountedOnce.of(view);
        touched.forEach(one -> now.put(one.id(), view.record(one).map(once::spelt)));
        if (isShared(view, now)) {
            return Optional.empty();
        }
        Set<Integer> seasons = new TreeSet<>();
        SurveyRecords followed = new SurveyRecords(
                records.rivers(),
                records.landmarks(),
                records.reaches(),
                merged(Visit.class, records.visits(), now, VISITS, visit -> visit.date(), seasons),
                merged(Sighting.class, records.sightings(), now, SIGHTINGS, sighting -> sighting.date(), seasons),
                records.nests(),
                records.nestChecks(),
                records.ringedBirds(),
                merged(
                        KickSample.class,
                        records.kickSamples(),
                        now,
                        Comparator.comparing(KickSample::date),
                        sample -> sample.date(),
                        seasons),
                touched.stream().anyMatch(one -> one.type().equals(Decision.class))
                        ? decisions(view, now, seasons)
                        : records.decisions());
        return Optional.of(new RecordsNow(followed, view.lastStep(), Optional.of(seasons)));
    }

    /** Whether one of the records stands for another person's too, or is one that does not stand: then all have to be seen. */
    private static boolean isShared(BookView view, Map<UUID, Optional<Entry>> now) {
        Set<UUID> shared = new HashSet<>();
        view.sameSightings().forEach((one, other) -> shared.addAll(Set.of(one, other)));
        view.sameVisits().forEach((one, other) -> shared.addAll(Set.of(one, other)));
        return now.keySet().stream().anyMatch(shared::contains)
                || now.values().stream()
                        .flatMap(Optional::stream)
                        .anyMatch(entry -> entry instanceof Sighting sighting
                                && sighting.visitId().filter(shared::contains).isPresent());
    }

    private List<Decision> decisions(BookView view, Map<UUID, Optional<Entry>> now, Set<Integer> seasons) {
        List<Decision> all = view.decisions();
        List<Decision> both = new ArrayList<>(records.decisions());
        both.addAll(all);
        both.stream().filter(decision -> now.containsKey(decision.id())).forEach(one -> seasons.add(one.season()));
        return all;
    }

    private static <T extends Entry> List<T> merged(
            Class<T> type,
            List<T> before,
            Map<UUID, Optional<Entry>> now,
            Comparator<T> order,
            Function<T, LocalDate> day,
            Set<Integer> seasons) {
        List<T> come = now.values().stream()
                .flatMap(Optional::stream)
                .filter(type::isInstance)
                .map(type::cast)
                .toList();
        List<T> gone = before.stream().filter(one -> now.containsKey(one.id())).toList();
        if (come.isEmpty() && gone.isEmpty()) {
            return before;
        }
        come.forEach(one -> seasons.add(day.apply(one).getYear()));
        gone.forEach(one -> seasons.add(day.apply(one).getYear()));
        List<T> merged = new ArrayList<>(before.size() + come.size());
        before.stream().filter(one -> !now.containsKey(one.id())).forEach(merged::add);
        merged.addAll(come);
        merged.sort(order);
        return merged;
    }
}
