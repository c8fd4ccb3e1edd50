package org.ouzelbook.ui.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.concurrent.CancellationException;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.markresight.CormackJollySeber;
import org.ouzelbook.stats.survey.CautionMessage;
import org.ouzelbook.stats.survey.RingSighting.Outcome;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.Survival;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.estimate.EstimateSurvival;
import org.ouzelbook.ui.app.estimate.EstimateSurvival.Fit;
import org.ouzelbook.ui.app.estimate.Parameter;
import org.ouzelbook.ui.app.estimate.SeasonTable;

/**
 * How ringed birds survive and move: the answer of {@code survival}. Its names are those that scripts rely on.
 *
 * @param species whose rings
 * @param birds how many birds have a history
 * @param occasions how many seasons
 * @param seasons the seasons
 * @param model how it was computed
 * @param n releases that could be followed; empty without a fit
 * @param logLikelihood of the m-arrays; empty without a fit
 * @param aic Akaike's criterion; empty without a fit
 * @param aicc the same for small samples; empty without a fit or with too few releases
 * @param parameters coefficients, probabilities, and products of pairs that are not told apart
 * @param goodnessOfFit tests 2 and 3; empty without a fit
 * @param readings what the ring readings tell
 * @param moves from one season to the next in which a bird was read
 * @param medianMoveMetres the median of the moves
 * @param level level of the limits
 * @param why why there is no fit
 * @param warnings what would mislead a reader who did not know it
 */
public record SurvivalAnswer(
        Species species,
        long birds,
        int occasions,
        List<Integer> seasons,
        Message model,
        OptionalLong n,
        OptionalDouble logLikelihood,
        OptionalDouble aic,
        OptionalDouble aicc,
        List<Parameter> parameters,
        Optional<Fit> goodnessOfFit,
        Readings readings,
        List<Move> moves,
        OptionalDouble medianMoveMetres,
        double level,
        Optional<Message> why,
        List<Message> warnings) {

    /**
     * What ring readings tell.
     *
     * @param identified read completely, and one bird carries such rings
     * @param oneCandidate read in part, and one bird only may have been read so
     * @param severalCandidates several birds may have been read so
     * @param noCandidate no bird carries such rings
     * @param notUnderstood not a reading that can be understood
     */
    public record Readings(
            long identified, long oneCandidate, long severalCandidates, long noCandidate, long notUnderstood) {}

    /**
     * A bird in two seasons.
     *
     * @param bird its name
     * @param sex its sex
     * @param fromSeason the earlier season
     * @param toSeason the later one
     * @param metres along the water; empty where no water joins the two places
     */
    public record Move(String bird, Sex sex, int fromSeason, int toSeason, OptionalDouble metres) {}

    /**
     * {@return how the ringed birds of a book survive and move}
     *
     * @param book an open book
     * @param scope what is asked
     * @param model what survival and resighting depend on: occasion, sex, or a column of the table of occasions
     * @throws WrongRequest if the book has no ringed birds, or the model asks for a column that is not there
     */
    public static SurvivalAnswer of(Book book, Scope scope, EstimateSurvival.Model model) {
        return of(SurveyReading.of(book, scope), model, Progress.NONE);
    }

    /**
     * {@return how the ringed birds of records that are read already survive and move}
     *
     * @param records every record
     * @param scope what is asked, of all days
     * @param model what survival and resighting depend on
     * @param progress may stop the work
     * @throws CancellationException if it is stopped
     * @throws WrongRequest as for a book
     */
    public static SurvivalAnswer of(
            SurveyRecords records, Scope scope, EstimateSurvival.Model model, Progress progress) {
        return of(SurveyReading.of(records, scope), model, progress);
    }

    private static SurvivalAnswer of(SurveyReading reading, EstimateSurvival.Model model, Progress progress) {
        Scope scope = reading.scope();
        if (reading.records().ringedBirds().isEmpty()) {
            throw new WrongRequest(Message.of("app.survival.none"));
        }
        SeasonTable seasons = SeasonTable.read(model);
        for (String name : seasons.unknown(List.of(Survival.OCCASION, Survival.SEX))) {
            throw new WrongRequest(Message.of("app.survival.by", name));
        }
        Survival found = Survival.of(
                reading.records(),
                scope.species(),
                new Survival.Model(model.survivalBy(), model.resightingBy(), seasons::of),
                scope.level());
        SurveyReading.goOn(progress);
        return of(found, scope.level());
    }

    private static SurvivalAnswer of(Survival found, double level) {
        Optional<CormackJollySeber> fit = found.fit().found();
        return new SurvivalAnswer(
                found.species(),
                found.animals().animals(),
                found.seasons().size(),
                found.seasons(),
                new Message("term.Method." + Method.CORMACK_JOLLY_SEBER.name(), List.of()),
                fit.map(one -> OptionalLong.of(one.fit().n())).orElse(OptionalLong.empty()),
                Numbers.of(fit, one -> one.fit().logLikelihood()),
                Numbers.of(fit, one -> one.fit().aic()),
                fit.map(one -> one.fit().aicc()).orElse(OptionalDouble.empty()),
                fit.map(one -> EstimateSurvival.parameters(one, level)).orElse(List.of()),
                fit.map(one -> Fit.of(one.goodnessOfFit())),
                new Readings(
                        found.readings(Outcome.IDENTIFIED),
                        found.readings(Outcome.ONE_CANDIDATE),
                        found.readings(Outcome.SEVERAL_CANDIDATES),
                        found.readings(Outcome.NO_CANDIDATE),
                        found.readings(Outcome.NOT_UNDERSTOOD)),
                found.moves().stream()
                        .map(move -> new Move(
                                move.bird().label(),
                                move.bird().sex(),
                                move.fromSeason(),
                                move.toSeason(),
                                move.metres()))
                        .toList(),
                found.medianMove(),
                level,
                found.fit() instanceof Answer.NotEstimable<CormackJollySeber> not
                        ? Optional.of(CautionMessage.of(not.because()))
                        : Optional.empty(),
                fit.map(one -> EstimateSurvival.warnings(found.warnings(), one))
                        .orElse(new ArrayList<>(found.warnings())));
    }
}
