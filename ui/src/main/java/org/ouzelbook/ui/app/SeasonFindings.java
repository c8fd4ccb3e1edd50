package org.ouzelbook.ui.app;

import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.ouzelbook.stats.survey.BenthosScore;
import org.ouzelbook.stats.survey.CountTrend;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.ModelledCounts;
import org.ouzelbook.stats.survey.RiverStory;
import org.ouzelbook.stats.survey.SeasonDensity;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.stats.survey.TerritoryModel;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.store.Book;

/**
 * All that a report of one season tells, and the seasons before it.
 *
 * @param records what everything was made from
 * @param model the model of the same records; empty if only the rules counted
 * @param map the territories of the season
 * @param seasons the territories of this and every earlier season, by season
 * @param density territories per km of the same seasons, by season, then by water
 * @param trend the trend of the counts up to this season
 * @param benthos the kick samples beside the birds of the same seasons; empty if there are none
 * @param story what all of it tells, in sentences
 * @param seal what the seal of the season says; empty if it is not sealed, or not all that was sealed is asked
 */
public record SeasonFindings(
        SurveyRecords records,
        Optional<TerritoryModel> model,
        TerritoryMap map,
        List<TerritoryMap> seasons,
        SeasonDensity density,
        CountTrend trend,
        Optional<BenthosScore> benthos,
        RiverStory story,
        Optional<SealedSeason> seal) {
    /** Copies the maps. */
    public SeasonFindings {
        seasons = List.copyOf(seasons);
    }

    /**
     * {@return the findings of the season that was asked about, or of the last one}
     *
     * @param book an open book
     * @param scope what is asked
     * @param change what is changed in the usual settings of the species
     * @param counting how territories are counted
     * @param progress hears how far the work has come, and may stop it
     * @throws WrongRequest if the book has no such river or reach, or no records of the species
     */
    public static SeasonFindings of(
            Book book, Scope scope, UnaryOperator<MapSettings> change, Counting counting, Progress progress) {
        return of(book, book.read(BookRecords::asWritten), scope, change, counting, progress);
    }

    /**
     * {@return the same of records that were read}
     *
     * @param book an open book
     * @param written its records, as they were written
     * @param scope what is asked
     * @param change what is changed in the usual settings of the species
     * @param counting how territories are counted
     * @param progress hears how far the work has come, and may stop it
     * @throws WrongRequest if the book has no such river or reach, or no records of the species
     */
    public static SeasonFindings of(
            Book book,
            SurveyRecords written,
            Scope scope,
            UnaryOperator<MapSettings> change,
            Counting counting,
            Progress progress) {
        SurveyReading reading = SurveyReading.of(book, written, scope);
        int season = reading.season();
        MapSettings settings = change.apply(MapSettings.usualFor(scope.species()));
        List<Integer> upToNow =
                reading.seasons().stream().filter(year -> year <= season).toList();
        List<Integer> years = upToNow.contains(season) ? upToNow : List.of(season);
        List<TerritoryMap> maps = years.parallelStream()
                .map(year -> TerritoryMap.of(reading.records(), scope.species(), year, settings, reading.water()))
                .toList();
        SurveyRecords records = reading.records();
        Optional<TerritoryModel> model = reading.model(counting, settings, progress);
        ModelledCounts modelled = reading.modelled(model, years, List.of(reading.water()), progress);
        CountTrend trend = CountTrend.of(records, maps, reading.water(), scope.level(), modelled);
        BenthosScore scored = BenthosScore.of(records, maps, reading.water(), scope.level());
        Optional<BenthosScore> benthos = scored.samples().isEmpty() ? Optional.empty() : Optional.of(scored);
        SeasonDensity density = SeasonDensity.of(records, maps, reading.water(), scope.level(), modelled);
        TerritoryMap map = maps.get(maps.size() - 1);
        return new SeasonFindings(
                records,
                model,
                map,
                maps,
                density,
                trend,
                benthos,
                RiverStory.of(records, maps, trend, benthos, reading.water(), scope.level()),
                SealedSeason.of(book, scope, map, density));
    }
}
