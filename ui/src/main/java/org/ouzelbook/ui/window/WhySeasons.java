package org.ouzelbook.ui.window;

import java.time.Year;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import org.ouzelbook.stats.survey.CountTrend;
import org.ouzelbook.stats.survey.RiverStory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.ui.app.ModelShading;
import org.ouzelbook.ui.app.StoryWords;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.TrendWords;

/** What there is to say of a season, and of all of them. */
final class WhySeasons {
    private final BookContents contents;
    private final IntFunction<Optional<ModelShading>> model;
    private final IntFunction<Optional<RiverStory>> stories;

    /**
     * @param contents what the book holds
     * @param model what the model makes of a season; empty while it counts
     * @param stories the story of a year; empty while it is worked out
     */
    WhySeasons(
            BookContents contents,
            IntFunction<Optional<ModelShading>> model,
            IntFunction<Optional<RiverStory>> stories) {
        this.contents = contents;
        this.model = model;
        this.stories = stories;
    }

    /**
     * {@return what there is to say of a season}
     *
     * @param map its territories
     */
    Explanation season(TerritoryMap map) {
        List<Explanation.Section> sections = new ArrayList<>();
        sections.add(new Explanation.Section(
                Texts.of("window.why.story"),
                stories.apply(map.season())
                        .map(story ->
                                story.findings().stream().map(StoryWords::whole).toList())
                        .orElse(List.of(Texts.of("window.why.workedOut")))));
        sections.addAll(decided(map));
        for (TerritoryMap.RiverMap river : map.rivers()) {
            List<String> lines = new ArrayList<>();
            lines.add(Texts.of(
                    "window.why.count",
                    river.count().likely(),
                    river.count().min(),
                    river.count().max(),
                    river.surveyedKm(),
                    river.effectiveVisits(),
                    river.visits(),
                    river.count().min() < river.count().max() ? 1 : 0));
            lines.addAll(
                    WhyMarks.byModel(model.apply(map.season()), river.river().id()));
            if (river.count().edge() + river.count().unassigned() > 0) {
                lines.add(Texts.of(
                        "window.why.left", river.count().edge(), river.count().unassigned()));
            }
            river.count().readings().stream()
                    .filter(reading -> reading.count() != river.count().likely())
                    .map(reading -> Texts.of("window.why.reading", Texts.of(reading.rule()), reading.count()))
                    .forEach(lines::add);
            sections.add(new Explanation.Section(river.river().name(), lines));
        }
        sections.add(warned(map.warnings()));
        return new Explanation(
                Texts.of("window.why.season", Year.of(map.season())),
                Texts.of("window.why.byRule", map.species()),
                written(sections));
    }

    /** What surveyors decided of a season, and the answer by the rules alone beside it; nothing where nobody decided anything. */
    private List<Explanation.Section> decided(TerritoryMap map) {
        TerritoryMap without = contents.undecided().get(map.season());
        if (without == null) {
            return List.of();
        }
        List<String> lines = new ArrayList<>();
        contents.records()
                .decisions(map.species(), map.season())
                .forEach(decision -> lines.add(Texts.of(
                        "window.why.decision",
                        decision.kind(),
                        decision.stretch().length() > 0
                                ? decision.stretch()
                                : decision.stretch().lower(),
                        contents.records().rivers().river(decision.riverId()).name(),
                        decision.by(),
                        decision.on(),
                        decision.note().map(note -> 1).orElse(0),
                        decision.note().orElse(""))));
        without.total()
                .ifPresent(
                        total -> lines.add(Texts.of("window.why.undecided", total.likely(), total.min(), total.max())));
        return List.of(new Explanation.Section(Texts.of("window.why.decisions"), lines));
    }

    /**
     * {@return what there is to say of all seasons}
     *
     * @param trend the trend of their counts
     */
    Explanation seasons(CountTrend trend) {
        List<Explanation.Section> sections = new ArrayList<>();
        Optional<RiverStory> worked = stories.apply(contents.maps().lastKey());
        worked.ifPresentOrElse(
                story -> {
                    sections.add(new Explanation.Section("", told(story, RiverStory.Topic.DIRECTION)));
                    List<String> sure = new ArrayList<>(told(story, RiverStory.Topic.TREND));
                    sure.addAll(told(story, RiverStory.Topic.CHANGE));
                    sections.add(new Explanation.Section(Texts.of("window.why.sure"), sure));
                },
                () -> sections.add(new Explanation.Section("", List.of(Texts.of("window.why.workedOut")))));
        sections.add(warned(trend.warnings()));
        List<CountTrend.SeasonTotals> seasons = trend.seasons();
        return new Explanation(
                Finding.seasons(
                        Year.of(seasons.get(0).season()),
                        Year.of(seasons.get(seasons.size() - 1).season())),
                Texts.of("window.why.byRule", trend.species()),
                written(sections));
    }

    private static List<String> told(RiverStory story, RiverStory.Topic topic) {
        return story.about(topic).stream().map(StoryWords::whole).toList();
    }

    private static Explanation.Section warned(List<Message> warnings) {
        return new Explanation.Section(
                Texts.of("window.why.warnings"),
                warnings.stream().map(Texts::of).map(TrendWords::sentence).toList());
    }

    private static List<Explanation.Section> written(List<Explanation.Section> sections) {
        return sections.stream()
                .filter(section -> !section.sentences().isEmpty())
                .toList();
    }
}
