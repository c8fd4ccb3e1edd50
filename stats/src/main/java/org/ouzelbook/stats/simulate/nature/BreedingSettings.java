package org.ouzelbook.stats.simulate.nature;

import java.time.MonthDay;

/**
 * When and how well a species breeds.
 *
 * @param firstEgg mean date of the first egg at the river's mouth
 * @param firstEggSd its standard deviation between pairs, in days
 * @param daysLaterPerKm how much later a pair lays for each km upstream, in days
 * @param clutch mean clutch
 * @param clutchSd its standard deviation
 * @param incubationDays from the last egg to hatching, in days
 * @param nestlingDays from hatching to leaving the nest, in days; 0 where the young leave at once
 * @param dependentDays how long the young are then led or fed, in days
 * @param dailyLoss probability that a nest is lost on one day
 * @param againAfterLoss probability of a new attempt after a loss
 * @param secondBrood probability of a second brood after a success
 * @param lastStart no attempt starts after this date
 */
public record BreedingSettings(
        MonthDay firstEgg,
        double firstEggSd,
        double daysLaterPerKm,
        double clutch,
        double clutchSd,
        int incubationDays,
        int nestlingDays,
        int dependentDays,
        double dailyLoss,
        double againAfterLoss,
        double secondBrood,
        MonthDay lastStart) {

    /**
     * {@return settings for dippers}
     *
     * <p>Between the published values: clutch 5.11 and success 81 % in the Italian Prealps (Fracasso, Tasinazzo and Faccin 2000,
     * Avocetta 24), 4.3 and 72 % in Gipuzkoa, where second clutches followed in 18.5 % of boxes and laying began in late
     * March on average; in Italy 46 % of successful pairs laid again. Incubation 15–18 days, nestlings 20–24 days: general
     * accounts. A daily loss of 0.7 % is a success of 75 % over 42 days. The others are assumptions.
     */
    public static BreedingSettings dipper() {
        return new BreedingSettings(
                MonthDay.of(3, 18), 7, 0.8, 4.7, 0.6, 16, 22, 14, 0.007, 0.5, 0.35, MonthDay.of(5, 25));
    }
}
