package org.ouzelbook.ui.app.estimate;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.trend.SeasonEffects;
import org.ouzelbook.stats.estimator.trend.TrendFit;
import org.ouzelbook.stats.estimator.trend.TrendSettings;
import org.ouzelbook.stats.survey.CautionMessage;
import org.ouzelbook.tracker.domain.Message;

/** An effect for each season, and totals with missing counts filled, of a table as {@link EstimateLine} reads it. */
public final class EstimateSeasons {
    private EstimateSeasons() {}

    /**
     * An effect for each season.
     *
     * @param model how it was computed
     * @param source where that was published
     * @param n counts at sites that ever had birds, in seasons with birds
     * @param logLikelihood of Poisson counts, with the log y! terms
     * @param aic Akaike's criterion
     * @param aicc the same for small samples; empty with too few counts
     * @param parameters each season against the first, and the dispersion; effects of sites are not listed
     * @param totals all sites together, missing counts filled
     * @param dispersion Pearson's X²/df; empty without degrees of freedom
     * @param scale what variances were multiplied by
     * @param degreesOfFreedom counts less parameters
     * @param emptySitesCount whether sites that never had any birds add to the degrees of freedom
     * @param negativeBinomial share of the squared mean that the variance has beyond the mean; empty unless estimated
     * @param serialCorrelation correlation of counts a season apart; empty unless estimated
     * @param robust whether limits hold whatever ties counts of one site together
     * @param deviance twice the log-likelihood below that of a perfect fit
     * @param sites sites with birds
     * @param emptySites sites that never had any, which take no part
     * @param level level of all limits
     * @param warnings what else to know
     */
    public record Seasons(
            Message model,
            String source,
            long n,
            double logLikelihood,
            double aic,
            OptionalDouble aicc,
            List<Parameter> parameters,
            List<TrendFigures.Total> totals,
            OptionalDouble dispersion,
            double scale,
            double degreesOfFreedom,
            boolean emptySitesCount,
            OptionalDouble negativeBinomial,
            OptionalDouble serialCorrelation,
            boolean robust,
            double deviance,
            int sites,
            List<String> emptySites,
            double level,
            List<Message> warnings)
            implements TableAnswer {}

    /**
     * {@return the season effects and filled totals of a table of counts, or why there are none}
     *
     * @param file the table
     * @param settings how to judge
     * @throws BadTable if the table must be mended first
     */
    public static TableAnswer of(Path file, TrendSettings settings) {
        CountTable table = CountTable.read(file);
        Answer<SeasonEffects> answer = SeasonEffects.of(table.counts(), settings);
        if (answer instanceof Answer.NotEstimable<SeasonEffects> none) {
            return TrendFigures.refused(table, none.because());
        }
        SeasonEffects effects = answer.found().orElseThrow();
        TrendFit fit = effects.fit();
        return new Seasons(
                MethodName.of(fit.method()),
                fit.method().source(),
                fit.counts(),
                fit.logLikelihood(),
                fit.aic(),
                fit.aicc(),
                parameters(effects),
                effects.totals().stream().map(TrendFigures.Total::of).toList(),
                fit.dispersion(),
                fit.scale(),
                fit.degreesOfFreedom(),
                settings.emptySitesCount(),
                fit.negativeBinomial(),
                fit.serialCorrelation(),
                fit.robust(),
                fit.deviance(),
                fit.sites(),
                fit.emptySites(),
                settings.level(),
                TrendFigures.warnings(table, effects.cautions()));
    }

    private static List<Parameter> parameters(SeasonEffects effects) {
        List<Parameter> parameters = new ArrayList<>();
        int first = effects.seasons().get(0);
        effects.totals().forEach(total -> {
            String term = "year=" + total.season();
            if (total.season() != first) {
                parameters.add(effects.logRatio(first, total.season())
                        .found()
                        .map(ratio -> Parameter.of("season", term, Parameter.LOG, ratio))
                        .orElseGet(() -> Parameter.without(
                                "season",
                                term,
                                Parameter.LOG,
                                CautionMessage.of(Caution.of(Reason.SEASON_WITHOUT_EFFECT, total.season())))));
            }
        });
        parameters.addAll(TrendFigures.spread(effects.fit()));
        return parameters;
    }
}
