package org.ouzelbook.ui.report;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.stats.survey.Territory.Standing;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.stats.survey.TerritoryMap.RiverMap;
import org.ouzelbook.tracker.domain.BreedingCode.EvidenceClass;
import org.ouzelbook.ui.app.SeasonFindings;
import org.ouzelbook.ui.app.Texts;

/** What would tell more next season, five things at most, each with the time by which it is needed. */
final class NextSteps {
    private static final int MOST = 5;
    private static final int VISITS = 4;

    /** From then on adults carry food to young that can be seen from afar. Common practice, no source. */
    private static final MonthDay FOOD = MonthDay.of(4, 20);

    private final SeasonFindings findings;
    private final List<Step> steps = new ArrayList<>();

    NextSteps(SeasonFindings findings) {
        this.findings = findings;
    }

    private record Step(String what, String when) {}

    void write(Html html) {
        collect();
        html.open("section", "class", "steps").element("h2", Texts.of("report.steps"));
        html.open("table").open("thead").open("tr");
        html.element("th", Texts.of("report.steps.what"), "scope", "col", "class", "words");
        html.element("th", Texts.of("report.steps.when"), "scope", "col", "class", "words");
        html.element("th", Texts.of("report.steps.who"), "scope", "col", "class", "words");
        html.close("tr").close("thead").open("tbody");
        steps.stream()
                .limit(MOST)
                .forEach(step -> html.open("tr")
                        .element("td", step.what(), "class", "words")
                        .element("td", step.when(), "class", "words")
                        .element("td", "", "class", "words")
                        .close("tr"));
        html.close("tbody").close("table").close("section");
    }

    private void collect() {
        TerritoryMap map = findings.map();
        int next = map.season() + 1;
        LocalDate from = map.settings().seasonFrom().atYear(next);
        LocalDate to = map.settings().seasonTo().atYear(next);
        List<String> uncounted = map.rivers().stream()
                .filter(river -> !river.isCounted())
                .map(river -> river.river().name())
                .toList();
        String season = Texts.of("report.steps.season", from, to);
        if (uncounted.isEmpty()) {
            add(season, "report.steps.again", VISITS, map.settings().minimumSpreadDays());
        } else {
            add(season, "report.steps.visit", uncounted, VISITS, map.settings().minimumSpreadDays());
        }
        map.total()
                .filter(total -> total.max() > total.min())
                .ifPresent(total -> add(season, "report.steps.walls", total.min(), total.max()));
        long unproved = map.rivers().stream()
                .filter(RiverMap::isCounted)
                .flatMap(river -> river.territories().stream())
                .filter(territory -> territory.standing() == Standing.COUNTED)
                .filter(territory -> !territory
                        .evidence()
                        .flatMap(evidence -> evidence.code().evidenceClass())
                        .equals(Optional.of(EvidenceClass.CONFIRMED)))
                .count();
        if (unproved > 0) {
            add(Texts.of("report.steps.from", FOOD.atYear(next)), "report.steps.food", unproved);
        }
        List<String> edges = map.rivers().stream()
                .filter(river -> river.count().edge() > 0)
                .map(river -> river.river().name())
                .toList();
        if (!edges.isEmpty()) {
            add(season, "report.steps.ends", edges);
        }
        add(
                Texts.of("report.steps.springAndAutumn"),
                findings.records().kickSamples().isEmpty() ? "report.steps.firstKick" : "report.steps.kick");
    }

    private void add(String when, String key, Object... facts) {
        steps.add(new Step(Texts.of(key, facts), when));
    }
}
