package org.ouzelbook.ui.app;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.power.YearNoise;
import org.ouzelbook.stats.survey.CautionMessage;
import org.ouzelbook.stats.survey.CountTrend;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.SeasonMaps;
import org.ouzelbook.stats.survey.SurveyPlan;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.stats.survey.TerritoryModel;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;

/**
 * What the present effort can show, what more would buy, and which visits are still worth making: the answer of {@code plan}.
 *
 * @param species whose territories
 * @param season the calendar year that is planned
 * @param territories territories a season, mean of the last three counted
 * @param surveyedKm km of the last counted season
 * @param countedSeasons seasons counted so far
 * @param detection probability that one visit finds a territory
 * @param visits effective visits a season
 * @param yearNoise how much good and bad years differ, standard deviation on the log scale: as it was planned with
 * @param yearNoiseFitted the same as the book’s seasons show it
 * @param choices what each effort would show
 * @param worthMaking water where one more visit tells most, best first
 * @param calendar days for the visits still to be made
 * @param why why there are no choices
 * @param warnings what is assumed, and what the numbers leave out
 */
public record PlanAnswer(
        Species species,
        int season,
        double territories,
        double surveyedKm,
        int countedSeasons,
        double detection,
        int visits,
        double yearNoise,
        Fitted yearNoiseFitted,
        List<Choice> choices,
        List<Worth> worthMaking,
        List<SurveyPlan.Window> calendar,
        Optional<Message> why,
        List<Message> warnings) {
    /**
     * A number as the book’s seasons show it.
     *
     * @param estimate the number; empty with {@code why}
     * @param lower lower limit
     * @param upper upper limit
     * @param seasons how many seasons tell it
     * @param why why there is none
     */
    public record Fitted(
            OptionalDouble estimate, OptionalDouble lower, OptionalDouble upper, int seasons, Optional<Message> why) {
        private static Fitted of(Answer<YearNoise> answer) {
            Optional<YearNoise> found = answer.found();
            return new Fitted(
                    Numbers.of(found, YearNoise::sigma),
                    Numbers.of(found, YearNoise::lower),
                    Numbers.of(found, YearNoise::upper),
                    found.map(YearNoise::seasons).orElse(0),
                    answer instanceof Answer.NotEstimable<YearNoise> not
                            ? Optional.of(CautionMessage.of(not.because()))
                            : Optional.empty());
        }
    }

    /**
     * What an effort would show.
     *
     * @param way the way
     * @param visits visits a season
     * @param territories territories at the start
     * @param seasons counted seasons
     * @param powerForHalving probability of finding a fall that halves numbers in ten years
     * @param smallestFall smallest fall a year, in percent and below 0, found four times in five; empty with {@code why}
     * @param why why there is none
     */
    public record Choice(
            SurveyPlan.Way way,
            int visits,
            double territories,
            int seasons,
            double powerForHalving,
            OptionalDouble smallestFall,
            Optional<Message> why) {
        private static Choice of(SurveyPlan.Choice choice) {
            OptionalDouble factor = choice.smallestFall();
            return new Choice(
                    choice.way(),
                    choice.plan().visits(),
                    choice.plan().territories(),
                    choice.plan().seasons(),
                    choice.powerForHalving(),
                    factor.isEmpty() ? factor : OptionalDouble.of(100 * (factor.getAsDouble() - 1)),
                    factor.isEmpty() ? Optional.of(Message.of("app.plan.noFall")) : Optional.empty());
        }
    }

    /**
     * Water where one more visit tells something.
     *
     * @param river name of the river
     * @param fromKm lower end
     * @param toKm upper end
     * @param visits effective visits to it this season
     * @param territories territories that one more visit is expected to bring up to what the rules ask for
     * @param deviation standard deviation of the river’s number of territories by the model, as it is now; empty with {@code why}
     * @param deviationAfter the same as it is expected to be after the visit
     * @param bits by how much the number’s entropy is expected to fall
     * @param why why the model says nothing
     */
    public record Worth(
            String river,
            double fromKm,
            double toKm,
            int visits,
            double territories,
            OptionalDouble deviation,
            OptionalDouble deviationAfter,
            OptionalDouble bits,
            Optional<Message> why) {
        private static Worth of(SurveyPlan.Worth worth) {
            Optional<SurveyPlan.Surer> surer = worth.surer();
            return new Worth(
                    worth.river(),
                    worth.stretch().lower().km(),
                    worth.stretch().upper().km(),
                    worth.visits(),
                    worth.territories(),
                    Numbers.of(surer, SurveyPlan.Surer::deviation),
                    Numbers.of(surer, SurveyPlan.Surer::deviationAfter),
                    Numbers.of(surer, SurveyPlan.Surer::bits),
                    surer.isPresent() ? Optional.empty() : Optional.of(Message.of("app.plan.modelNotAsked")));
        }
    }

    /**
     * {@return the plan of the season that was asked about, or of this year, by rule alone}
     *
     * @param book an open book
     * @param scope what is asked
     * @param change what is changed in the usual settings of the species
     * @param today no visit is planned before this day
     * @throws WrongRequest if the book has no such river or reach, or no visit that looked for the species
     */
    public static PlanAnswer of(Book book, Scope scope, UnaryOperator<MapSettings> change, LocalDate today) {
        return of(book, scope, change, today, Counting.BY_RULE, Progress.NONE);
    }

    /**
     * {@return the plan of the season that was asked about, or of this year}
     *
     * @param book an open book
     * @param scope what is asked
     * @param change what is changed in the usual settings of the species
     * @param today no visit is planned before this day
     * @param counting whether the model is asked what one more visit would tell
     * @param progress hears how far the work has come, and may stop it
     * @throws WrongRequest if the book has no such river or reach, or no visit that looked for the species
     */
    public static PlanAnswer of(
            Book book,
            Scope scope,
            UnaryOperator<MapSettings> change,
            LocalDate today,
            Counting counting,
            Progress progress) {
        SurveyReading reading = SurveyReading.of(book, scope);
        SeasonMaps maps =
                SeasonMaps.of(reading.records(), scope.species(), change.apply(MapSettings.usualFor(scope.species())));
        return of(reading, maps, today, counting, progress);
    }

    /**
     * {@return the plan of the season that was asked about, or of this year, by rule alone, from seasons that are mapped already}
     *
     * @param maps the seasons of a book, and its records
     * @param scope what is asked, of all water and all days
     * @param today no visit is planned before this day
     * @param progress hears how far the work has come, and may stop it
     * @throws WrongRequest if the book has no visit that looked for the species
     * @throws java.util.concurrent.CancellationException if it is stopped
     */
    public static PlanAnswer of(SeasonMaps maps, Scope scope, LocalDate today, Progress progress) {
        return of(new SurveyReading(maps.records(), Water.ALL, scope), maps, today, Counting.BY_RULE, progress);
    }

    private static PlanAnswer of(
            SurveyReading reading, SeasonMaps mapped, LocalDate today, Counting counting, Progress progress) {
        Scope scope = reading.scope();
        List<Integer> seasons = reading.seasons();
        if (seasons.isEmpty()) {
            throw new WrongRequest(Message.of("app.plan.notWalked", scope.species()));
        }
        int season = scope.season().orElse(today.getYear());
        List<Integer> past = seasons.stream().filter(year -> year < season).toList();
        List<TerritoryMap> maps = mapped.all(past.isEmpty() ? seasons : past, reading.water(), progress.part(0, 0.3));
        Optional<TerritoryModel> model = reading.model(counting, mapped.settings(), progress.part(0.3, 0.8));
        CountTrend trend = CountTrend.of(reading.records(), maps, reading.water(), scope.level());
        SurveyPlan plan = SurveyPlan.of(
                reading.records(),
                trend,
                maps,
                season,
                today,
                scope.level(),
                model,
                progress.part(counting == Counting.BY_RULE ? 0.3 : 0.6, 1));
        return new PlanAnswer(
                plan.species(),
                season,
                plan.present().territories(),
                plan.surveyedKm(),
                plan.countedSeasons(),
                plan.present().detection(),
                plan.present().visits(),
                plan.present().yearNoise(),
                Fitted.of(plan.yearNoise()),
                plan.choices().stream().map(Choice::of).toList(),
                plan.worthMaking().stream().map(Worth::of).toList(),
                plan.calendar(),
                plan.choices().isEmpty() ? Optional.of(Message.of("app.plan.nothingCounted")) : Optional.empty(),
                warnings(plan));
    }

    private static List<Message> warnings(SurveyPlan plan) {
        List<Message> assumed = plan.assumed().stream()
                .map(one -> Message.of("app.plan.assumed", one))
                .toList();
        return Stream.concat(assumed.stream(), Stream.of(Message.of("app.plan.poisson"), Message.of("app.plan.safety")))
                .toList();
    }
}
