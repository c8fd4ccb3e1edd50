package org.ouzelbook.stats.estimator.likelihood;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.BiPredicate;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.ReferenceLaw;

/**
 * A model fitted by maximum likelihood, whose parts are linear in their terms on the scale of log odds.
 *
 * <p>Climbs from several starts find the highest peak; the observed information there, made of differences of the exact
 * gradient, gives standard errors. An estimate that runs off to 0 or 1 is recognised by a likelihood that does not bend: it
 * has no standard error, and one limit from the profile likelihood. Where the likelihood does not bend and no probability is
 * near 0 or 1, the data do not tell the parameters apart, and that is the answer.
 */
public final class LikelihoodFit {
    private static final double OTHER_PROBABILITY = 0.01;
    private static final double FARTHEST_START = 8;
    /** Directions are known to about this share. */
    private static final double LOOSE = 1e-3;
    /** Where a likelihood bends less, another is not taken to bend as little. */
    private static final double LEAST_BEND = 0.01;

    /** Of the central differences: their error is some 1e-8 of the slope. */
    private static final double STEP = 1e-4;

    private final Parts parts;
    private final LogLikelihood likelihood;
    private final List<Summit> summits;
    private final long n;
    private final Method method;
    private final RealMatrix toGiven;

    /** The covariance of the coefficients; what lies at a boundary is taken as known. */
    private final RealMatrix covariance;

    private final double[][] predictors;
    private final double farOut;

    private LikelihoodFit(
            Parts parts, LogLikelihood likelihood, List<Summit> summits, long n, Method method, double farOut) {
        this.farOut = farOut;
        this.parts = parts;
        this.likelihood = likelihood;
        this.summits = summits;
        this.n = n;
        this.method = method;
        this.toGiven = parts.toGiven();
        this.covariance = summit().curvature().inverse(0);
        this.predictors = parts.predictors(summit().place().point());
    }

    /**
     * {@return the fit, or that the likelihood has no peak that could be found}
     *
     * @param parts the parts of the model
     * @param likelihood its log-likelihood
     * @param n how many observations it rests on, for AICc
     * @param method what the model is called
     */
    public static Answer<LikelihoodFit> of(Parts parts, PredictorLikelihood likelihood, long n, Method method) {
        LogLikelihood composed = parts.compose(likelihood);
        List<Summit> summits = Summit.all(composed, parts.starts(), apart(parts, likelihood.farOut()));
        return summits.isEmpty()
                ? Answer.notEstimable(Reason.NOT_CONVERGED)
                : Answer.of(new LikelihoodFit(parts, composed, summits, n, method, likelihood.farOut()));
    }

    /**
     * {@return the fit with standard errors from the expected instead of the observed information, or that the likelihood has no
     * peak that could be found}
     *
     * @param parts the parts of the model
     * @param likelihood its log-likelihood
     * @param expected its expected information
     * @param n how many observations it rests on, for AICc
     * @param method what the model is called
     */
    public static Answer<LikelihoodFit> of(
            Parts parts, PredictorLikelihood likelihood, ExpectedInformation expected, long n, Method method) {
        LogLikelihood composed = parts.compose(likelihood);
        List<Summit> summits = Summit.all(composed, parts.starts(), apart(parts, likelihood.farOut())).stream()
                .map(summit -> new Summit(summit.place(), expected(parts, composed, expected, summit.place())))
                .toList();
        return summits.isEmpty()
                ? Answer.notEstimable(Reason.NOT_CONVERGED)
                : Answer.of(new LikelihoodFit(parts, composed, summits, n, method, likelihood.farOut()));
    }

    /** Two peaks are apart where all probabilities are told at both, or lie at 0 or 1, and one of them differs. */
    private static BiPredicate<Summit, Summit> apart(Parts parts, double farOut) {
        return (one, other) -> {
            double[][] here = parts.predictors(one.place().point());
            double[][] there = parts.predictors(other.place().point());
            boolean differs = false;
            for (int part = 0; part < here.length; part++) {
                for (int pattern = 0; pattern < here[part].length; pattern++) {
                    double[] combination = parts.combination(part, pattern);
                    if (!isTold(one, here[part][pattern], combination, farOut)
                            || !isTold(other, there[part][pattern], combination, farOut)) {
                        return false;
                    }
                    double move = Logit.probability(here[part][pattern]) - Logit.probability(there[part][pattern]);
                    differs |= Math.abs(move) > OTHER_PROBABILITY;
                }
            }
            return differs;
        };
    }

    private static boolean isTold(Summit summit, double predictor, double[] combination, double farOut) {
        return Math.abs(predictor) >= farOut || summit.curvature().openShare(combination) < LOOSE;
    }

    private static Curvature expected(
            Parts parts, LogLikelihood likelihood, ExpectedInformation expected, Climb.Place place) {
        double[] gradient = new double[parts.size()];
        likelihood.at(place.point(), gradient);
        return Curvature.of(parts.information(place.point(), expected), gradient);
    }

    private Summit summit() {
        return summits.get(0);
    }

    /** {@return the parts of the model} */
    public Parts parts() {
        return parts;
    }

    /** {@return the highest log-likelihood} */
    public double logLikelihood() {
        return summit().value();
    }

    /** {@return how many observations the fit rests on} */
    public long n() {
        return n;
    }

    /**
     * {@return how many parameters the data tell: the coefficients, less one for each direction in which the likelihood stays level
     * without a probability near 0 or 1}
     */
    public int parameters() {
        Curvature curvature = summit().curvature();
        List<double[]> open = IntStream.range(0, curvature.size())
                .filter(curvature::isOpen)
                .mapToObj(curvature::direction)
                .toList();
        return parts.size() - rank(open);
    }

    /** How many independent ways there are to move predictors that are not far out, along open directions. */
    private int rank(List<double[]> open) {
        if (open.isEmpty()) {
            return 0;
        }
        double[][] moves = new double[open.size()][open.size()];
        for (int part = 0; part < predictors.length; part++) {
            for (int pattern = 0; pattern < predictors[part].length; pattern++) {
                if (Math.abs(predictors[part][pattern]) < farOut) {
                    addMoves(moves, open, parts.combination(part, pattern));
                }
            }
        }
        RealMatrix squares = MatrixUtils.createRealMatrix(moves);
        return (int) DoubleStream.of(new SingularValueDecomposition(squares).getSingularValues())
                .filter(square -> square > LOOSE * LOOSE)
                .count();
    }

    private static void addMoves(double[][] moves, List<double[]> open, double[] combination) {
        double[] move = open.stream()
                .mapToDouble(direction -> Climb.dot(direction, combination))
                .toArray();
        for (int i = 0; i < move.length; i++) {
            for (int j = 0; j < move.length; j++) {
                moves[i][j] += move[i] * move[j];
            }
        }
    }

    /** {@return Akaike's criterion} */
    public double aic() {
        return 2.0 * parameters() - 2 * logLikelihood();
    }

    /** {@return Akaike's criterion for small samples; empty with too few observations for it} */
    public OptionalDouble aicc() {
        double k = parameters();
        double spare = n - k - 1;
        return spare > 0 ? OptionalDouble.of(aic() + 2 * k * (k + 1) / spare) : OptionalDouble.empty();
    }

    /** {@return the log-likelihood of each different peak that was reached, the highest first} */
    public List<Double> peaks() {
        return summits.stream().map(Summit::value).toList();
    }

    /** {@return what a reader must know of the fit} */
    public List<Caution> cautions() {
        if (summits.size() == 1) {
            return List.of();
        }
        long equal = summits.stream().filter(summit()::isAsHighAs).count();
        return equal > 1
                ? List.of(Caution.of(Reason.EQUAL_PEAKS, (int) equal))
                : List.of(Caution.of(
                        Reason.SEVERAL_PEAKS,
                        summits.size(),
                        summit().value() - summits.get(1).value()));
    }

    /** {@return the fitted linear predictors by part and pattern; far out, but finite, at a boundary} */
    public double[][] predictors() {
        return parts.predictors(summit().place().point());
    }

    /**
     * {@return the coefficients in order, with limits from their standard errors}
     *
     * @param level of the limits, between 0 and 1
     */
    public List<Coefficient> coefficients(double level) {
        return IntStream.range(0, parts.size())
                .mapToObj(i -> new Coefficient(
                        parts.list().get(parts.partOf(i)).name(),
                        parts.term(i),
                        estimate(toGiven.getRow(i), parts.partOf(i), level)))
                .toList();
    }

    /**
     * {@return the limits of a coefficient from its profile likelihood; infinite where the likelihood sets none}
     *
     * @param coefficient its place in {@link #coefficients}
     * @param level of the limits, between 0 and 1
     */
    public double[] profileLimits(int coefficient, double level) {
        ProfileLimits limits = new ProfileLimits(likelihood, summit(), toGiven.getRow(coefficient), level);
        return new double[] {limits.lower(), limits.upper()};
    }

    /**
     * {@return the linear predictor of one pattern of a part, with limits from its standard error}
     *
     * @param part from 0
     * @param pattern from 0
     * @param level of the limits, between 0 and 1
     */
    public Answer<Estimate> predictor(int part, int pattern, double level) {
        return estimate(parts.combination(part, pattern), part, level);
    }

    /**
     * {@return the probability of one pattern of a part: the limits are those of its predictor, the standard error is by the
     * delta method}
     *
     * @param part from 0
     * @param pattern from 0
     * @param level of the limits, between 0 and 1
     */
    public Answer<Estimate> probability(int part, int pattern, double level) {
        return predictor(part, pattern, level) instanceof Answer.Found<Estimate> found
                ? Answer.of(natural(found.finding()))
                : Answer.notEstimable(Reason.NOT_TOLD_APART);
    }

    private static Estimate natural(Estimate predictor) {
        double p = Logit.probability(predictor.value());
        OptionalDouble error = predictor.standardError().isPresent()
                ? OptionalDouble.of(predictor.standardError().getAsDouble() * p * (1 - p))
                : OptionalDouble.empty();
        return new Estimate(
                p,
                error,
                Logit.probability(predictor.lower()),
                Logit.probability(predictor.upper()),
                predictor.level(),
                predictor.n(),
                predictor.method(),
                predictor.warnings());
    }

    /**
     * {@return the standard error of a quantity that is computed from the predictors, by the delta method; what lies at a
     * boundary is taken as known}
     *
     * @param slopes derivative of the quantity by each predictor, by part and pattern
     */
    public double standardError(double[][] slopes) {
        return Math.sqrt(varianceOfTold(parts.pullBack(slopes)));
    }

    /**
     * {@return a quantity that is computed from the predictors, its standard error by the delta method, its limits symmetric; not
     * estimable if it depends on what the data do not tell apart}
     *
     * @param value the quantity
     * @param slopes its derivative by each predictor, by part and pattern
     * @param level of the limits, between 0 and 1
     */
    public Answer<Estimate> quantity(double value, double[][] slopes, double level) {
        OptionalDouble variance = variance(parts.pullBack(slopes));
        return variance.isEmpty()
                ? Answer.notEstimable(Reason.NOT_TOLD_APART)
                : Answer.of(Estimate.symmetric(
                        value, Math.sqrt(variance.getAsDouble()), ReferenceLaw.NORMAL, level, n, method, List.of()));
    }

    /** By the delta method, from a derivative by each coefficient; empty where the data do not tell apart what it hangs on. */
    private OptionalDouble variance(double[] gradient) {
        return summit().curvature().openShare(gradient) >= LOOSE
                ? OptionalDouble.empty()
                : OptionalDouble.of(varianceOfTold(gradient));
    }

    private double varianceOfTold(double[] gradient) {
        return Math.max(0, Climb.dot(gradient, covariance.operate(gradient)));
    }

    /**
     * {@return the variance of each of some quantities that are computed from the predictors, by the delta method, its derivatives by
     * central differences; empty for one that depends on what the data do not tell apart. What lies at a boundary is taken as known}
     *
     * @param quantities the quantities, from the predictors by part and pattern
     */
    public List<OptionalDouble> variances(Function<double[][], double[]> quantities) {
        double[] peak = summit().place().point();
        double[][] slopes = new double[peak.length][];
        for (int i = 0; i < peak.length; i++) {
            double[] there = peak.clone();
            there[i] = peak[i] + STEP;
            double[] above = quantities.apply(parts.predictors(there));
            there[i] = peak[i] - STEP;
            double[] below = quantities.apply(parts.predictors(there));
            slopes[i] = IntStream.range(0, above.length)
                    .mapToDouble(quantity -> (above[quantity] - below[quantity]) / (2 * STEP))
                    .toArray();
        }
        return IntStream.range(0, slopes[0].length)
                .mapToObj(quantity -> variance(Stream.of(slopes)
                        .mapToDouble(byCoefficient -> byCoefficient[quantity])
                        .toArray()))
                .toList();
    }

    /**
     * {@return the predictors at the peak of another likelihood of the same parts that a climb from this peak reaches: for a
     * bootstrap, where neither other starts nor standard errors are needed}
     *
     * @param other a likelihood of the same parts
     */
    public double[][] refit(PredictorLikelihood other) {
        double[] start = summit().place().point().clone();
        for (int i = 0; i < start.length; i++) {
            start[i] = Math.max(-FARTHEST_START, Math.min(FARTHEST_START, start[i]));
        }
        double[][] bend = summit().curvature().inverse(LEAST_BEND).getData();
        return parts.predictors(Climb.from(parts.compose(other), start, bend).point());
    }

    /** {@return the covariance of the coefficients on the scale of their columns; what lies at a boundary is taken as known} */
    public RealMatrix covariance() {
        return toGiven.multiply(covariance).multiply(toGiven.transpose());
    }

    /** {@return whether every parameter is told apart from the others and lies inside its range} */
    public boolean isRegular() {
        return IntStream.range(0, summit().curvature().size()).noneMatch(summit().curvature()::isOpen);
    }

    private Answer<Estimate> estimate(double[] combination, int part, double level) {
        double value = Climb.dot(combination, summit().place().point());
        if (summit().curvature().openShare(combination) < LOOSE) {
            double error = Math.sqrt(varianceOfTold(combination));
            return Answer.of(Estimate.symmetric(value, error, ReferenceLaw.NORMAL, level, n, method, List.of()));
        }
        if (!isFarOut(part)) {
            return Answer.notEstimable(Reason.NOT_TOLD_APART);
        }
        ProfileLimits limits = new ProfileLimits(likelihood, summit(), combination, level);
        boolean rising = value > 0;
        double limit = rising ? limits.lower() : limits.upper();
        if (!Double.isFinite(limit)) {
            return Answer.notEstimable(Reason.NOT_TOLD_APART);
        }
        return Answer.of(new Estimate(
                rising ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY,
                OptionalDouble.empty(),
                rising ? limit : Double.NEGATIVE_INFINITY,
                rising ? Double.POSITIVE_INFINITY : limit,
                level,
                n,
                method,
                List.of(Caution.of(Reason.AT_BOUNDARY))));
    }

    /** Whether every predictor of a part that open directions move stands for a probability of 0 or 1. */
    private boolean isFarOut(int part) {
        Design design = parts.list().get(part).design();
        for (int pattern = 0; pattern < design.patterns(); pattern++) {
            if (Math.abs(predictors[part][pattern]) < farOut
                    && summit().curvature().openShare(parts.combination(part, pattern)) >= LOOSE) {
                return false;
            }
        }
        return true;
    }
}
