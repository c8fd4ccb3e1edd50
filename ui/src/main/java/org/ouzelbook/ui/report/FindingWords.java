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
    private final List<RiverMap> counted;
    private final double level;

    FindingWords(SeasonFindings findings) {
        this.findings = findings;
        this.map = findings.map();
        this.counted = map.rivers().stream()
                .filter(river -> river.effectiveVisits() >= CountTrend.VISITS_TO_COUNT)
                .toList();
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
        return Texts.of("report.walked", visits, km(map.rivers()));
    }

    String count() {
        if (counted.isEmpty()) {
            return Texts.of("report.noCount", map.species(), Year.of(map.season()), CountTrend.VISITS_TO_COUNT);
        }
        int likely = counted.stream().mapToInt(river -> river.count().likely()).sum();
        int min = counted.stream().mapToInt(river -> river.count().min()).sum();
        int max = counted.stream().mapToInt(river -> river.count().max()).sum();
        String key = min == max ? "report.count" : "report.countWithRange";
        return Texts.of(
                key,
                likely,
                map.species(),
                km(counted),
                Year.of(map.season()),
                km(counted) > 0 ? likely / km(counted) : 0,
                min,
                max);
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
        long likely =
                counted.stream().mapToLong(river -> river.count().likely()).sum();
        return GarwoodInterval.of(likely, km(counted), level)
                .found()
                .map(perKm ->
                        Texts.of("report.sure.density", perKm.value(), perKm.lower(), perKm.upper(), perKm.level()));
    }

    private static double km(List<RiverMap> rivers) {
        return rivers.stream().mapToDouble(RiverMap::surveyedKm).sum();
    }
}
