package org.ouzelbook.ui.report;

import java.time.Year;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.ouzelbook.stats.survey.RiverStory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.stats.survey.TerritoryMap.RiverMap;
import org.ouzelbook.ui.app.SealedSeason;
import org.ouzelbook.ui.app.SeasonFindings;
import org.ouzelbook.ui.app.StoryWords;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.TrendWords;

/** The findings of a season in sentences: how many, which way, and how sure that is. */
final class FindingWords {
    private static final Set<RiverStory.Topic> TOLD_ELSEWHERE =
            Set.of(RiverStory.Topic.COUNT, RiverStory.Topic.MODEL, RiverStory.Topic.DIRECTION, RiverStory.Topic.FOOD);

    private final TerritoryMap map;
    private final RiverStory story;

    private final Optional<SealedSeason> seal;

    FindingWords(SeasonFindings findings) {
        this.seal = findings.seal();
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

    /** {@return whether today’s book gives what was sealed of the season; empty if nothing was} */
    Optional<String> seal() {
        return seal.map(there -> {
            if (!there.differences().isEmpty()) {
                return Texts.of("report.sealed.other", there.on(), there.differences());
            }
            return Texts.of(there.sameTerritories() ? "report.sealed.same" : "report.sealed.moved", there.on());
        });
    }

    /** {@return the count by model, with pairs that no visit found; empty if only the rules counted} */
    Optional<Claim> model() {
        return story.about(RiverStory.Topic.MODEL).stream()
                .findFirst()
                .map(finding -> new Claim(StoryWords.sentence(finding), StoryWords.caveat(finding)));
    }

    String direction() {
        return StoryWords.sentence(story.about(RiverStory.Topic.DIRECTION).get(0));
    }

    /**
     * Something that is said, and what stands against it or beside it.
     *
     * @param said the sentence
     * @param but what is to be known with it; blank if nothing
     */
    record Claim(String said, String but) {}

    /** {@return what the count and the trend rest on, and how far they may be off} */
    List<Claim> sureness() {
        List<Claim> claims = new ArrayList<>();
        for (RiverMap river : map.rivers()) {
            String readings = river.count().readings().stream()
                    .filter(reading -> reading.count() != river.count().likely())
                    .map(reading -> Texts.of(
                            "report.sure.reading",
                            Texts.of(reading.rule()),
                            reading.count(),
                            river.count().likely()))
                    .collect(Collectors.joining(" "));
            claims.add(new Claim(visits(river), readings));
        }
        story.findings().stream()
                .filter(finding -> !TOLD_ELSEWHERE.contains(finding.topic()))
                .map(FindingWords::claim)
                .forEach(claims::add);
        return claims;
    }

    /** {@return what stands beside the birds, each with what speaks against it} */
    List<Claim> explanations() {
        return story.about(RiverStory.Topic.FOOD).stream()
                .map(FindingWords::claim)
                .toList();
    }

    private static Claim claim(RiverStory.Finding finding) {
        return new Claim(
                Texts.of("story.told", finding.basis(), StoryWords.sentence(finding)), StoryWords.caveat(finding));
    }

    private String visits(RiverMap river) {
        return river.visitEfficiency()
                .map(share -> Texts.of("report.sure.visits", river.river().name(), river.effectiveVisits(), share))
                .orElseGet(
                        () -> Texts.of("report.sure.visitsOnly", river.river().name(), river.effectiveVisits()));
    }
}
