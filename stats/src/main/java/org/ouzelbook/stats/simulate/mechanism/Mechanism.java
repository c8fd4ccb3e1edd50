package org.ouzelbook.stats.simulate.mechanism;

import org.ouzelbook.stats.simulate.Draws;

/** A way in which pairs share a river, use their ground and are found. One mechanism makes all seasons of a book. */
public sealed interface Mechanism permits ModelledPairs, NestCentredPairs, OverlappingRanges, PatchyPairs {
    /**
     * {@return one season}
     *
     * @param plan the river and how it is walked
     * @param draws chance; the same draws make the same season
     */
    RiverSeason season(FieldPlan plan, Draws draws);

    /** The mechanisms, each with its habits drawn anew for a book. */
    enum Kind {
        /** What the model itself supposes. */
        MODELLED,
        /** Grounds with free water between, a nest near the middle, chances that change with pair, day and date. */
        NEST_CENTRED,
        /** Ranges that overlap their neighbours'; chases across. */
        OVERLAPPING,
        /** Crowded water and long empty water. */
        CLUSTERED,
        /** A pair here and there. */
        SPARSE;

        /**
         * {@return a mechanism of this kind}
         *
         * @param medianMetres median length of a ground
         * @param draws chance
         */
        public Mechanism drawn(double medianMetres, Draws draws) {
            return switch (this) {
                case MODELLED -> ModelledPairs.drawn(medianMetres, draws);
                case NEST_CENTRED -> NestCentredPairs.drawn(medianMetres, draws);
                case OVERLAPPING -> OverlappingRanges.drawn(medianMetres, draws);
                case CLUSTERED -> PatchyPairs.clustered(medianMetres, draws);
                case SPARSE -> PatchyPairs.sparse(medianMetres, draws);
            };
        }
    }
}
