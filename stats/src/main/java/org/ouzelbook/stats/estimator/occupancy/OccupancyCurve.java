package org.ouzelbook.stats.estimator.occupancy;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.likelihood.LikelihoodFit;
import org.ouzelbook.stats.estimator.likelihood.Logit;
import org.ouzelbook.stats.estimator.occupancy.SiteClasses.SiteClass;

/**
 * What follows from a fitted model for all its sites together: shares of occupied sites, and how they change. Limits are by the
 * delta method, on the scale of log odds for shares and of logarithms for rates.
 */
final class OccupancyCurve {
    private static final double AT_THE_END = 1e-7;

    private final List<SiteClass> sites;
    private final int seasons;
    private final LikelihoodFit fit;
    private final double level;
    private final double[][] predictors;
    private final double all;

    OccupancyCurve(SiteClasses sites, int seasons, LikelihoodFit fit, double level) {
        this.sites = sites.whateverFound();
        this.seasons = seasons;
        this.fit = fit;
        this.level = level;
        this.predictors = fit.predictors();
        this.all = this.sites.stream().mapToInt(SiteClass::sites).sum();
    }

    /** A number and its derivatives by the predictors. */
    private static final class Quantity {
        private final double[][] slopes;
        private double value;

        Quantity(double[][] predictors) {
            slopes = new double[predictors.length][];
            for (int part = 0; part < slopes.length; part++) {
                slopes[part] = new double[predictors[part].length];
            }
        }

        void add(int part, int pattern, double slope) {
            slopes[part][pattern] += slope;
        }

        /** The slopes of a function of this and perhaps another quantity, whose derivatives by them are given. */
        double[][] chain(double byThis, double byOther, Quantity other) {
            double[][] chained = new double[slopes.length][];
            for (int part = 0; part < slopes.length; part++) {
                chained[part] = new double[slopes[part].length];
                for (int i = 0; i < chained[part].length; i++) {
                    chained[part][i] = byThis * slopes[part][i] + byOther * other.slopes[part][i];
                }
            }
            return chained;
        }
    }

    /** Expected share of the sites that are occupied, by season. */
    List<Answer<Estimate>> occupancy() {
        List<Answer<Estimate>> shares = new ArrayList<>();
        for (int season = 0; season < seasons; season++) {
            Quantity occupied = occupied(season);
            shares.add(
                    season == 0 && predictors[0].length == 1
                            ? fit.probability(0, 0, level)
                            : share(occupied.value, occupied.chain(1, 0, occupied)));
        }
        return shares;
    }

    /** Occupancy of a season over that of the one before, from the second season. */
    List<Answer<Estimate>> growth() {
        List<Answer<Estimate>> rates = new ArrayList<>();
        for (int season = 1; season < seasons; season++) {
            Quantity before = occupied(season - 1);
            Quantity after = occupied(season);
            if (before.value < AT_THE_END || after.value < AT_THE_END) {
                rates.add(Answer.notEstimable(Reason.NOTHING_OCCUPIED));
                continue;
            }
            double log = Math.log(after.value / before.value);
            double[][] slopes = after.chain(1 / after.value, -1 / before.value, before);
            rates.add(fit.quantity(log, slopes, level).map(OccupancyCurve::exponential));
        }
        return rates;
    }

    private static Estimate exponential(Estimate log) {
        Estimate rate = log.on(Math::exp);
        double error = rate.value() * log.standardError().orElse(0);
        return withError(rate, error);
    }

    private static Estimate withError(Estimate estimate, double error) {
        return new Estimate(
                estimate.value(),
                OptionalDouble.of(error),
                estimate.lower(),
                estimate.upper(),
                estimate.level(),
                estimate.n(),
                estimate.method(),
                estimate.warnings());
    }

    /** Share of a season's occupied sites that were empty the season before, from the second season. */
    List<Answer<Estimate>> turnover() {
        List<Answer<Estimate>> shares = new ArrayList<>();
        for (int season = 1; season < seasons; season++) {
            Quantity gained = gained(season - 1);
            Quantity occupied = occupied(season);
            if (occupied.value < AT_THE_END) {
                shares.add(Answer.notEstimable(Reason.NOTHING_OCCUPIED));
                continue;
            }
            double share = gained.value / occupied.value;
            shares.add(share(share, gained.chain(1 / occupied.value, -share / occupied.value, occupied)));
        }
        return shares;
    }

    /** The share that occupancy tends to if nothing changes; not estimable if colonisation or extinction change by season. */
    Answer<Estimate> equilibrium() {
        if (seasons == 1) {
            return Answer.notEstimable(Reason.ONE_SEASON_OF_VISITS);
        }
        Quantity sum = new Quantity(predictors);
        for (SiteClass site : sites) {
            int gain = site.colonisation(0);
            int loss = site.extinction(0);
            for (int season = 1; season < seasons - 1; season++) {
                if (site.colonisation(season) != gain || site.extinction(season) != loss) {
                    return Answer.notEstimable(Reason.CHANGES_BY_SEASON);
                }
            }
            double gamma = Logit.probability(predictors[1][gain]);
            double epsilon = Logit.probability(predictors[2][loss]);
            double both = gamma + epsilon;
            if (both < AT_THE_END) {
                return Answer.notEstimable(Reason.NO_CHANGE_AT_ALL);
            }
            double weight = site.sites() / all;
            sum.value += weight * gamma / both;
            sum.add(1, gain, weight * epsilon / (both * both) * gamma * (1 - gamma));
            sum.add(2, loss, -weight * gamma / (both * both) * epsilon * (1 - epsilon));
        }
        return share(sum.value, sum.chain(1, 0, sum));
    }

    private Answer<Estimate> share(double value, double[][] slopes) {
        double spread = value * (1 - value);
        if (spread < AT_THE_END) {
            return Answer.notEstimable(Reason.AT_BOUNDARY);
        }
        for (double[] part : slopes) {
            for (int i = 0; i < part.length; i++) {
                part[i] /= spread;
            }
        }
        return fit.quantity(Logit.of(value), slopes, level)
                .map(logit -> withError(
                        logit.on(Logit::probability), logit.standardError().orElse(0) * spread));
    }

    private Quantity occupied(int season) {
        Quantity quantity = new Quantity(predictors);
        for (SiteClass site : sites) {
            double weight = site.sites() / all;
            double[] occupied = course(site);
            quantity.value += weight * occupied[season];
            addSlopes(quantity, site, occupied, season, weight);
        }
        return quantity;
    }

    private Quantity gained(int season) {
        Quantity quantity = new Quantity(predictors);
        for (SiteClass site : sites) {
            double weight = site.sites() / all;
            double[] occupied = course(site);
            double gamma = Logit.probability(predictors[1][site.colonisation(season)]);
            double empty = 1 - occupied[season];
            quantity.value += weight * gamma * empty;
            quantity.add(1, site.colonisation(season), weight * empty * gamma * (1 - gamma));
            addSlopes(quantity, site, occupied, season, -weight * gamma);
        }
        return quantity;
    }

    /** Probability that a site of the class is occupied, by season, before any visit. */
    private double[] course(SiteClass site) {
        double[] occupied = new double[seasons];
        occupied[0] = Logit.probability(predictors[0][site.occupancy()]);
        for (int season = 1; season < seasons; season++) {
            double before = occupied[season - 1];
            occupied[season] = before * Logit.probability(-predictors[2][site.extinction(season - 1)])
                    + (1 - before) * Logit.probability(predictors[1][site.colonisation(season - 1)]);
        }
        return occupied;
    }

    /** Adds what a weight times the occupancy of a season owes to each predictor, from that season back to the first. */
    private void addSlopes(Quantity quantity, SiteClass site, double[] occupied, int season, double weight) {
        double carried = weight;
        for (int before = season - 1; before >= 0; before--) {
            double gamma = Logit.probability(predictors[1][site.colonisation(before)]);
            double epsilon = Logit.probability(predictors[2][site.extinction(before)]);
            quantity.add(1, site.colonisation(before), carried * (1 - occupied[before]) * gamma * (1 - gamma));
            quantity.add(2, site.extinction(before), -carried * occupied[before] * epsilon * (1 - epsilon));
            carried *= 1 - epsilon - gamma;
        }
        quantity.add(0, site.occupancy(), carried * occupied[0] * (1 - occupied[0]));
    }
}
