package org.ouzelbook.ui.app.estimate;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.likelihood.LikelihoodFit;
import org.ouzelbook.stats.estimator.markresight.ContingencyTable;
import org.ouzelbook.stats.estimator.markresight.CormackJollySeber;
import org.ouzelbook.stats.estimator.markresight.GoodnessOfFit;
import org.ouzelbook.stats.survey.CautionMessage;
import org.ouzelbook.tracker.domain.Message;

/**
 * Survival and resighting of a table of encounter histories: {@code history} of 0 and 1, {@code count}, and groups.
 */
public final class EstimateSurvival {
    private EstimateSurvival() {}

    /**
     * What is asked.
     *
     * @param survivalBy what survival depends on: the word “occasion”, a group's column, or a column of the occasions
     * @param resightingBy what resighting depends on
     * @param occasions a table with a row for each occasion, or for each interval between two
     * @param level level of the limits, between 0 and 1
     */
    public record Model(List<String> survivalBy, List<String> resightingBy, Optional<Path> occasions, double level) {
        /** {@return the model that options ask for, names with commas between} */
        public static Model of(String survivalBy, String resightingBy, Optional<Path> occasions, double level) {
            return new Model(
                    CovariateColumns.names(survivalBy), CovariateColumns.names(resightingBy), occasions, level);
        }
    }

    /**
     * A fitted model.
     *
     * @param model how it was computed
     * @param source where that was published
     * @param n releases, newly marked or met again, that could be followed
     * @param birds how many
     * @param occasions how many
     * @param logLikelihood of the m-arrays, without multinomial coefficients
     * @param aic Akaike's criterion; a pair that is not told apart counts once
     * @param aicc the same for small samples; empty with too few releases
     * @param deviance twice the log-likelihood below that of a perfect fit of the m-arrays
     * @param parameters coefficients, probabilities, and products of pairs that are not told apart
     * @param goodnessOfFit tests 2 and 3
     * @param level level of the limits
     * @param warnings what else to know
     */
    public record Survival(
            Message model,
            String source,
            long n,
            long birds,
            int occasions,
            double logLikelihood,
            double aic,
            OptionalDouble aicc,
            double deviance,
            List<Parameter> parameters,
            Fit goodnessOfFit,
            double level,
            List<Message> warnings)
            implements TableAnswer {}

    /**
     * Whether the past of a bird matters.
     *
     * @param chiSquare sum over all tables
     * @param degreesOfFreedom theirs
     * @param p of so large a sum; empty without a table
     * @param cHat chi-square by its degrees of freedom; empty without a table
     * @param components the same for each kind of test
     */
    public record Fit(
            double chiSquare, int degreesOfFreedom, OptionalDouble p, OptionalDouble cHat, List<Component> components) {
        /** {@return the tests of a fit} */
        public static Fit of(GoodnessOfFit tests) {
            return new Fit(
                    tests.chiSquare(),
                    tests.degreesOfFreedom(),
                    tests.p(),
                    tests.cHat(),
                    Stream.of(GoodnessOfFit.Component.values())
                            .map(component -> Component.of(component, tests.only(component)))
                            .toList());
        }
    }

    /**
     * One kind of test.
     *
     * @param test which
     * @param chiSquare sum over its tables
     * @param degreesOfFreedom theirs
     * @param p of so large a sum; empty without a table
     * @param tables its tables
     */
    public record Component(
            GoodnessOfFit.Component test,
            double chiSquare,
            int degreesOfFreedom,
            OptionalDouble p,
            List<Tested> tables) {
        private static Component of(GoodnessOfFit.Component component, GoodnessOfFit tests) {
            return new Component(
                    component,
                    tests.chiSquare(),
                    tests.degreesOfFreedom(),
                    tests.p(),
                    tests.tables().stream().map(Tested::of).toList());
        }
    }

    /**
     * One table.
     *
     * @param occasion on which occasion, from 1
     * @param counts its rows
     * @param chiSquare of the table
     * @param degreesOfFreedom of the table
     */
    public record Tested(int occasion, List<List<Long>> counts, double chiSquare, int degreesOfFreedom) {
        private static Tested of(GoodnessOfFit.Tested one) {
            ContingencyTable table = one.table();
            return new Tested(one.occasion() + 1, table.counts(), table.chiSquare(), table.degreesOfFreedom());
        }
    }

    /**
     * {@return survival and resighting, or why a table shows none}
     *
     * @param file the table
     * @param model what is asked
     * @throws BadTable if the table must be mended first
     */
    public static TableAnswer of(Path file, Model model) {
        MarkedTable table = MarkedTable.read(file, model);
        Answer<CormackJollySeber> answer =
                CormackJollySeber.of(table.animals(), table.survival(), table.resighting(), model.level());
        if (answer instanceof Answer.NotEstimable<CormackJollySeber> none) {
            return NoAnswer.of(Method.CORMACK_JOLLY_SEBER, table.animals().animals(), none.because(), table.warnings());
        }
        CormackJollySeber found = answer.found().orElseThrow();
        LikelihoodFit fit = found.fit();
        return new Survival(
                MethodName.of(Method.CORMACK_JOLLY_SEBER),
                Method.CORMACK_JOLLY_SEBER.source(),
                fit.n(),
                found.animals(),
                found.occasions(),
                fit.logLikelihood(),
                fit.aic(),
                fit.aicc(),
                found.deviance(),
                parameters(found, model.level()),
                Fit.of(found.goodnessOfFit()),
                model.level(),
                warnings(table.warnings(), found));
    }

    /** {@return all that a fit tells, in the order in which it is printed} */
    public static List<Parameter> parameters(CormackJollySeber found, double level) {
        List<Parameter> parameters = new ArrayList<>();
        found.fit().coefficients(level).forEach(one -> parameters.add(Parameter.of(one, Parameter.LOGIT)));
        found.probabilities().forEach(one -> parameters.add(Parameter.of(one, Parameter.NATURAL)));
        found.products().forEach(one -> parameters.add(Parameter.of(one, Parameter.NATURAL)));
        return parameters;
    }

    /** {@return what to know of a fit, after what is known already} */
    public static List<Message> warnings(List<Message> before, CormackJollySeber found) {
        List<Message> warnings = new ArrayList<>(before);
        found.fit().cautions().forEach(caution -> warnings.add(CautionMessage.of(caution)));
        if (!found.products().isEmpty()) {
            warnings.add(Message.of(
                    "estimate.survival.pairs",
                    found.products().stream().map(one -> one.term()).toList()));
        }
        found.goodnessOfFit().p().ifPresent(p -> {
            if (p < 0.05) {
                warnings.add(Message.of(
                        "estimate.survival.doesNotFit",
                        p,
                        found.goodnessOfFit().cHat().orElseThrow()));
            }
        });
        boolean thin = found.goodnessOfFit().tables().stream()
                .anyMatch(one -> one.table().smallestExpected() < ContingencyTable.SMALL);
        if (thin) {
            warnings.add(Message.of("estimate.survival.thinTables"));
        }
        return warnings;
    }
}
