package org.ouzelbook.ui.report;

import java.time.Year;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.interval.GarwoodInterval;
import org.ouzelbook.stats.survey.CountTrend;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.stats.survey.TerritoryMap.RiverMap;
import org.ouzelbook.ui.app.SeasonFindings;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.TrendWords;

/** The findings of a season in sentences: how many, which way, and how sure that is. */
final class FindingWords {
    private final SeasonFindings findings;
    private final TerritoryMap map;
    private final double level;

    FindingWords(SeasonFindings findings) {
        this.findings = findings;
        this.map = findings.map();
        this.level = findings.density().rows().stream()
                .flatMap(row -> row.perKm().found().stream())
                .mapToDouble(Estimate::level)
                .findFirst()
                .orElse(0.95);
    }

    String title() {
        List<String> waters =
                map.rivers().stream().map(river -> river.river().name()).toList();
        return TrendWords.sentenceCase(
                Texts.of("report.title", map.species(), enumerated(waters), Year.of(map.season())));
    }

    private static String enumerated(List<String> names) {
        int last = names.size() - 1;
        return last < 1
                ? String.join("", names)
                : Texts.of("report.and", String.join(", ", names.subList(0, last)), names.get(last));
    }

    String walked() {
        int visits = map.rivers().stream().mapToInt(RiverMap::visits).sum();
        return Texts.of(
                "report.walked",
                visits,
                map.rivers().stream().mapToDouble(RiverMap::surveyedKm).sum());
    }

    String count() {
        return map.total()
                .map(this::count)
                .orElseGet(() ->
                        Texts.of("report.noCount", map.species(), Year.of(map.season()), CountTrend.VISITS_TO_COUNT));
    }

    private String count(TerritoryMap.Total total) {
        return Texts.of(
                total.min() == total.max() ? "report.count" : "report.countWithRange",
                total.likely(),
                map.species(),
                total.surveyedKm(),
                Year.of(map.season()),
                total.perKm(),
                total.min(),
                total.max());
    }

    String direction() {
        return TrendWords.verdict(findings.trend());
    }

    /** {@return what the count and the trend rest on, and how far they may be off} */
    List<String> sureness() {
        List<String> lines = new ArrayList<>();
        for (RiverMap river : map.rivers()) {
            lines.add(visits(river));
            river.count().readings().stream()
                    .filter(reading -> reading.count() != river.count().likely())
                    .forEach(reading -> lines.add(Texts.of(
                            "report.sure.reading",
                            river.river().name(),
                            Texts.of(reading.rule()),
                            reading.count(),
                            river.count().likely())));
        }
        density().ifPresent(lines::add);
        lines.addAll(TrendWords.sureness(findings.trend()));
        return lines;
    }

    private String visits(RiverMap river) {
        return river.visitEfficiency()
                .map(share -> Texts.of("report.sure.visits", river.river().name(), river.effectiveVisits(), share))
                .orElseGet(
                        () -> Texts.of("report.sure.visitsOnly", river.river().name(), river.effectiveVisits()));
    }

    private Optional<String> density() {
        return map.total()
                .flatMap(total -> GarwoodInterval.of(total.likely(), total.surveyedKm(), level)
                        .found())
                .map(perKm ->
                        Texts.of("report.sure.density", perKm.value(), perKm.lower(), perKm.upper(), perKm.level()));
    }
}
