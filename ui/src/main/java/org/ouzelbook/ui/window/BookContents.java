package org.ouzelbook.ui.window;

import java.util.Collections;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.ouzelbook.stats.survey.BenthosScore;
import org.ouzelbook.stats.survey.CountTrend;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.RiverStory;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.SightingQuery;
import org.ouzelbook.ui.app.BookRecords;

/**
 * What a book holds, as the window shows it.
 *
 * @param records every record, of all seasons and species
 * @param speciesThere the species that were looked for or seen
 * @param species the species shown
 * @param maps its territories, by season; a season without a visit or a sighting has no map
 * @param trend the trend of the counts; empty where there is no map
 */
record BookContents(
        SurveyRecords records,
        List<Species> speciesThere,
        Species species,
        NavigableMap<Integer, TerritoryMap> maps,
        Optional<CountTrend> trend) {
    private static final double USUAL_LEVEL = 0.95;

    BookContents {
        speciesThere = List.copyOf(speciesThere);
        maps = Collections.unmodifiableNavigableMap(new TreeMap<>(maps));
    }

    /**
     * {@return the contents of a book}
     *
     * @param book an open book
     * @param wanted the species to show; the first that is there if empty
     * @param progress hears how far it is
     */
    static BookContents read(Book book, Optional<Species> wanted, Progress progress) {
        SurveyRecords records = book.read(view -> BookRecords.of(view, SightingQuery.ALL, day -> true));
        return of(records, wanted, progress);
    }

    /**
     * {@return the contents made of records}
     *
     * @param records every record
     * @param wanted the species to show; the first that is there if empty
     * @param progress hears how far it is
     */
    static BookContents of(SurveyRecords records, Optional<Species> wanted, Progress progress) {
        List<Species> there =
                Species.all().stream().filter(one -> isThere(records, one)).toList();
        Species species = wanted.orElse(there.isEmpty() ? Species.DIPPER : there.get(0));
        TreeSet<Integer> seasons = new TreeSet<>();
        records.visits().stream()
                .filter(visit -> visit.lookedFor().contains(species))
                .forEach(visit -> seasons.add(visit.date().getYear()));
        records.sightings().stream()
                .filter(sighting -> sighting.species().equals(species))
                .forEach(sighting -> seasons.add(sighting.date().getYear()));
        TreeMap<Integer, TerritoryMap> maps = new TreeMap<>();
        for (int season : seasons) {
            progress.goOn(maps.size(), seasons.size());
            maps.put(season, TerritoryMap.of(records, species, season, MapSettings.usualFor(species), Water.ALL));
        }
        Optional<CountTrend> trend = maps.isEmpty()
                ? Optional.empty()
                : Optional.of(CountTrend.of(records, List.copyOf(maps.values()), Water.ALL, USUAL_LEVEL));
        return new BookContents(records, there, species, maps, trend);
    }

    /**
     * {@return what a season tells, with the seasons before it}
     *
     * @param season a season that has a map
     */
    RiverStory story(int season) {
        List<TerritoryMap> upToNow = List.copyOf(maps.headMap(season, true).values());
        BenthosScore benthos = BenthosScore.of(records, upToNow, Water.ALL, USUAL_LEVEL);
        return RiverStory.of(
                records,
                upToNow,
                CountTrend.of(records, upToNow, Water.ALL, USUAL_LEVEL),
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
