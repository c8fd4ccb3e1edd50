package org.ouzelbook.ui.app;

import java.time.Year;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.trend.YearlyTrend;
import org.ouzelbook.stats.survey.CountTrend;

/** The trend of the counts in sentences, the same in the window and in the report. */
public final class TrendWords {
    private static final double USUAL_POWER = 0.8;

    private TrendWords() {}

    /**
     * {@return the verdict, with the smallest and the largest count before it}
     *
     * @param trend a trend
     */
    public static String verdict(CountTrend trend) {
        List<Long> counts = trend.seasons().stream()
                .flatMap(season -> season.count().stream().boxed())
                .toList();
        String verdict = sentence(Texts.of(trend.verdict().sentence()));
        if (counts.size() < 2) {
            return verdict;
        }
        return Texts.of(
                        "trend.between",
                        Year.of(trend.seasons().get(0).season()),
                        counts.stream().mapToLong(Long::longValue).min().orElseThrow(),
                        counts.stream().mapToLong(Long::longValue).max().orElseThrow())
                + " " + verdict;
    }

    /**
     * {@return how likely a fall is, the change over the whole period, and what would have shown; nothing where no trend could
     * be fitted}
     *
     * @param trend a trend
     */
    public static List<String> sureness(CountTrend trend) {
        List<String> lines = new ArrayList<>();
        trend.line().found().ifPresent(line -> {
            trend.verdict().likelihood().ifPresent(word -> lines.add(falling(line, word)));
            Estimate period = line.percentOverPeriod();
            lines.add(Texts.of("trend.sure.period", period.value(), period.lower(), period.upper()));
            lines.add(Texts.of(
                    "trend.sure.detectable",
                    -line.smallestDetectable(USUAL_POWER).fall()));
        });
        return lines;
    }

    private static String falling(YearlyTrend line, Enum<?> word) {
        return Texts.of(
                "trend.sure.falling",
                Year.of(line.firstSeason()),
                Year.of(line.lastSeason()),
                line.probabilityFalling(),
                word);
    }

    /**
     * {@return the words as a sentence: a capital at the start, a full stop at the end}
     *
     * @param words some words
     */
    public static String sentence(String words) {
        String text = sentenceCase(words);
        return text.isBlank() || text.endsWith(".") || text.endsWith("?") ? text : text + ".";
    }

    /**
     * {@return the words with a capital at the start}
     *
     * @param words some words
     */
    public static String sentenceCase(String words) {
        if (words.isEmpty()) {
            return words;
        }
        int first = words.offsetByCodePoints(0, 1);
        return words.substring(0, first).toUpperCase(Locale.ENGLISH) + words.substring(first);
    }
}
