package org.ouzelbook.ui.report;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.survey.SeasonDensity;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.BreedingCode.EvidenceClass;
import org.ouzelbook.ui.app.SeasonFindings;
import org.ouzelbook.ui.app.Texts;

/** The table of the seasons: counts, km, density, proof of breeding, visits; without a column that no season fills. */
final class SeasonTable {
    /** Season, water and visits, which are told of a season that was not counted, too. */
    private static final int BESIDE = 3;

    private final SeasonFindings findings;
    private final boolean modelled;
    private final boolean edges;
    private final List<String> columns;

    SeasonTable(SeasonFindings findings) {
        this.findings = findings;
        List<SeasonDensity.Row> rows = findings.density().rows();
        this.modelled = rows.stream().anyMatch(row -> row.model().isPresent());
        this.edges = rows.stream().anyMatch(row -> row.edge() > 0);
        this.columns = Stream.of(
                        "season",
                        "water",
                        "territories",
                        "range",
                        "byModel",
                        "edge",
                        "km",
                        "perKm",
                        "interval",
                        "confirmed",
                        "visits")
                .filter(column -> modelled || !column.equals("byModel"))
                .filter(column -> edges || !column.equals("edge"))
                .toList();
    }

    void write(Html html) {
        html.open("section").element("h2", Texts.of("report.table"));
        html.open("div", "class", "scroll").open("table");
        html.element("caption", Texts.of(modelled ? "report.table.caption" : "report.table.captionByRule"));
        html.open("thead").open("tr");
        for (String column : columns) {
            html.element(
                    "th",
                    Texts.of("report.table." + column),
                    "scope",
                    "col",
                    "class",
                    column.equals("water") ? "words" : "number");
        }
        html.close("tr").close("thead").open("tbody");
        for (SeasonDensity.Row row : findings.density().rows()) {
            row(html, row);
        }
        html.close("tbody").close("table").close("div").close("section");
    }

    private void row(Html html, SeasonDensity.Row row) {
        Optional<TerritoryMap.RiverMap> map = findings.seasons().stream()
                .filter(season -> season.season() == row.season())
                .flatMap(season -> season.rivers().stream())
                .filter(river -> river.river().equals(row.river()))
                .findFirst();
        int visits = map.map(TerritoryMap.RiverMap::effectiveVisits).orElse(0);
        String water = row.reach()
                .map(reach -> row.river().name() + ", " + reach)
                .orElse(row.river().name());
        html.open("tr").element("td", Integer.toString(row.season())).element("td", water, "class", "words");
        if (map.isEmpty() || !map.get().isCounted()) {
            html.element(
                    "td",
                    Texts.of("report.table.notCounted"),
                    "colspan",
                    Integer.toString(columns.size() - BESIDE),
                    "class",
                    "words");
        } else {
            html.element("td", Integer.toString(row.territories()));
            html.element("td", row.min() == row.max() ? "" : row.min() + "–" + row.max());
            if (modelled) {
                html.element(
                        "td",
                        row.model()
                                .map(model -> model.lower() == model.upper()
                                        ? Texts.of("report.table.byModel.one", model.expected())
                                        : Texts.of(
                                                "report.table.byModel.count",
                                                model.expected(),
                                                model.lower(),
                                                model.upper()))
                                .orElse(""));
            }
            if (edges) {
                html.element("td", row.edge() == 0 ? "" : Integer.toString(row.edge()));
            }
            html.element("td", number("%.1f", row.surveyedKm()));
            html.element(
                    "td",
                    row.perKm()
                            .found()
                            .map(rate -> number("%.2f", rate.value()))
                            .orElse(""));
            html.element("td", row.perKm().found().map(SeasonTable::limits).orElse(""));
            html.element("td", map.map(SeasonTable::confirmed).orElse(""));
        }
        html.element("td", Integer.toString(visits)).close("tr");
    }

    private static String limits(Estimate rate) {
        return number("%.2f", rate.lower()) + "–" + number("%.2f", rate.upper());
    }

    private static String confirmed(TerritoryMap.RiverMap map) {
        return Long.toString(map.territories().stream()
                .filter(territory -> territory.standing() == Territory.Standing.COUNTED)
                .flatMap(territory -> territory.evidence().stream())
                .map(Territory.Evidence::code)
                .flatMap(code -> code.evidenceClass().stream())
                .filter(EvidenceClass.CONFIRMED::equals)
                .count());
    }

    private static String number(String format, double value) {
        return String.format(Locale.ROOT, format, value);
    }
}
