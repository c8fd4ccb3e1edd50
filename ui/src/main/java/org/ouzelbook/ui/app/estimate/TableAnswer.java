package org.ouzelbook.ui.app.estimate;

/** What an estimator says of a plain table; its parts have the names of the JSON that scripts read. */
public sealed interface TableAnswer
        permits EstimateRates.Rates,
                EstimateProportions.Proportions,
                EstimateRankTrend.Ranked,
                EstimateOccupancy.Occupied,
                EstimateLine.Line,
                EstimateSeasons.Seasons,
                EstimateNests.Nests,
                EstimateSurvival.Survival,
                EstimateCurve.Curve,
                EstimateBends.Bends,
                NoAnswer {}
