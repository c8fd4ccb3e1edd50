package org.ouzelbook.ui.app.estimate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.exposure.LogisticExposure;
import org.ouzelbook.stats.estimator.exposure.WatchedNest;
import org.ouzelbook.stats.estimator.likelihood.Covariate;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.ui.app.WrongRequest;

/**
 * Days that a nest must last.
 *
 * @param level the level of a covariate; blank for all days
 * @param days how many; above 0
 */
public record PeriodDays(String level, double days) {
    /** No nest lasts longer. */
    static final double LONGEST = 1000;

    /** {@return the days in an option: {@code 38}, or {@code eggs=16,young=22}} */
    static List<PeriodDays> read(String option) {
        return Arrays.stream(option.split(","))
                .map(String::strip)
                .filter(part -> !part.isEmpty())
                .map(PeriodDays::part)
                .toList();
    }

    private static PeriodDays part(String part) {
        int sign = part.indexOf('=');
        try {
            double days = Double.parseDouble(part.substring(sign + 1).strip());
            if (days > 0 && days <= LONGEST) {
                return new PeriodDays(sign < 0 ? "" : part.substring(0, sign).strip(), days);
            }
        } catch (NumberFormatException e) {
            throw new WrongRequest(Message.of("estimate.nests.period", part));
        }
        throw new WrongRequest(Message.of("estimate.nests.period", part));
    }

    /** {@return the one period without levels} */
    static Optional<Double> whole(List<PeriodDays> period) {
        return period.size() == 1 && period.get(0).level.isEmpty() ? Optional.of(period.get(0).days) : Optional.empty();
    }

    /** {@return the success of an attempt by a fitted model; empty if no period was told} */
    static Optional<Answer<Estimate>> success(LogisticExposure found, WatchedTable table, EstimateNests.Model model) {
        if (model.period().isEmpty()) {
            return Optional.empty();
        }
        List<WatchedNest.Days> days = new ArrayList<>();
        for (PeriodDays period : model.period()) {
            OptionalInt row = period.level.isEmpty() && table.covariates().isEmpty()
                    ? OptionalInt.of(0)
                    : table.rowOf(period.level);
            if (row.isEmpty() && table.covariates().stream().anyMatch(Covariate::numeric)) {
                throw new WrongRequest(Message.of("estimate.nests.periodOfNumbers"));
            }
            if (row.isEmpty()) {
                throw new WrongRequest(Message.of("estimate.nests.periodLevel", period.level));
            }
            days.add(new WatchedNest.Days(row.getAsInt(), period.days));
        }
        return Optional.of(found.success(days, model.level()));
    }

    /** {@return an answer's finding, mapped} */
    static <T> Answer<Estimate> map(Answer<T> answer, Function<T, Estimate> mapping) {
        return answer instanceof Answer.NotEstimable<T> not
                ? new Answer.NotEstimable<>(not.because())
                : Answer.of(mapping.apply(answer.found().orElseThrow()));
    }
}
