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

    private static final double HALVING_IN_TEN_YEARS = Math.pow(0.5, 0.1);
    private static final double DOUBLING_IN_TEN_YEARS = Math.pow(2, 0.1);
    private static final double POWER = 0.8;

    /** The verdicts. */
    public enum Word {
        /** Numbers are falling. */
        FALLING,
        /** Numbers are rising. */
        RISING,
        /** Numbers have likely fallen, or more than likely. */
        LIKELY_FALLEN,
        /** Numbers have likely risen, or more than likely. */
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
     * Words for a probability in whole percent, as it is printed beside them: a reader can hold one against the other. Source:
     * Intergovernmental Panel on Climate Change, guidance note on uncertainty (Mastrandrea and others 2010), table 1, where very likely is
     * 90 to 100 %; whoever lies in several ranges gets the narrowest.
     */
    public enum Likelihood {
        /** 99 % and more. */
        VIRTUALLY_CERTAIN(99),
        /** 95 % and more. */
        EXTREMELY_LIKELY(95),
        /** 90 % and more. */
        VERY_LIKELY(90),
        /** 66 % and more. */
        LIKELY(66),
        /** More than 50 %. */
        MORE_LIKELY_THAN_NOT(51),
        /** More than 33 %. */
        ABOUT_AS_LIKELY_AS_NOT(34),
        /** More than 10 %. */
        UNLIKELY(11),
        /** More than 5 %. */
        VERY_UNLIKELY(6),
        /** More than 1 %. */
        EXTREMELY_UNLIKELY(2),
        /** 1 % and less. */
        EXCEPTIONALLY_UNLIKELY(0);

        private final int fromPercent;

        Likelihood(int fromPercent) {
            this.fromPercent = fromPercent;
        }

        /**
         * {@return the word for a probability}
         *
         * @param probability from 0 to 1
         */
        public static Likelihood of(double probability) {
            long percent = Math.round(100 * probability);
            for (Likelihood word : values()) {
                if (percent >= word.fromPercent) {
                    return word;
                }
            }
            return EXCEPTIONALLY_UNLIKELY;
        }

        /** {@return whether it is likely or more} */
        boolean isLikely() {
            return compareTo(LIKELY) <= 0;
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
        if (Likelihood.of(falling).isLikely()) {
            return Word.LIKELY_FALLEN;
        }
        if (Likelihood.of(1 - falling).isLikely()) {
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
            case LIKELY_FALLEN ->
                Message.of("trend.verdict.likelyFallen", value, lower, upper, falling, Likelihood.of(falling));
            case LIKELY_RISEN ->
                Message.of("trend.verdict.likelyRisen", value, lower, upper, 1 - falling, Likelihood.of(1 - falling));
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
