package org.ouzelbook.ui.window;

import java.util.Collections;
import java.util.List;
import java.util.NavigableMap;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.CancellationException;
import org.ouzelbook.stats.survey.BenthosScore;
import org.ouzelbook.stats.survey.CountTrend;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.ModelledCounts;
import org.ouzelbook.stats.survey.RiverStory;
import org.ouzelbook.stats.survey.SeasonMaps;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.RecordsNow;

/**
 * What a book holds, as the window shows it. Records come first and are quick; the maps of the seasons that they changed follow,
 * and until then those seasons are behind.
 *
 * @param records every record, of all seasons and species
 * @param step the last step of the book's history that they know
 * @param speciesThere the species that were looked for or seen
 * @param species the species shown
 * @param maps its territories, by season; a season without a visit or a sighting has no map
 * @param trend the trend of the counts; empty where there is no map
 * @param undecided the maps without the surveyor's decisions, of the seasons that have some
 * @param behind the seasons whose map is missing, or was made from earlier records
 */
record BookContents(
        SurveyRecords records,
        long step,
        List<Species> speciesThere,
        Species species,
        NavigableMap<Integer, TerritoryMap> maps,
        Optional<CountTrend> trend,
        NavigableMap<Integer, TerritoryMap> undecided,
        NavigableSet<Integer> behind) {
    private static final double USUAL_LEVEL = 0.95;

    BookContents {
        speciesThere = List.copyOf(speciesThere);
        maps = Collections.unmodifiableNavigableMap(new TreeMap<>(maps));
        undecided = Collections.unmodifiableNavigableMap(new TreeMap<>(undecided));
        behind = Collections.unmodifiableNavigableSet(new TreeSet<>(behind));
    }

    /**
     * {@return the contents of a book, every season behind}
     *
     * @param book an open book
     * @param wanted the species to show; the first that is there if empty
     */
    static BookContents read(Book book, Optional<Species> wanted) {
        return behind(RecordsNow.read(book), wanted);
    }

    private static BookContents behind(RecordsNow now, Optional<Species> wanted) {
        SurveyRecords records = now.records();
        List<Species> there =
                Species.all().stream().filter(one -> isThere(records, one)).toList();
        Species species = wanted.orElse(there.isEmpty() ? Species.DIPPER : there.get(0));
        return new BookContents(
                records,
                now.step(),
                there,
                species,
                new TreeMap<>(),
                Optional.empty(),
                new TreeMap<>(),
                seasons(records, species));
    }

    /**
     * {@return the contents as they are now; only what was changed since is read, and only its seasons are behind}
     *
     * @param book the same book
     * @param wanted the species to show; the same as before if empty
     */
    BookContents followed(Book book, Optional<Species> wanted) {
        RecordsNow now = new RecordsNow(records, step, Optional.empty()).followed(book);
        boolean nothingYet = speciesThere.isEmpty() && wanted.isEmpty();
        BookContents then = behind(now, nothingYet ? wanted : Optional.of(wanted.orElse(species)));
        if (!then.species.equals(species) || now.changedSeasons().isEmpty()) {
            return then;
        }
        TreeMap<Integer, TerritoryMap> kept = new TreeMap<>(maps);
        kept.keySet().retainAll(then.behind);
        TreeSet<Integer> still = new TreeSet<>(behind);
        still.addAll(now.changedSeasons().get());
        then.behind.stream().filter(season -> !kept.containsKey(season)).forEach(still::add);
        still.retainAll(then.behind);
        return new BookContents(then.records, then.step, then.speciesThere, species, kept, trend, undecided, still);
    }

    /**
     * {@return the contents made of records, no season behind}
     *
     * @param records every record
     * @param wanted the species to show; the first that is there if empty
     * @param progress hears how far it is
     */
    static BookContents of(SurveyRecords records, Optional<Species> wanted, Progress progress) {
        BookContents all = behind(new RecordsNow(records, 0, Optional.empty()), wanted);
        return all.caughtUp(all.behind, progress);
    }

    /**
     * {@return the same with the maps of some seasons made from its records, and the trend if no season is behind then}
     *
     * @param some seasons that are behind
     * @param progress hears how far it is, and may stop it
     * @throws CancellationException if it is stopped
     */
    BookContents caughtUp(NavigableSet<Integer> some, Progress progress) {
        TreeMap<Integer, TerritoryMap> made = new TreeMap<>(maps);
        TreeMap<Integer, TerritoryMap> without = new TreeMap<>(undecided);
        TreeSet<Integer> still = new TreeSet<>(behind);
        int done = 0;
        for (int season : some) {
            if (!progress.goOn(done++, some.size())) {
                throw new CancellationException();
            }
            made.put(season, TerritoryMap.of(records, species, season, MapSettings.usualFor(species), Water.ALL));
            without.remove(season);
            if (!records.decisions(species, season).isEmpty()) {
                without.put(
                        season,
                        TerritoryMap.of(
                                records.withoutDecisions(), species, season, MapSettings.usualFor(species), Water.ALL));
            }
            still.remove(season);
        }
        Optional<CountTrend> now = made.isEmpty() || !still.isEmpty()
                ? trend
                : Optional.of(CountTrend.of(records, List.copyOf(made.values()), Water.ALL, USUAL_LEVEL));
        return new BookContents(records, step, speciesThere, species, made, now, without, still);
    }

    /** {@return the maps that need not be made again, and the records for others} */
    SeasonMaps mapped() {
        TreeMap<Integer, TerritoryMap> current = new TreeMap<>(maps);
        current.keySet().removeAll(behind);
        return new SeasonMaps(records, species, MapSettings.usualFor(species), current);
    }

    private static NavigableSet<Integer> seasons(SurveyRecords records, Species species) {
        TreeSet<Integer> seasons = new TreeSet<>();
        records.visits().stream()
                .filter(visit -> visit.lookedFor().contains(species))
                .forEach(visit -> seasons.add(visit.date().getYear()));
        records.sightings().stream()
                .filter(sighting -> sighting.species().equals(species))
                .forEach(sighting -> seasons.add(sighting.date().getYear()));
        return seasons;
    }

    /**
     * {@return what a season tells, with the seasons before it}
     *
     * @param season a season that has a map
     * @param modelled what the model counts; {@link ModelledCounts#NONE} for the counts by rule alone
     */
    RiverStory story(int season, ModelledCounts modelled) {
        List<TerritoryMap> upToNow = List.copyOf(maps.headMap(season, true).values());
        BenthosScore benthos = BenthosScore.of(records, upToNow, Water.ALL, USUAL_LEVEL);
        return RiverStory.of(
                records,
                upToNow,
                CountTrend.of(records, upToNow, Water.ALL, USUAL_LEVEL, modelled),
                benthos.samples().isEmpty() ? Optional.empty() : Optional.of(benthos),
                Water.ALL,
                USUAL_LEVEL);
    }

    private static boolean isThere(SurveyRecords records, Species species) {
        return records.visits().stream().anyMatch(visit -> visit.lookedFor().contains(species))
                || records.sightings().stream()
                        .anyMatch(sighting -> sighting.species().equals(species));
    }
}
