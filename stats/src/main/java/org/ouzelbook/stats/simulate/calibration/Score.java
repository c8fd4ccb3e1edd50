package org.ouzelbook.stats.simulate.calibration;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.ouzelbook.stats.simulate.calibration.CountedSeason.ModelCount;

/**
 * How a count did over some books.
 *
 * @param books the books
 */
record Score(List<CountedBook> books) {
    Score {
        books = List.copyOf(books);
    }

    List<CountedSeason> seasons() {
        return books.stream().flatMap(book -> book.seasons().stream()).toList();
    }

    /** {@return the mean of the truth} */
    double meanTruth() {
        return seasons().stream().mapToInt(CountedSeason::truth).average().orElse(0);
    }

    /** {@return the sum of all errors as a share of the sum of the truth} */
    double ruleBias() {
        return bias(season -> season.byRule());
    }

    /** {@return the root of the mean squared error} */
    double ruleError() {
        return error(season -> season.byRule());
    }

    /** {@return whether the model counted every season} */
    boolean isModelled() {
        return !books.isEmpty()
                && seasons().stream().allMatch(season -> season.byModel().isPresent());
    }

    double modelBias() {
        return bias(Score::model);
    }

    double modelError() {
        return error(Score::model);
    }

    /** {@return the share of seasons whose interval holds the truth} */
    double coverage() {
        return seasons().stream()
                .mapToDouble(season -> season.byModel()
                                .map(count -> count.holds(season.truth()))
                                .orElse(false)
                        ? 1
                        : 0)
                .average()
                .orElse(0);
    }

    /** {@return the mean length of the intervals} */
    double width() {
        return seasons().stream()
                .flatMap(season -> season.byModel().stream())
                .mapToDouble(count -> count.upper() - count.lower())
                .average()
                .orElse(0);
    }

    /** {@return the standard error of the model's bias, from how it differs from book to book; empty with one book} */
    OptionalDouble biasError() {
        int n = books.size();
        if (n < 2) {
            return OptionalDouble.empty();
        }
        double all = modelBias();
        double sum = 0;
        for (CountedBook book : books) {
            Score one = new Score(List.of(book));
            double weight = one.meanTruth()
                    * book.seasons().size()
                    * n
                    / (meanTruth() * seasons().size());
            double off = weight * (one.modelBias() - all);
            sum += off * off;
        }
        return OptionalDouble.of(Math.sqrt(sum / (n - 1) / n));
    }

    /** {@return seconds a book} */
    double seconds() {
        return books.stream().mapToDouble(CountedBook::seconds).average().orElse(0);
    }

    private double bias(ToDoubleFunction<CountedSeason> count) {
        double truth = seasons().stream().mapToDouble(CountedSeason::truth).sum();
        double counted = seasons().stream().mapToDouble(count).sum();
        return truth == 0 ? 0 : (counted - truth) / truth;
    }

    private double error(ToDoubleFunction<CountedSeason> count) {
        return Math.sqrt(seasons().stream()
                .mapToDouble(season -> Math.pow(count.applyAsDouble(season) - season.truth(), 2))
                .average()
                .orElse(0));
    }

    private static double model(CountedSeason season) {
        return season.byModel().map(ModelCount::estimate).orElse(Double.NaN);
    }
}
