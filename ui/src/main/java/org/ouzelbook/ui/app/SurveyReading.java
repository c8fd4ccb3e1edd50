package org.ouzelbook.ui.app;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.ModelledCounts;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryModel;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.store.Book;

/**
 * The part of a book that a question is about, read once.
 *
 * @param records the records of the asked days, of all species and on all rivers
 * @param water the water that was asked about
 * @param scope the question
 */
record SurveyReading(SurveyRecords records, Water water, Scope scope) {

    /**
     * Reads a book.
     *
     * @param book an open book
     * @param scope what is asked
     * @throws WrongRequest if the book has no such river or reach
     */
    static SurveyReading of(Book book, Scope scope) {
        return of(book, book.read(BookRecords::asWritten), scope);
    }

    /**
     * The same of records that were read.
     *
     * @param book an open book
     * @param written its records, as they were written
     * @param scope what is asked
     * @throws WrongRequest if the book has no such river or reach
     */
    static SurveyReading of(Book book, SurveyRecords written, Scope scope) {
        Predicate<LocalDate> asked =
                day -> scope.from().map(from -> !day.isBefore(from)).orElse(true)
                        && scope.to().map(to -> !day.isAfter(to)).orElse(true);
        SurveyRecords records = book.read(view -> BookRecords.once(view, written, asked));
        return of(records, scope);
    }

    /**
     * {@return what is asked of records that are read already}
     *
     * @param records the records of the asked days, of all species and on all rivers
     * @param scope what is asked
     * @throws WrongRequest if there is no such river or reach
     */
    static SurveyReading of(SurveyRecords records, Scope scope) {
        return new SurveyReading(records, water(records, scope), scope);
    }

    /**
     * Lets long work be stopped between two of its pieces.
     *
     * @param progress says whether to go on
     * @throws CancellationException if not
     */
    static void goOn(Progress progress) {
        if (!progress.goOn(0, 0)) {
            throw new CancellationException("Stopped between two pieces of the work");
        }
    }

    /**
     * {@return the season that was asked about, or else the last one with a visit that looked for the species, or a sighting}
     *
     * @throws WrongRequest if the book has neither
     */
    int season() {
        return scope.season()
                .orElseGet(() -> IntStream.concat(
                                visitedYears(),
                                records.sightings().stream()
                                        .filter(sighting -> sighting.species().equals(scope.species()))
                                        .mapToInt(sighting -> sighting.date().getYear()))
                        .max()
                        .orElseThrow(() -> new WrongRequest(Message.of("app.noRecords", scope.species()))));
    }

    /**
     * {@return the model of the records; empty if only the rules count}
     *
     * @param counting how territories are counted
     * @param settings the thresholds of the rules
     * @param progress hears the first six tenths of the work, and may stop it
     */
    Optional<TerritoryModel> model(Counting counting, MapSettings settings, Progress progress) {
        return counting == Counting.BY_RULE
                ? Optional.empty()
                : Optional.of(TerritoryModel.of(
                        records, scope.species(), settings, (done, total) -> progress.goOn(6 * done, 10 * total)));
    }

    /**
     * {@return what a model counts}
     *
     * @param model the model; empty if only the rules count
     * @param seasons calendar years
     * @param waters the waters
     * @param progress hears the last four tenths of the work, and may stop it
     */
    ModelledCounts modelled(
            Optional<TerritoryModel> model, List<Integer> seasons, List<Water> waters, Progress progress) {
        return model.map(fitted -> ModelledCounts.of(
                        fitted,
                        records.rivers().rivers(),
                        seasons,
                        waters,
                        scope.level(),
                        (done, total) -> progress.goOn(6 * total + 4 * done, 10 * total)))
                .orElse(ModelledCounts.NONE);
    }

    /** {@return the seasons with a visit that looked for the species} */
    List<Integer> seasons() {
        return visitedYears().sorted().distinct().boxed().toList();
    }

    /**
     * {@return every year from the first season with such a visit to the last}
     *
     * @throws WrongRequest if there is none
     */
    List<Integer> everySeason() {
        List<Integer> seasons = seasons();
        if (seasons.isEmpty()) {
            throw new WrongRequest(Message.of("app.noRecords", scope.species()));
        }
        return IntStream.rangeClosed(seasons.get(0), seasons.get(seasons.size() - 1))
                .boxed()
                .toList();
    }

    private IntStream visitedYears() {
        return records.visits().stream()
                .filter(visit -> visit.lookedFor().contains(scope.species()))
                .mapToInt(visit -> visit.date().getYear());
    }

    private static Water water(SurveyRecords records, Scope scope) {
        Optional<River> river = scope.river().map(name -> river(records, name));
        if (scope.reach().isPresent()) {
            return Water.ofReach(reach(records, scope.reach().get(), river), records.reaches());
        }
        return river.map(one -> Water.ofRiver(one.id())).orElse(Water.ALL);
    }

    /**
     * {@return a reach of this name, or else a river of this name}
     *
     * @param name a name
     * @throws WrongRequest if the book has neither, or several such reaches
     */
    Water named(String name) {
        boolean reach = records.reaches().stream().anyMatch(one -> one.name().equalsIgnoreCase(name.strip()));
        return reach
                ? Water.ofReach(reach(records, name, Optional.empty()), records.reaches())
                : Water.ofRiver(river(records, name).id());
    }

    private static River river(SurveyRecords records, String name) {
        List<River> rivers = records.rivers().rivers();
        return rivers.stream()
                .filter(river -> river.name().equalsIgnoreCase(name.strip()))
                .findFirst()
                .orElseThrow(() -> new WrongRequest(Message.of(
                        "app.noRiver", name, rivers.stream().map(River::name).toList())));
    }

    private static Reach reach(SurveyRecords records, String name, Optional<River> river) {
        List<Reach> named = records.reaches().stream()
                .filter(reach -> reach.name().equalsIgnoreCase(name.strip()))
                .filter(reach ->
                        river.map(one -> one.id().equals(reach.riverId())).orElse(true))
                .toList();
        if (named.isEmpty()) {
            List<String> reaches = records.reaches().stream().map(Reach::name).toList();
            throw new WrongRequest(
                    reaches.isEmpty() ? Message.of("app.noReaches", name) : Message.of("app.noReach", name, reaches));
        }
        if (named.size() > 1) {
            throw new WrongRequest(Message.of(
                    "app.severalReaches",
                    name,
                    named.stream()
                            .map(reach ->
                                    records.rivers().river(reach.riverId()).name())
                            .toList()));
        }
        return named.get(0);
    }
}
