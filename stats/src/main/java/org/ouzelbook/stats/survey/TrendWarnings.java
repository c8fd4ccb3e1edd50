package org.ouzelbook.stats.survey;

import java.time.Year;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.trend.YearlyTrend;
import org.ouzelbook.stats.survey.CountTrend.Counted;
import org.ouzelbook.stats.survey.CountTrend.LeastSquares;
import org.ouzelbook.stats.survey.CountTrend.SeasonTotals;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;

/** Warns of what makes a series of counts less of a series than it looks. */
final class TrendWarnings {
    private final List<Message> warnings = new ArrayList<>();

    private TrendWarnings() {}

    static List<Message> of(
            MapSettings settings,
            Species species,
            SurveyRecords records,
            List<Counted> counts,
            List<SeasonTotals> seasons,
            Answer<YearlyTrend> line,
            Optional<LeastSquares> leastSquares) {
        TrendWarnings warnings = new TrendWarnings();
        warnings.gaps(counts);
        warnings.visits(seasons);
        warnings.waters(seasons);
        warnings.lineVersions(records, species);
        if (!settings.equals(MapSettings.usualFor(species))) {
            warnings.warn("map.warning.otherRules");
        }
        line.found().ifPresent(trend -> leastSquares.ifPresent(other -> warnings.errorModels(trend, other)));
        return warnings.warnings;
    }

    private void warn(String key, Object... facts) {
        warnings.add(Message.of(key, facts));
    }

    private void gaps(List<Counted> counts) {
        for (Counted counted : counts) {
            counted.gap().ifPresent(why -> warn("trend.warning.gap", counted.water(), Year.of(counted.season()), why));
        }
    }

    private void visits(List<SeasonTotals> seasons) {
        List<SeasonTotals> counted = counted(seasons);
        int fewest =
                counted.stream().mapToInt(SeasonTotals::effectiveVisits).min().orElse(0);
        int most =
                counted.stream().mapToInt(SeasonTotals::effectiveVisits).max().orElse(0);
        if (fewest < most) {
            warn("trend.warning.visitsDiffer", fewest, most);
        }
    }

    private void waters(List<SeasonTotals> seasons) {
        List<Year> part = counted(seasons).stream()
                .filter(season -> !season.notCounted().isEmpty())
                .map(season -> Year.of(season.season()))
                .toList();
        if (!part.isEmpty()) {
            warn("trend.warning.partOfTheWater", part);
        }
    }

    private void lineVersions(SurveyRecords records, Species species) {
        Set<Integer> versions = records.sightings().stream()
                .filter(sighting -> sighting.species().equals(species))
                .map(Sighting::place)
                .map(place -> place.lineVersion())
                .collect(Collectors.toSet());
        if (versions.size() > 1) {
            warn("trend.warning.lineVersions", versions.size());
        }
    }

    private void errorModels(YearlyTrend trend, LeastSquares other) {
        Estimate percent = trend.percentPerYear();
        boolean open = percent.lower() <= 0 && percent.upper() >= 0;
        boolean otherOpen = other.lower() <= 0 && other.upper() >= 0;
        if (open != otherOpen) {
            String fallingOrRising =
                    other.upper() < 0 ? "trend.warning.otherModelFalling" : "trend.warning.otherModelRising";
            warn(
                    otherOpen ? "trend.warning.otherModelOpen" : fallingOrRising,
                    other.percentPerYear(),
                    other.lower(),
                    other.upper());
        }
    }

    private static List<SeasonTotals> counted(List<SeasonTotals> seasons) {
        return seasons.stream().filter(season -> season.count().isPresent()).toList();
    }
}
