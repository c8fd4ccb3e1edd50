package org.ouzelbook.stats.estimator.occupancy;

import java.util.List;
import org.ouzelbook.stats.estimator.likelihood.PredictorLikelihood;
import org.ouzelbook.stats.estimator.occupancy.SiteClasses.Cell;
import org.ouzelbook.stats.estimator.occupancy.SiteClasses.SiteClass;

/**
 * The likelihood of visits to sites: a hidden chain of occupied and empty seasons at each, seen through detections.
 *
 * <p>Forward and backward recursions give the probability of each hidden state and change, and with them the exact gradient: the
 * derivative by the predictor of a probability q is the expected number of events less q times the expected number of chances
 * (R. A. Fisher's identity). For one season it is that of MacKenzie et al. (2002), for many that of MacKenzie et al. (2003).
 */
final class OccupancyLikelihood implements PredictorLikelihood {
    private final SiteClasses sites;
    private final int seasons;

    OccupancyLikelihood(SiteClasses sites, int seasons) {
        this.sites = sites;
        this.seasons = seasons;
    }

    @Override
    public double at(double[][] predictors, double[][] slopes) {
        Chain chain = new Chain(predictors);
        double sum = 0;
        for (SiteClass one : sites.classes()) {
            sum += one.sites() * chain.forward(one);
            chain.backward(one, slopes);
        }
        chain.addDetectionSlopes(slopes[slopes.length - 1]);
        return sum;
    }

    /** The probability that a site was occupied in each season, given all its visits. */
    double[] smoothed(double[][] predictors, int site) {
        Chain chain = new Chain(predictors);
        chain.forward(sites.ofSite(site));
        chain.backward(sites.ofSite(site), slopesLike(predictors));
        return chain.occupied.clone();
    }

    /**
     * Of all sites: their mean probability of having been occupied in each season, given their visits, and then, for as many seasons, the
     * variance that this leaves to the share of them that were.
     */
    double[] share(double[][] predictors) {
        double[] share = new double[2 * seasons];
        double all = sites.classes().stream().mapToInt(SiteClass::sites).sum();
        Chain chain = new Chain(predictors);
        double[][] unused = slopesLike(predictors);
        for (SiteClass one : sites.classes()) {
            chain.forward(one);
            chain.backward(one, unused);
            for (int season = 0; season < seasons; season++) {
                double occupied = chain.occupied[season];
                share[season] += one.sites() * occupied / all;
                share[seasons + season] += one.sites() * Math.max(0, occupied * (1 - occupied)) / (all * all);
            }
        }
        return share;
    }

    private static double[][] slopesLike(double[][] predictors) {
        double[][] slopes = new double[predictors.length][];
        for (int part = 0; part < slopes.length; part++) {
            slopes[part] = new double[predictors[part].length];
        }
        return slopes;
    }

    /** A probability by pattern, its complement without loss of digits, and the logarithms of both. */
    private static final class Share {
        private final double[] yes;
        private final double[] no;
        private final double[] logYes;
        private final double[] logNo;

        Share(double[] predictors) {
            int n = predictors.length;
            yes = new double[n];
            no = new double[n];
            logYes = new double[n];
            logNo = new double[n];
            for (int i = 0; i < n; i++) {
                double odds = Math.exp(-Math.abs(predictors[i]));
                double logBoth = Math.log1p(odds);
                boolean likely = predictors[i] >= 0;
                double larger = 1 / (1 + odds);
                double smaller = odds / (1 + odds);
                yes[i] = likely ? larger : smaller;
                no[i] = likely ? smaller : larger;
                logYes[i] = Math.min(0, predictors[i]) - logBoth;
                logNo[i] = Math.min(0, -predictors[i]) - logBoth;
            }
        }
    }

    /** The recursions at some parameters, for one class of sites after another. */
    private final class Chain {
        private final Share occupancy;
        private final Share colonisation;
        private final Share extinction;
        private final Share detection;
        /** By cell: what part of the logarithm all states share, and the probability of the results in either state. */
        private final double[] shared;

        private final double[] ifOccupied;
        private final double[] ifEmpty;
        private final double[] occupiedByCell;

        private final double[] forward = new double[seasons];
        private final double[] scale = new double[seasons];
        private final double[] occupied = new double[seasons];

        Chain(double[][] predictors) {
            occupancy = new Share(predictors[0]);
            detection = new Share(predictors[predictors.length - 1]);
            colonisation = seasons > 1 ? new Share(predictors[1]) : detection;
            extinction = seasons > 1 ? new Share(predictors[2]) : detection;
            List<Cell> cells = sites.cells();
            shared = new double[cells.size()];
            ifOccupied = new double[cells.size()];
            ifEmpty = new double[cells.size()];
            occupiedByCell = new double[cells.size()];
            for (int i = 0; i < shared.length; i++) {
                double log = cells.get(i).logGivenOccupied(detection.logYes, detection.logNo);
                boolean seen = cells.get(i).anyDetected();
                shared[i] = seen ? log : 0;
                ifOccupied[i] = seen ? 1 : Math.exp(log);
                ifEmpty[i] = seen ? 0 : 1;
            }
        }

        /** The log-likelihood of one site of a class. */
        double forward(SiteClass site) {
            double sum = 0;
            double priorOccupied = occupancy.yes[site.occupancy()];
            double priorEmpty = occupancy.no[site.occupancy()];
            for (int season = 0; season < seasons; season++) {
                if (season > 0) {
                    double before = forward[season - 1];
                    int colonised = site.colonisation(season - 1);
                    int lost = site.extinction(season - 1);
                    priorOccupied = before * extinction.no[lost] + (1 - before) * colonisation.yes[colonised];
                    priorEmpty = before * extinction.yes[lost] + (1 - before) * colonisation.no[colonised];
                }
                int cell = site.cell(season);
                double here = priorOccupied * ifOccupied[cell];
                scale[season] = here + priorEmpty * ifEmpty[cell];
                forward[season] = here / scale[season];
                sum += Math.log(scale[season]) + shared[cell];
            }
            return sum;
        }

        /** After {@link #forward}: the smoothed states of a site, and the slopes of all sites of its class. */
        void backward(SiteClass site, double[][] slopes) {
            double behindOccupied = 1;
            double behindEmpty = 1;
            int n = site.sites();
            for (int season = seasons - 1; season >= 0; season--) {
                if (season < seasons - 1) {
                    int colonised = site.colonisation(season);
                    int lost = site.extinction(season);
                    int next = site.cell(season + 1);
                    double toOccupied = ifOccupied[next] * behindOccupied / scale[season + 1];
                    double toEmpty = ifEmpty[next] * behindEmpty / scale[season + 1];
                    double wasOccupied = forward[season];
                    double wasEmpty = 1 - wasOccupied;
                    double gained = wasEmpty * colonisation.yes[colonised] * toOccupied;
                    double goneOut = wasOccupied * extinction.yes[lost] * toEmpty;
                    behindOccupied = extinction.no[lost] * toOccupied + extinction.yes[lost] * toEmpty;
                    behindEmpty = colonisation.yes[colonised] * toOccupied + colonisation.no[colonised] * toEmpty;
                    slopes[1][colonised] += n * (gained - colonisation.yes[colonised] * wasEmpty * behindEmpty);
                    slopes[2][lost] += n * (goneOut - extinction.yes[lost] * wasOccupied * behindOccupied);
                }
                occupied[season] = forward[season] * behindOccupied;
                occupiedByCell[site.cell(season)] += n * occupied[season];
            }
            slopes[0][site.occupancy()] += n * (occupied[0] - occupancy.yes[site.occupancy()]);
        }

        /** After all classes. */
        void addDetectionSlopes(double[] slopes) {
            for (int i = 0; i < occupiedByCell.length; i++) {
                sites.cells().get(i).addSlopes(occupiedByCell[i], detection.yes, slopes);
            }
        }
    }
}
