package org.ouzelbook.ui.strip;

import java.time.Year;
import java.util.ArrayList;
import java.util.List;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.ui.app.Texts;

/** The strip in words, for those who cannot see it. */
final class StripWords {
    private StripWords() {}

    static String title(SeasonScene scene) {
        return Texts.of(
                "strip.title.season", scene.map().species(), Year.of(scene.map().season()));
    }

    static String title(SeasonsScene scene) {
        return Texts.of(
                "strip.title.seasons",
                scene.maps().get(0).species(),
                Year.of(scene.maps().get(0).season()),
                Year.of(scene.maps().get(scene.maps().size() - 1).season()));
    }

    static String description(SeasonScene scene) {
        List<String> sentences = new ArrayList<>();
        for (TerritoryMap.RiverMap river : scene.map().rivers()) {
            sentences.add(found(scene.map().season(), river));
            river.territories().forEach(territory -> sentences.add(territory(territory) + "."));
        }
        return String.join(" ", sentences);
    }

    static String description(SeasonsScene scene) {
        List<String> sentences = new ArrayList<>();
        for (TerritoryMap map : scene.maps()) {
            map.rivers().forEach(river -> sentences.add(found(map.season(), river)));
        }
        return String.join(" ", sentences);
    }

    static String found(int season, TerritoryMap.RiverMap river) {
        return river.isCounted()
                ? Texts.of(
                        "strip.say.count",
                        river.river().name(),
                        Year.of(season),
                        river.count().likely(),
                        river.count().min(),
                        river.count().max(),
                        river.surveyedKm(),
                        river.effectiveVisits())
                : Texts.of("strip.say.noCount", river.river().name(), Year.of(season), river.effectiveVisits());
    }

    static String territory(Territory territory) {
        return Texts.of(
                "strip.say.territory",
                territory.id(),
                territory.stretch(),
                TerritoryInk.words(territory),
                territory.registrations().size());
    }
}
