package org.ouzelbook.ui.app.estimate;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.trend.BentTrend;
import org.ouzelbook.stats.estimator.trend.TrendFit;
import org.ouzelbook.stats.estimator.trend.TrendSettings;
import org.ouzelbook.tracker.domain.Message;

/** The line with changes of slope through a table with the columns {@code site}, {@code year}, {@code count}, {@code km}. */
public final class EstimateBends {
    private EstimateBends() {}

    /**
     * A line on the log scale that changes its slope.
     *
     * @param model how it was computed
     * @param source where that was published
     * @param n counts at sites that ever had birds
     * @param logLikelihood with the log y! terms
     * @param aic Akaike's criterion
     * @param aicc the same for small samples; empty with too few counts
     * @param parameters the slope of each piece, each change of slope, the dispersion
     * @param pieces the pieces in percent a year
     * @param changes the changes of slope
     * @param totals all sites together
     * @param dispersion Pearson's X²/df; empty without degrees of freedom
     * @param scale what variances were multiplied by
     * @param degreesOfFreedom counts less parameters
     * @param emptySitesCount whether sites that never had any birds add to the degrees of freedom
     * @param sites sites with birds
     * @param emptySites sites that never had any
     * @param level level of all limits
     * @param warnings what else to know
     */
    public record Bends(
            Message model,
            String source,
            long n,
            double logLikelihood,
            double aic,
            OptionalDouble aicc,
            List<Parameter> parameters,
            List<Piece> pieces,
            List<Change> changes,
            List<TrendFigures.Total> totals,
            OptionalDouble dispersion,
            double scale,
            double degreesOfFreedom,
            boolean emptySitesCount,
            int sites,
            List<String> emptySites,
            double level,
            List<Message> warnings)
            implements TableAnswer {}

    /**
     * A straight piece.
     *
     * @param from its first season
     * @param to its last season
     * @param perYear change a year
     */
    public record Piece(int from, int to, TrendFigures.Percent perYear) {}

    /**
     * A change of slope.
     *
     * @param season where it is
     * @param p two-sided, of no change
     */
    public record Change(int season, double p) {}

    /**
     * {@return the bent line through a table of counts, or why there is none}
     *
     * @param file the table
     * @param changes seasons at which the slope changes; one or more
     * @param settings how to judge
     * @throws BadTable if the table must be mended first
     */
    public static TableAnswer of(Path file, List<Integer> changes, TrendSettings settings) {
        CountTable table = CountTable.read(file);
        Answer<BentTrend> answer = BentTrend.of(table.counts(), changes, settings);
        if (answer instanceof Answer.NotEstimable<BentTrend> none) {
            return TrendFigures.refused(table, none.because());
        }
        BentTrend bent = answer.found().orElseThrow();
        TrendFit fit = bent.fit();
        return new Bends(
                MethodName.of(fit.method()),
                fit.method().source(),
                fit.counts(),
                fit.logLikelihood(),
                fit.aic(),
                fit.aicc(),
                parameters(bent),
                bent.pieces().stream()
                        .map(piece ->
                                new Piece(piece.from(), piece.to(), TrendFigures.Percent.of(piece.percentPerYear())))
                        .toList(),
                bent.changes().stream()
                        .map(change -> new Change(change.season(), change.p()))
                        .toList(),
                bent.totals().stream().map(TrendFigures.Total::of).toList(),
                fit.dispersion(),
                fit.scale(),
                fit.degreesOfFreedom(),
                settings.emptySitesCount(),
                fit.sites(),
                fit.emptySites(),
                settings.level(),
                TrendFigures.warnings(table, bent.cautions()));
    }

    private static List<Parameter> parameters(BentTrend bent) {
        List<Parameter> parameters = new ArrayList<>();
        bent.pieces()
                .forEach(piece -> parameters.add(Parameter.of(
                        "slope", "year=" + piece.from() + "-" + piece.to(), Parameter.LOG, piece.slope())));
        bent.changes()
                .forEach(change -> parameters.add(
                        Parameter.of("change", "year=" + change.season(), Parameter.LOG, change.difference())));
        parameters.addAll(TrendFigures.spread(bent.fit()));
        return parameters;
    }
}
