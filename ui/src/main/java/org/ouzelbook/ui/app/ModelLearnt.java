package org.ouzelbook.ui.app;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.ouzelbook.stats.estimator.segmentation.Nature;
import org.ouzelbook.stats.survey.TerritoryModel;

/**
 * What the model learnt from all seasons and rivers of a book, in a surveyor's terms.
 *
 * @param riverSeasons rivers that were walked, season by season
 * @param registrations what was met on them
 * @param findingChance chance that one visit finds a pair that is there
 * @param lengthKm length of a territory that is longer than as many as it is shorter than
 * @param straysPerTenKm birds without a territory that one visit meets on ten km
 */
public record ModelLearnt(
        int riverSeasons, int registrations, Value findingChance, Value lengthKm, Value straysPerTenKm) {

    /**
     * A number and its limits.
     *
     * @param estimate the number
     * @param lower lower limit
     * @param upper upper limit
     */
    public record Value(double estimate, double lower, double upper) {}

    static ModelLearnt of(TerritoryModel model, double level) {
        double z = new NormalDistribution().inverseCumulativeProbability((1 + level) / 2);
        Nature mode = model.nature().mode();
        Nature low = model.nature().limit(-z);
        Nature high = model.nature().limit(z);
        return new ModelLearnt(
                model.learnt().riverSeasons(),
                model.learnt().registrations(),
                new Value(mode.detection(), low.detection(), high.detection()),
                new Value(mode.medianLength() / 1000, low.medianLength() / 1000, high.medianLength() / 1000),
                new Value(mode.strays() * 10, low.strays() * 10, high.strays() * 10));
    }
}
