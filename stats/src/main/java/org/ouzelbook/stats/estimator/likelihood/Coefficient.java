package org.ouzelbook.stats.estimator.likelihood;

import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;

/**
 * A coefficient of a fitted model, on the scale of its columns as given.
 *
 * @param part the part it belongs to
 * @param term its term
 * @param estimate its value; infinite with one finite limit at the boundary, not estimable where the data do not tell it from
 *     others
 */
public record Coefficient(String part, String term, Answer<Estimate> estimate) {}
