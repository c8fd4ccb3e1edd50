package org.ouzelbook.ui.report;

import java.time.Year;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.stats.survey.CountTrend.SeasonTotals;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.exchange.export.PublicGrid;
import org.ouzelbook.ui.app.SeasonFindings;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.report.ToldPicture.Told;
import org.ouzelbook.ui.strip.CountFigure;
import org.ouzelbook.ui.strip.HitArea;
import org.ouzelbook.ui.strip.StripDrawing;
import org.ouzelbook.ui.strip.Subject;

/** What each place on the report’s drawings tells: its numbers, and what they rest on; never a record or a nest. */
final class ToldPlaces {
    private final SeasonFindings findings;

    ToldPlaces(SeasonFindings findings) {
        this.findings = findings;
    }

    /** {@return what the strip of all seasons tells, place by place} */
    List<Told> strip(StripDrawing drawing) {
        List<Told> told = new ArrayList<>();
        for (HitArea area : drawing.areas()) {
            words(area).ifPresent(words -> told.add(new Told(area.area(), words)));
        }
        return told;
    }

    private Optional<String> words(HitArea area) {
        if (area.subject() instanceof Subject.OfTerritory one) {
            return findings.seasons().stream()
                    .filter(map -> map.season() == one.season())
                    .flatMap(map -> map.rivers().stream())
                    .filter(river -> river.river().id().equals(one.riverId()))
                    .flatMap(river -> river.territories().stream()
                            .filter(territory -> territory.id().equals(one.id()))
                            .map(territory -> territory(one.season(), river, territory)))
                    .findFirst();
        }
        return Optional.of(area.name());
    }

    private String territory(int season, TerritoryMap.RiverMap river, Territory territory) {
        Stretch told =
                new PublicGrid(findings.records().rivers()).cells(river.river().id(), territory.stretch());
        return Texts.of(
                "report.told.territory",
                river.river().name(),
                Year.of(season),
                territory.id(),
                told,
                standing(territory),
                territory.registrations().size() + territory.nests().size(),
                river.effectiveVisits());
    }

    private static String standing(Territory territory) {
        if (territory.standing() != Territory.Standing.COUNTED) {
            return Texts.of("report.told." + (territory.accepted() ? "edge" : "notAccepted"));
        }
        return territory
                .evidence()
                .flatMap(evidence -> evidence.code().evidenceClass())
                .map(evidence -> Texts.of("report.told.evidence", evidence))
                .orElseGet(() -> Texts.of("report.told.noEvidence"));
    }

    /** {@return what the figure of the counts tells, season by season} */
    List<Told> counts(CountFigure figure) {
        return figure.columns().stream()
                .map(column -> new Told(column.area(), season(column.season())))
                .toList();
    }

    private String season(int season) {
        SeasonTotals totals = findings.trend().seasons().stream()
                .filter(one -> one.season() == season)
                .findFirst()
                .orElseThrow();
        if (totals.count().isEmpty()) {
            return Texts.of("report.told.noCount", Year.of(season));
        }
        int min = 0;
        int max = 0;
        int visits = 0;
        for (var counted : findings.trend().counts()) {
            if (counted.season() == season && counted.gap().isEmpty()) {
                min += counted.min();
                max += counted.max();
                visits += counted.effectiveVisits();
            }
        }
        String words = Texts.of(
                "report.told.count",
                Year.of(season),
                totals.count().getAsLong(),
                min,
                max,
                totals.surveyedKm(),
                visits,
                min < max ? 1 : 0);
        String byModel = totals.model()
                .map(model -> " "
                        + Texts.of(
                                "report.told.model",
                                Math.round(model.expected()),
                                model.lower(),
                                model.upper(),
                                model.lower() < model.upper() ? 1 : 0))
                .orElse("");
        return totals.notCounted().isEmpty()
                ? words + byModel
                : words + byModel + " " + Texts.of("report.told.notAll", totals.notCounted());
    }
}
