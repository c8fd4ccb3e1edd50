package org.ouzelbook.ui.report;

import java.time.Year;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.ouzelbook.stats.survey.RiverStory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.stats.survey.TerritoryMap.RiverMap;
import org.ouzelbook.ui.app.SeasonFindings;
import org.ouzelbook.ui.app.StoryWords;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.TrendWords;

/** The findings of a season in sentences: how many, which way, and how sure that is. */
final class FindingWords {
    private static final Set<RiverStory.Topic> TOLD_ELSEWHERE =
            Set.of(RiverStory.Topic.COUNT, RiverStory.Topic.DIRECTION, RiverStory.Topic.FOOD);

    private final TerritoryMap map;
    private final RiverStory story;

    FindingWords(SeasonFindings findings) {
        this.map = findings.map();
        this.story = findings.story();
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
        return StoryWords.sentence(story.about(RiverStory.Topic.COUNT).get(0));
    }

    String countCaveat() {
        return StoryWords.caveat(story.about(RiverStory.Topic.COUNT).get(0));
    }

    String direction() {
        return StoryWords.sentence(story.about(RiverStory.Topic.DIRECTION).get(0));
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
        story.findings().stream()
                .filter(finding -> !TOLD_ELSEWHERE.contains(finding.topic()))
                .map(StoryWords::whole)
                .forEach(lines::add);
        return lines;
    }

    /** {@return what stands beside the birds, each with what speaks against it} */
    List<String> explanations() {
        return story.about(RiverStory.Topic.FOOD).stream()
                .map(StoryWords::whole)
                .toList();
    }

    private String visits(RiverMap river) {
        return river.visitEfficiency()
                .map(share -> Texts.of("report.sure.visits", river.river().name(), river.effectiveVisits(), share))
                .orElseGet(
                        () -> Texts.of("report.sure.visitsOnly", river.river().name(), river.effectiveVisits()));
    }
}
