package org.ouzelbook.ui.window;

import java.util.Optional;
import java.util.function.IntFunction;
import org.ouzelbook.stats.survey.CountTrend;
import org.ouzelbook.stats.survey.RiverStory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.ui.app.ModelShading;
import org.ouzelbook.ui.strip.BirdScene;
import org.ouzelbook.ui.strip.PlaceScene;
import org.ouzelbook.ui.strip.Subject;

/** Why a thing on the strip is as it is, in sentences: finds who knows of it. */
final class WhyWords {
    private final BookContents contents;
    private final WhyTerritory territories;
    private final WhyRecords sightings;
    private final WhyMarks marks;
    private final WhySeasons seasons;

    /**
     * @param contents what the book holds
     * @param model what the model makes of a season; empty while it counts
     * @param stories the story of a year; empty while it is worked out
     * @param nestsShown whether nests may be told one by one; otherwise only that there are some
     */
    WhyWords(
            BookContents contents,
            IntFunction<Optional<ModelShading>> model,
            IntFunction<Optional<RiverStory>> stories,
            boolean nestsShown) {
        this.contents = contents;
        territories = new WhyTerritory(contents, model, nestsShown);
        sightings = new WhyRecords(contents);
        marks = new WhyMarks(contents);
        seasons = new WhySeasons(contents, model, stories);
    }

    /**
     * {@return what there is to say of a subject; empty if it is no longer there}
     *
     * @param subject something on the strip
     */
    Optional<Explanation> of(Subject subject) {
        if (subject instanceof Subject.OfTerritory territory) {
            return territories.of(territory);
        }
        if (subject instanceof Subject.OfSeason season) {
            return Optional.ofNullable(contents.maps().get(season.season())).map(seasons::season);
        }
        return sightings.of(subject).or(() -> marks.of(subject));
    }

    /** {@return what there is to say of a place} */
    Explanation place(PlaceScene scene) {
        return marks.place(scene);
    }

    /** {@return what there is to say of a ringed bird} */
    Explanation bird(BirdScene scene) {
        return marks.bird(scene);
    }

    /**
     * {@return what there is to say of a season}
     *
     * @param map its territories
     */
    Explanation season(TerritoryMap map) {
        return seasons.season(map);
    }

    /**
     * {@return what there is to say of all seasons}
     *
     * @param trend the trend of their counts
     */
    Explanation seasons(CountTrend trend) {
        return seasons.seasons(trend);
    }
}
