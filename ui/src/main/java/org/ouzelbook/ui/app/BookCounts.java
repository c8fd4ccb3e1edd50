package org.ouzelbook.ui.app;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.stream.IntStream;
import org.ouzelbook.stats.survey.CountTrend;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.ModelledCounts;
import org.ouzelbook.stats.survey.SeasonDensity;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryModel;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Species;

/**
 * The counts of a book whose records are read already, on all its water and on each reach, by the usual settings: the same
 * answers as those of {@code density} and {@code trend}, for whoever asks several times and lets the model learn once.
 *
 * @param records every record
 * @param species whose territories
 * @param modelled what the model counts; {@link ModelledCounts#NONE} for the counts by rule alone
 */
public record BookCounts(SurveyRecords records, Species species, ModelledCounts modelled) {
    private static final double LEVEL = Scope.everything().level();

    /**
     * {@return what a model counts on all water and on each reach, in every season that was walked for the species}
     *
     * @param model the model of the records
     * @param records every record
     * @param species whose territories
     * @param progress hears how far it is, and may stop it
     * @throws CancellationException if it is stopped
     */
    public static ModelledCounts byModel(
            TerritoryModel model, SurveyRecords records, Species species, Progress progress) {
        return ModelledCounts.of(
                model, records.rivers().rivers(), seasons(records, species), waters(records), LEVEL, progress);
    }

    /** {@return the densities of every season, of each river and of its reaches} */
    public DensityAnswer density() {
        SeasonDensity density = SeasonDensity.of(
                records,
                species,
                seasons(records, species),
                MapSettings.usualFor(species),
                waters(records),
                LEVEL,
                modelled);
        return DensityAnswer.of(density, LEVEL);
    }

    /**
     * {@return the trend over every season of the book}
     *
     * @throws WrongRequest if nobody looked for the species
     */
    public TrendAnswer trend() {
        List<Integer> walked = seasons(records, species);
        if (walked.isEmpty()) {
            throw new WrongRequest(Message.of("app.noRecords", species));
        }
        List<Integer> all = IntStream.rangeClosed(walked.get(0), walked.get(walked.size() - 1))
                .boxed()
                .toList();
        CountTrend trend = CountTrend.of(
                records, species, all, MapSettings.usualFor(species), List.of(Water.ALL), LEVEL, modelled);
        return TrendAnswer.of(trend, LEVEL);
    }

    private static List<Integer> seasons(SurveyRecords records, Species species) {
        return records.visits().stream()
                .filter(visit -> visit.lookedFor().contains(species))
                .map(visit -> visit.date().getYear())
                .distinct()
                .sorted()
                .toList();
    }

    private static List<Water> waters(SurveyRecords records) {
        List<Water> waters = new ArrayList<>(List.of(Water.ALL));
        records.reaches().forEach(reach -> waters.add(Water.ofReach(reach, records.reaches())));
        return waters;
    }
}
