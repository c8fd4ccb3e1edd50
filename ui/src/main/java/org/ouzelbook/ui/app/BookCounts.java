package org.ouzelbook.ui.app;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.stream.IntStream;
import org.ouzelbook.stats.survey.CountTrend;
import org.ouzelbook.stats.survey.ModelledCounts;
import org.ouzelbook.stats.survey.SeasonDensity;
import org.ouzelbook.stats.survey.SeasonMaps;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryModel;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Species;

/**
 * The counts of a book that is read and mapped already, on all its water and on each reach, by the usual settings: the same
 * answers as those of {@code density} and {@code trend}, for whoever asks several times and lets the model learn once.
 *
 * @param maps the maps of its seasons by the usual settings, and its records
 * @param modelled what the model counts; {@link ModelledCounts#NONE} for the counts by rule alone
 */
public record BookCounts(SeasonMaps maps, ModelledCounts modelled) {
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

    /**
     * {@return the densities of every season, of each river and of its reaches}
     *
     * @param progress hears how far the work has come, and may stop it
     * @throws CancellationException if it is stopped
     */
    public DensityAnswer density(Progress progress) {
        SeasonDensity density = SeasonDensity.of(
                maps, seasons(maps.records(), maps.species()), waters(maps.records()), LEVEL, modelled, progress);
        return DensityAnswer.of(density, LEVEL);
    }

    /**
     * {@return the trend over every season of the book}
     *
     * @param progress hears how far the work has come, and may stop it
     * @throws CancellationException if it is stopped
     * @throws WrongRequest if nobody looked for the species
     */
    public TrendAnswer trend(Progress progress) {
        List<Integer> walked = seasons(maps.records(), maps.species());
        if (walked.isEmpty()) {
            throw new WrongRequest(Message.of("app.noRecords", maps.species()));
        }
        List<Integer> all = IntStream.rangeClosed(walked.get(0), walked.get(walked.size() - 1))
                .boxed()
                .toList();
        CountTrend trend = CountTrend.of(maps, all, List.of(Water.ALL), LEVEL, modelled, progress);
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
