package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoublePredicate;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.random.MersenneTwister;
import org.apache.commons.math3.random.RandomGenerator;
import org.ouzelbook.stats.estimator.segmentation.Constraint;
import org.ouzelbook.stats.estimator.segmentation.Grain;
import org.ouzelbook.stats.estimator.segmentation.LinePosterior;
import org.ouzelbook.stats.estimator.segmentation.LinePosterior.Span;
import org.ouzelbook.stats.estimator.segmentation.Nature;
import org.ouzelbook.stats.estimator.segmentation.NaturePosterior;
import org.ouzelbook.stats.estimator.segmentation.Registration;
import org.ouzelbook.stats.estimator.segmentation.SurveyedLine;
import org.ouzelbook.stats.estimator.segmentation.VisitedWater;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * What one more visit to a stretch of a river would tell of its territories: how much surer their number is expected to be afterwards.
 *
 * <p>Maps are drawn from the model with their probabilities. For each the visit is made up: which pairs of that map it finds, where it meets
 * them, what strays it meets, all by the nature of the species. With that visit added, the number's law is worked out anew, exactly. By
 * the law of total variance its variance is expected to fall by the variance of what will then be expected, and its entropy by the
 * information that the visit holds about it; both are means over the made-up visits, never below 0.
 *
 * <p>By the most probable nature, on coarse cells, and each river by itself. Source: D. V. Lindley (1956), Ann. Math. Stat. 27:986–1005 (cited from memory).
 */
final class NextVisit {
    /** So many made-up visits a stretch. */
    private static final int VISITS = 60;

    private static final long SEED = 1956;

    private final SurveyedLine line;
    private final Grain grain;
    private final Nature nature;
    private final DoublePredicate counted;
    private final List<List<Span>> maps;
    private final double[] now;

    private NextVisit(
            SurveyedLine line,
            Grain grain,
            Nature nature,
            DoublePredicate counted,
            List<List<Span>> maps,
            double[] now) {
        this.line = line;
        this.grain = grain;
        this.nature = nature;
        this.counted = counted;
        this.maps = maps;
        this.now = now;
    }

    /**
     * {@return what may be asked of a line; nothing if what is known of it contradicts itself}
     *
     * @param line the line with its visits so far
     * @param grain how finely it is cut
     * @param nature of the species and its surveyors
     * @param counted whether a territory with its middle at a place, in metres, counts
     */
    static Optional<NextVisit> of(SurveyedLine line, Grain grain, Nature nature, DoublePredicate counted) {
        return posterior(line, grain, nature).map(posterior -> {
            RandomGenerator random = new MersenneTwister(SEED);
            List<List<Span>> maps = IntStream.range(0, VISITS)
                    .mapToObj(i -> posterior.draw(random))
                    .toList();
            return new NextVisit(line, grain, nature, counted, maps, posterior.countLaw(counted));
        });
    }

    private static Optional<LinePosterior> posterior(SurveyedLine line, Grain grain, Nature nature) {
        return LinePosterior.of(line, grain, List.of(new NaturePosterior.Draw(nature, 1)));
    }

    /**
     * What a visit is expected to tell of the number of territories.
     *
     * @param variance variance of the number without the visit
     * @param fall by how much that is expected to fall: the variance of what will be expected after it
     * @param bits by how much the number's entropy is expected to fall, in bits: the mean of Kullback and Leibler's divergence of its law
     *     after the visit from its law without it
     */
    record Told(double variance, double fall, double bits) {}

    /**
     * {@return what it is expected to tell}
     *
     * @param walked the stretch that it would cover
     */
    Told of(Stretch walked) {
        List<double[]> after = laws(walked);
        double mean = mean(now);
        double variance = IntStream.range(0, now.length)
                .mapToDouble(k -> now[k] * (k - mean) * (k - mean))
                .sum();
        double fall = after.stream()
                .mapToDouble(law -> (mean(law) - mean) * (mean(law) - mean))
                .average()
                .orElse(0);
        return new Told(
                variance,
                Math.min(variance, fall),
                after.stream().mapToDouble(this::divergence).average().orElse(0));
    }

    /** The number's law without the visit. */
    double[] law() {
        return now.clone();
    }

    /** Its law after each of the made-up visits; on the average that is the law without. */
    List<double[]> laws(Stretch walked) {
        double lower = Math.max(line.lower(), walked.lower().metres());
        double upper = Math.min(line.upper(), walked.upper().metres());
        return lower < upper
                ? IntStream.range(0, maps.size())
                        .parallel()
                        .mapToObj(i -> with(maps.get(i), lower, upper, new MersenneTwister(SEED + 1 + i)))
                        .flatMap(visited -> posterior(visited, grain, nature).stream())
                        .map(posterior -> posterior.countLaw(counted))
                        .toList()
                : List.of();
    }

    private static double mean(double[] law) {
        return IntStream.range(0, law.length).mapToDouble(k -> k * law[k]).sum();
    }

    private double divergence(double[] law) {
        double bits = 0;
        for (int k = 0; k < Math.min(law.length, now.length); k++) {
            bits += law[k] > 0 && now[k] > 0 ? law[k] * Math.log(law[k] / now[k]) / Math.log(2) : 0;
        }
        return Math.max(0, bits);
    }

    /** The line with one more visit, as it may go if a map is true. */
    private SurveyedLine with(List<Span> map, double lower, double upper, RandomGenerator random) {
        int visit = line.visits().size();
        List<VisitedWater> visits = new ArrayList<>(line.visits());
        visits.add(new VisitedWater(List.of(new VisitedWater.Piece(lower, upper))));
        List<Registration> registrations = new ArrayList<>(line.registrations());
        List<Constraint> constraints = new ArrayList<>(line.constraints());
        List<Registration> others = new ArrayList<>();
        for (Span pair : map) {
            List<Registration> met = met(pair, lower, upper, visit, random);
            met.forEach(seen -> others.stream()
                    .filter(known -> Math.abs(known.position() - seen.position()) <= line.inSight()
                            && random.nextDouble() < nature.noting())
                    .forEach(known -> constraints.add(new Constraint.Simultaneous(known, seen))));
            others.addAll(met);
        }
        registrations.addAll(others);
        for (double at = next(lower, random); at < upper; at = next(at, random)) {
            registrations.add(new Registration(at, visit));
        }
        return new SurveyedLine(line.lower(), line.upper(), visits, registrations, constraints, line.inSight());
    }

    /** Strays lie as a Poisson process. */
    private double next(double from, RandomGenerator random) {
        return from - 1000 / nature.strays() * Math.log(1 - random.nextDouble());
    }

    /** Where a visit meets a pair of a map, if it finds it. */
    private List<Registration> met(Span pair, double lower, double upper, int visit, RandomGenerator random) {
        double from = Math.max(lower, pair.lower());
        double to = Math.min(upper, pair.upper());
        double share = Math.max(0, to - from) / (pair.upper() - pair.lower());
        if (random.nextDouble() >= chance(pair, random) * share) {
            return List.of();
        }
        double focus = focus(pair, random);
        List<Registration> met = new ArrayList<>();
        for (int left = meetings(random); left > 0; left--) {
            double at = place(pair, focus, random);
            met.add(new Registration(at >= from && at <= to ? at : from + random.nextDouble() * (to - from), visit));
        }
        return met;
    }

    /** The chance that a visit to all of a territory finds its pair, given which of the visits so far did: a beta law. */
    private double chance(Span pair, RandomGenerator random) {
        double found = nature.detection() * nature.concentration();
        double missed = (1 - nature.detection()) * nature.concentration();
        for (int v = 0; v < line.visits().size(); v++) {
            int visit = v;
            boolean met =
                    line.registrations().stream().anyMatch(one -> one.visit() == visit && isIn(pair, one.position()));
            double share =
                    line.visits().get(v).lengthWithin(pair.lower(), pair.upper()) / (pair.upper() - pair.lower());
            found += met ? 1 : 0;
            missed += met ? 0 : share;
        }
        return new BetaDistribution(random, found, missed).sample();
    }

    /** About the place where the pair was mostly met; one that nobody met may have its own anywhere. */
    private double focus(Span pair, RandomGenerator random) {
        return line.registrations().stream()
                .mapToDouble(Registration::position)
                .filter(position -> isIn(pair, position))
                .average()
                .orElse(pair.lower() + random.nextDouble() * (pair.upper() - pair.lower()));
    }

    private double place(Span pair, double focus, RandomGenerator random) {
        return random.nextDouble() < nature.evenUse()
                ? pair.lower() + random.nextDouble() * (pair.upper() - pair.lower())
                : focus + nature.focalSpread() * random.nextGaussian();
    }

    /** A zero-truncated Poisson number, from its law. */
    private int meetings(RandomGenerator random) {
        double rate = nature.repeats();
        double probability = rate / Math.expm1(rate);
        double at = random.nextDouble();
        int k = 1;
        while (at >= probability && probability > 0) {
            at -= probability;
            k++;
            probability *= rate / k;
        }
        return k;
    }

    private static boolean isIn(Span pair, double position) {
        return pair.lower() <= position && position <= pair.upper();
    }
}
