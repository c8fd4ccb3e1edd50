package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CancellationException;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.power.CountPlan;
import org.ouzelbook.stats.estimator.power.CountPower;
import org.ouzelbook.stats.estimator.power.YearNoise;
import org.ouzelbook.stats.estimator.trend.SeasonCount;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * What the present effort can show, what more of it would buy, and the visits that are still worth making this season.
 *
 * <p>What the book has not, is assumed and named: detection 0.63 a visit, the lowest of F. D'Amico and G. Hemery (2003), Ibis
 * 145:83–86. How much years differ is fitted from the seasons in which every water was counted; with fewer than six it is taken to be 0.15
 * on the log scale, common practice without source. Where those seasons show less, which few of them can, it is taken to be 0.05.
 *
 * @param species whose territories
 * @param season the calendar year that is planned
 * @param present the present effort, kept up
 * @param countedSeasons seasons counted so far
 * @param surveyedKm km of the last counted season
 * @param yearNoise how much years differ by the book’s seasons, or why they do not tell
 * @param assumed what is assumed because the book does not tell
 * @param choices the present effort and what more would buy
 * @param worthMaking water where one more visit would tell most, best first: by what it makes surer where the model was asked, else by
 *     what it adds to the count by rule
 * @param calendar days for the visits still to be made, by river, then by day
 */
public record SurveyPlan(
        Species species,
        int season,
        CountPlan present,
        int countedSeasons,
        double surveyedKm,
        Answer<YearNoise> yearNoise,
        List<Assumed> assumed,
        List<Choice> choices,
        List<Worth> worthMaking,
        List<Window> calendar) {
    /** Years over which a halving should show. */
    public static final int YEARS = 10;

    private static final double HALVING = Math.pow(0.5, 1.0 / YEARS);
    private static final double POWER = 0.8;
    private static final double ENOUGH = 0.95;
    private static final double LEAST_WORTH = 0.05;
    /** A variance that falls by less is not worth a way. Common practice, no source. */
    private static final double LEAST_GAIN = 0.005;

    private static final double USUAL_NOISE = 0.15;
    private static final double LEAST_NOISE = 0.05;
    private static final int MOST_VISITS = 6;
    private static final int ROUNDS = 300;

    /** What the water takes of the work of a plan; simulating what the effort shows takes the rest. */
    private static final double WATER_SHARE = 0.3;

    private static final long SEED = 1987;

    /** Copies the lists. */
    public SurveyPlan {
        assumed = List.copyOf(assumed);
        choices = List.copyOf(choices);
        worthMaking = List.copyOf(worthMaking);
        calendar = List.copyOf(calendar);
    }

    /** What the book does not tell. */
    public enum Assumed {
        /** How often one visit finds a territory. */
        DETECTION,
        /** How much years differ. */
        YEAR_NOISE
    }

    /** A way to survey. */
    public enum Way {
        /** As now. */
        PRESENT,
        /** One more visit a season. */
        ONE_MORE_VISIT,
        /** Twice the water. */
        TWICE_THE_WATER,
        /** Five seasons more. */
        FIVE_MORE_SEASONS
    }

    /**
     * What an effort would show.
     *
     * @param way the way
     * @param plan the same in numbers
     * @param powerForHalving probability of finding a fall that halves numbers in ten years
     * @param smallestFall yearly factor of the smallest fall found four times in five; empty where none is
     */
    public record Choice(Way way, CountPlan plan, double powerForHalving, OptionalDouble smallestFall) {}

    /**
     * Water where one more visit would tell something.
     *
     * @param river name of the river
     * @param stretch the water
     * @param visits effective visits to it this season
     * @param territories territories that one more visit is expected to bring up to what the rules ask for
     * @param surer how much surer the count by model is expected to be; empty if the model was not asked
     */
    public record Worth(String river, Stretch stretch, int visits, double territories, Optional<Surer> surer) {}

    /**
     * How much surer the number of a river’s territories by the model is expected to be after one more visit: see {@link NextVisit}.
     *
     * @param deviation its standard deviation now
     * @param deviationAfter the root of its expected variance afterwards
     * @param bits by how much its entropy is expected to fall, in bits; 0 or more
     */
    public record Surer(double deviation, double deviationAfter, double bits) {
        static Surer of(NextVisit.Told told) {
            return new Surer(Math.sqrt(told.variance()), Math.sqrt(told.variance() - told.fall()), told.bits());
        }

        private double gain() {
            return deviation * deviation - deviationAfter * deviationAfter;
        }
    }

    /**
     * Days for one visit.
     *
     * @param river name of the river
     * @param visit which visit of the season it is
     * @param from first day
     * @param to last day
     */
    public record Window(String river, int visit, LocalDate from, LocalDate to) {}

    /**
     * {@return the plan of a season; empty choices where no season was counted yet}
     *
     * @param records the records of the book
     * @param trend the trend of the seasons so far
     * @param maps the maps that it was made from
     * @param season the calendar year that is planned
     * @param today no visit is planned before this day
     * @param level level of the trend's interval
     * @param model the model; empty if only the rules count
     * @param progress hears how far the plan has come, and may stop it
     * @throws CancellationException if it is stopped
     */
    public static SurveyPlan of(
            SurveyRecords records,
            CountTrend trend,
            List<TerritoryMap> maps,
            int season,
            LocalDate today,
            double level,
            Optional<TerritoryModel> model,
            Progress progress) {
        List<CountTrend.SeasonTotals> counted = trend.seasons().stream()
                .filter(total -> total.count().isPresent())
                .toList();
        List<Assumed> assumed = new ArrayList<>();
        Answer<YearNoise> noise = noise(trend, level);
        CountPlan present = present(trend, maps, counted, noise, level, assumed);
        double km = counted.isEmpty() ? 0 : counted.get(counted.size() - 1).surveyedKm();
        List<Worth> worth = new ArrayList<>();
        List<Window> calendar = new ArrayList<>();
        double perKm = km > 0 ? present.territories() / km : 1;
        List<River> rivers = records.rivers().rivers();
        int done = 0;
        for (River river : rivers) {
            goOn(progress.part(0, WATER_SHARE), done++, rivers.size());
            PlannedWater water = PlannedWater.of(records, river, trend, maps, season);
            Optional<NextVisit> next = model.flatMap(fitted -> fitted.nextVisit(season, river.id(), water.stretches()));
            worth.addAll(water.worth(present, perKm, next));
            calendar.addAll(water.windows(trend.settings(), season, today, wanted(present)));
        }
        worth.removeIf(one -> one.territories() < LEAST_WORTH
                && one.surer().map(surer -> surer.gain() < LEAST_GAIN).orElse(true));
        worth.sort(Comparator.comparingDouble(SurveyPlan::rank).reversed());
        return new SurveyPlan(
                trend.species(),
                season,
                present,
                counted.size(),
                km,
                noise,
                assumed,
                counted.isEmpty() ? List.of() : choices(present, progress.part(WATER_SHARE, 1)),
                worth,
                calendar);
    }

    private static double rank(Worth worth) {
        return worth.surer().map(Surer::gain).orElse(worth.territories());
    }

    /** Only seasons of the same waters are one series. */
    private static Answer<YearNoise> noise(CountTrend trend, double level) {
        List<SeasonCount> series = trend.seasons().stream()
                .filter(total -> total.count().isPresent() && total.notCounted().isEmpty())
                .map(total -> SeasonCount.of(
                        "all water", total.season(), total.count().orElseThrow()))
                .toList();
        return YearNoise.of(series, level);
    }

    private static CountPlan present(
            CountTrend trend,
            List<TerritoryMap> maps,
            List<CountTrend.SeasonTotals> counted,
            Answer<YearNoise> noise,
            double level,
            List<Assumed> assumed) {
        double territories = counted.stream()
                .skip(Math.max(0, counted.size() - 3))
                .mapToLong(total -> total.count().orElseThrow())
                .average()
                .orElse(1);
        int visits = counted.isEmpty()
                ? 1
                : Math.max(1, counted.get(counted.size() - 1).effectiveVisits());
        OptionalDouble efficiency = maps.stream()
                .flatMap(map -> map.rivers().stream())
                .flatMap(river -> river.visitEfficiency().stream())
                .mapToDouble(Double::doubleValue)
                .filter(share -> share > 0)
                .average();
        if (efficiency.isEmpty()) {
            assumed.add(Assumed.DETECTION);
        }
        if (noise.found().isEmpty()) {
            assumed.add(Assumed.YEAR_NOISE);
        }
        MapSettings settings = trend.settings();
        int findings = settings.minimumRegistrations()
                .orElse(
                        visits < settings.manyVisits()
                                ? settings.registrationsWithFewVisits()
                                : settings.registrationsWithManyVisits());
        return new CountPlan(
                Math.max(0.5, territories),
                Math.max(YEARS, counted.size()),
                Math.min(1, efficiency.orElse(0.63)),
                visits,
                findings,
                noise.found()
                        .map(fitted -> Math.max(LEAST_NOISE, fitted.sigma()))
                        .orElse(USUAL_NOISE),
                level);
    }

    private static List<Choice> choices(CountPlan present, Progress progress) {
        List<Choice> choices = new ArrayList<>();
        for (Way way : Way.values()) {
            goOn(progress, choices.size(), Way.values().length);
            choices.add(choice(way, present));
        }
        return choices;
    }

    private static void goOn(Progress progress, long done, long total) {
        if (!progress.goOn(done, total)) {
            throw new CancellationException("Stopped while it was planned");
        }
    }

    private static Choice choice(Way way, CountPlan present) {
        CountPlan plan = switch (way) {
            case PRESENT -> present;
            case ONE_MORE_VISIT -> present.withVisits(present.visits() + 1);
            case TWICE_THE_WATER -> present.withWater(2);
            case FIVE_MORE_SEASONS -> present.withSeasons(present.seasons() + 5);
        };
        CountPower power = CountPower.of(plan, ROUNDS, SEED);
        return new Choice(way, plan, power.powerOf(HALVING), power.smallestFall(POWER));
    }

    /** The visits with which 95 % of territories are found as the rules ask, six at most. */
    private static int wanted(CountPlan present) {
        int visits = 2;
        while (visits < MOST_VISITS && present.withVisits(visits).shareCounted() < ENOUGH) {
            visits++;
        }
        return visits;
    }
}
