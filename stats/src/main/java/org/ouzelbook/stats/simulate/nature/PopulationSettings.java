package org.ouzelbook.stats.simulate.nature;

/**
 * How a species takes up its sites and how much water a pair holds.
 *
 * @param occupiedAtFirst probability that a common site is held in the first season
 * @param staying probability that a held site is held again
 * @param settling probability that a free site is settled
 * @param closestMetres no pair settles nearer to another's site than this, in metres
 * @param medianLengthMetres median length of water that a pair wants, in metres
 * @param lengthLogSd standard deviation of the logarithm of that length, between sites
 * @param yearlyLogSd the same from season to season at one site
 * @param longestMetres no pair wants more than this, in metres
 * @param grownSurvival yearly survival of grown birds
 * @param homeRecruits probability that a new holder was hatched on these waters, while such birds are free
 */
public record PopulationSettings(
        double occupiedAtFirst,
        double staying,
        double settling,
        double closestMetres,
        double medianLengthMetres,
        double lengthLogSd,
        double yearlyLogSd,
        double longestMetres,
        double grownSurvival,
        double homeRecruits) {

    /**
     * {@return settings under which dippers hold about one territory a km of good water}
     *
     * <p>Survival: Lebreton et al. (1992), Ecol. Monogr. 62:67–118. Length: a density of 1.46 pairs per km (Fracasso, Tasinazzo
     * and Faccin 2000, Avocetta 24) would make it 685 m without vacant water; less crowded water makes it longer. The
     * others are assumptions.
     */
    public static PopulationSettings dipper() {
        return new PopulationSettings(0.7, 0.85, 0.4, 350, 900, 0.25, 0.12, 1600, 0.56, 0.35);
    }
}
