package org.ouzelbook.stats.estimator.likelihood;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;

/** The parts of a model, whose coefficients stand one after another in one vector. */
public final class Parts {
    private final List<Part> list;
    private final int[] offsets;

    /**
     * One part.
     *
     * @param name what it is called
     * @param design its linear predictor
     */
    public record Part(String name, Design design) {}

    private Parts(List<Part> list) {
        this.list = list;
        this.offsets = new int[list.size() + 1];
        for (int i = 0; i < list.size(); i++) {
            offsets[i + 1] = offsets[i] + list.get(i).design().terms().size();
        }
    }

    /** {@return a model of these parts} */
    public static Parts of(Part... parts) {
        return new Parts(List.of(parts));
    }

    /** {@return the parts in order} */
    public List<Part> list() {
        return list;
    }

    /** {@return how many coefficients there are} */
    public int size() {
        return offsets[list.size()];
    }

    /**
     * {@return where the coefficients of a part begin}
     *
     * @param part from 0
     */
    public int offset(int part) {
        return offsets[part];
    }

    int partOf(int coefficient) {
        int place = Arrays.binarySearch(offsets, coefficient);
        return place >= 0 ? place : -place - 2;
    }

    String term(int coefficient) {
        int part = partOf(coefficient);
        return list.get(part).design().terms().get(coefficient - offsets[part]);
    }

    double[][] predictors(double[] point) {
        double[][] predictors = new double[list.size()][];
        for (int i = 0; i < predictors.length; i++) {
            predictors[i] = list.get(i).design().predictors(point, offsets[i]);
        }
        return predictors;
    }

    /** Zeros, one a pattern of each part. */
    double[][] zeros() {
        return list.stream().map(part -> new double[part.design().patterns()]).toArray(double[][]::new);
    }

    /** How the predictor of a pattern follows from the coefficients. */
    double[] combination(int part, int pattern) {
        double[] combination = new double[size()];
        list.get(part).design().addRow(pattern, combination, offsets[part]);
        return combination;
    }

    double[] pullBack(double[][] slopes) {
        double[] gradient = new double[size()];
        for (int i = 0; i < slopes.length; i++) {
            list.get(i).design().pullBack(slopes[i], gradient, offsets[i]);
        }
        return gradient;
    }

    LogLikelihood compose(PredictorLikelihood likelihood) {
        return (point, gradient) -> {
            double[][] slopes = zeros();
            double value = likelihood.at(predictors(point), slopes);
            System.arraycopy(pullBack(slopes), 0, gradient, 0, gradient.length);
            return value;
        };
    }

    /** The expected information of the coefficients. */
    RealMatrix information(double[] point, ExpectedInformation expected) {
        double[][] information = new double[size()][size()];
        expected.at(predictors(point), (part, pattern, otherPart, otherPattern, weight) -> {
            Design one = list.get(part).design();
            Design other = list.get(otherPart).design();
            for (int i = 0; i < one.terms().size(); i++) {
                for (int j = 0; j < other.terms().size(); j++) {
                    information[offsets[part] + i][offsets[otherPart] + j] +=
                            one.value(pattern, i) * weight * other.value(otherPattern, j);
                }
            }
        });
        return MatrixUtils.createRealMatrix(information);
    }

    /** Takes coefficients of centred and scaled columns to those of the columns as given. */
    RealMatrix toGiven() {
        double[][] toGiven = new double[size()][size()];
        for (int i = 0; i < list.size(); i++) {
            list.get(i).design().fillToGiven(toGiven, offsets[i]);
        }
        return MatrixUtils.createRealMatrix(toGiven);
    }

    /** Where climbs begin: all 0, and the intercepts of the parts in turn high and low. */
    List<double[]> starts() {
        List<double[]> starts = new ArrayList<>();
        starts.add(new double[size()]);
        for (int turn = 0; turn <= list.size(); turn++) {
            double[] start = new double[size()];
            for (int i = 0; i < list.size(); i++) {
                start[offsets[i]] = i == turn ? 2 : -2;
            }
            starts.add(start);
        }
        return starts;
    }
}
