package org.ouzelbook.stats.survey;

import java.util.Optional;
import java.util.OptionalDouble;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.trend.YearlyTrend;
import org.ouzelbook.tracker.domain.Message;

/**
 * What may be said of a trend, in words that follow from the computed interval and probability.
 *
 * <table>
 *   <caption>With r the yearly factor, its interval, and P the probability that numbers fell</caption>
 *   <tr><th>word</th><th>rule, the first that fits</th></tr>
 *   <tr><td>too few seasons</td><td>fewer than six counted seasons</td></tr>
 *   <tr><td>falling, rising</td><td>the interval excludes 1</td></tr>
 *   <tr><td>likely fallen, risen</td><td>P at least 66 %, at most 34 %</td></tr>
 *   <tr><td>no clear change</td><td>the interval excludes a halving and a doubling in ten years: r from 0.933 to 1.072</td></tr>
 *   <tr><td>cannot tell</td><td>everything else</td></tr>
 * </table>
 *
 * <p>Never "stable": few territories cannot show it. Six seasons: common practice, no source.
 *
 * @param word the verdict
 * @param sentence the verdict with its numbers
 * @param probabilityFalling P; empty where no trend could be fitted
 * @param likelihood the word for P, empty with it
 */
public record Verdict(Word word, Message sentence, OptionalDouble probabilityFalling, Optional<Likelihood> likelihood) {
    /** With fewer counted seasons there is no verdict on a trend. Common practice, no source. */
    public static final int SEASONS_FOR_A_TREND = 6;

    private static final double LIKELY_FALL = 0.66;
    private static final double LIKELY_RISE = 0.34;
    private static final double HALVING_IN_TEN_YEARS = Math.pow(0.5, 0.1);
    private static final double DOUBLING_IN_TEN_YEARS = Math.pow(2, 0.1);
    private static final double POWER = 0.8;

    /** The verdicts. */
    public enum Word {
        /** Numbers are falling. */
        FALLING,
        /** Numbers are rising. */
        RISING,
        /** Numbers have likely fallen. */
        LIKELY_FALLEN,
        /** Numbers have likely risen. */
        LIKELY_RISEN,
        /** No clear change, and a large one would have shown. */
        NO_CLEAR_CHANGE,
        /** Cannot tell yet. */
        CANNOT_TELL,
        /** Fewer counted seasons than a verdict needs. */
        TOO_FEW_SEASONS,
        /** The counts carry no trend. */
        NO_TREND
    }

    /**
     * Words for a probability. Source: Intergovernmental Panel on Climate Change, guidance note on uncertainty (Mastrandrea and
     * others 2010).
     */
    public enum Likelihood {
        /** More than 99 %. */
        VIRTUALLY_CERTAIN(0.99),
        /** More than 95 %. */
        EXTREMELY_LIKELY(0.95),
        /** More than 90 %. */
        VERY_LIKELY(0.90),
        /** More than 66 %. */
        LIKELY(0.66),
        /** More than 50 %. */
        MORE_LIKELY_THAN_NOT(0.50),
        /** From 33 %. */
        ABOUT_AS_LIKELY_AS_NOT(0.33),
        /** From 10 %. */
        UNLIKELY(0.10),
        /** From 5 %. */
        VERY_UNLIKELY(0.05),
        /** From 1 %. */
        EXTREMELY_UNLIKELY(0.01),
        /** Less than 1 %. */
        EXCEPTIONALLY_UNLIKELY(-1);

        private final double above;

        Likelihood(double above) {
            this.above = above;
        }

        /**
         * {@return the word for a probability}
         *
         * @param probability from 0 to 1
         */
        public static Likelihood of(double probability) {
            for (Likelihood word : values()) {
                boolean reached = word.above < 0.5 ? probability >= word.above : probability > word.above;
                if (reached) {
                    return word;
                }
            }
            return EXCEPTIONALLY_UNLIKELY;
        }
    }

    static Verdict of(int countedSeasons, Answer<YearlyTrend> line) {
        if (line.found().isEmpty()) {
            Word word = countedSeasons < SEASONS_FOR_A_TREND ? Word.TOO_FEW_SEASONS : Word.NO_TREND;
            return new Verdict(
                    word,
                    Message.of(
                            word == Word.NO_TREND ? "trend.verdict.noTrend" : "trend.verdict.fewSeasons",
                            countedSeasons),
                    OptionalDouble.empty(),
                    Optional.empty());
        }
        YearlyTrend trend = line.found().get();
        Estimate percent = trend.percentPerYear();
        double falling = trend.probabilityFalling();
        Estimate factor = trend.slope().on(Math::exp);
        Word word = word(countedSeasons, factor.lower(), factor.upper(), falling);
        return new Verdict(
                word,
                sentence(word, countedSeasons, trend, percent, falling),
                OptionalDouble.of(falling),
                Optional.of(Likelihood.of(falling)));
    }

    static Word word(int countedSeasons, double lower, double upper, double falling) {
        if (countedSeasons < SEASONS_FOR_A_TREND) {
            return Word.TOO_FEW_SEASONS;
        }
        if (upper < 1) {
            return Word.FALLING;
        }
        if (lower > 1) {
            return Word.RISING;
        }
        if (falling >= LIKELY_FALL) {
            return Word.LIKELY_FALLEN;
        }
        if (falling <= LIKELY_RISE) {
            return Word.LIKELY_RISEN;
        }
        boolean withinHalvingAndDoubling = lower > HALVING_IN_TEN_YEARS && upper < DOUBLING_IN_TEN_YEARS;
        return withinHalvingAndDoubling ? Word.NO_CLEAR_CHANGE : Word.CANNOT_TELL;
    }

    private static Message sentence(Word word, int seasons, YearlyTrend trend, Estimate percent, double falling) {
        double value = percent.value();
        double lower = percent.lower();
        double upper = percent.upper();
        return switch (word) {
            case FALLING -> Message.of("trend.verdict.falling", value, lower, upper, falling);
            case RISING -> Message.of("trend.verdict.rising", value, lower, upper, 1 - falling);
            case LIKELY_FALLEN -> Message.of("trend.verdict.likelyFallen", value, lower, upper, falling);
            case LIKELY_RISEN -> Message.of("trend.verdict.likelyRisen", value, lower, upper, 1 - falling);
            case NO_CLEAR_CHANGE ->
                Message.of(
                        "trend.verdict.noClearChange",
                        value,
                        lower,
                        upper,
                        -trend.smallestDetectable(POWER).fall());
            case CANNOT_TELL -> Message.of("trend.verdict.cannotTell", value, lower, upper);
            case TOO_FEW_SEASONS ->
                Message.of("trend.verdict.tooFewSeasons", value, lower, upper, seasons, SEASONS_FOR_A_TREND, falling);
            case NO_TREND -> throw new IllegalArgumentException("A trend was found");
        };
    }
}
