package org.ouzelbook.ui.strip;

import java.time.Year;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.ui.app.ModelShading;
import org.ouzelbook.ui.app.Texts;

/** The strip in words, for those who cannot see it. */
final class StripWords {
    private StripWords() {}

    static String title(SeasonScene scene) {
        return Texts.of(
                "strip.title.season", scene.map().species(), Year.of(scene.map().season()));
    }

    static String title(SeasonsScene scene) {
        int first = scene.maps().get(0).season();
        int last = scene.maps().get(scene.maps().size() - 1).season();
        return Texts.of(
                "strip.title.seasons",
                scene.maps().get(0).species(),
                Year.of(first),
                Year.of(last),
                first < last ? 1 : 0);
    }

    static String description(SeasonScene scene) {
        List<String> sentences = new ArrayList<>();
        for (TerritoryMap.RiverMap river : scene.map().rivers()) {
            Optional<ModelShading.OnRiver> model =
                    scene.shading().flatMap(shading -> shading.of(river.river().id()));
            sentences.add(found(scene.map().season(), river));
            model.ifPresent(known -> sentences.add(model(known)));
            river.territories()
                    .forEach(territory -> sentences.add(
                            territory(territory, model.flatMap(known -> known.ground(territory.id()))) + "."));
            model.ifPresent(known -> known.rooms()
                    .forEach(room ->
                            sentences.add(Texts.of("strip.say.room", room.stretch(), room.probability()) + ".")));
        }
        scene.samples().forEach(sample -> sentences.add(sample.aloud() + "."));
        scene.nests().forEach(nest -> sentences.add(nest.aloud() + "."));
        return String.join(" ", sentences);
    }

    private static String model(ModelShading.OnRiver known) {
        return Texts.of("strip.say.model", known.expected(), known.lower(), known.upper(), known.level());
    }

    static String description(SeasonsScene scene) {
        List<String> sentences = new ArrayList<>();
        List<River> shown = scene.waters().rivers();
        for (TerritoryMap map : scene.maps()) {
            for (TerritoryMap.RiverMap river : map.rivers()) {
                if (!shown.contains(river.river())) {
                    continue;
                }
                sentences.add(found(map.season(), river));
                Optional.ofNullable(scene.shadings().get(map.season()))
                        .flatMap(shading -> shading.of(river.river().id()))
                        .ifPresent(known -> sentences.add(model(known)));
            }
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
                        river.effectiveVisits(),
                        river.count().min() < river.count().max() ? 1 : 0)
                : Texts.of("strip.say.noCount", river.river().name(), Year.of(season), river.effectiveVisits());
    }

    static String territory(Territory territory, Optional<ModelShading.Ground> ground) {
        String byRule = territory(territory);
        return ground.map(known ->
                        byRule + Texts.of("strip.say.ground", known.probability(), known.lowerEnd(), known.upperEnd()))
                .orElse(byRule);
    }

    static String territory(Territory territory) {
        return Texts.of(
                "strip.say.territory",
                territory.id(),
                territory.stretch(),
                TerritoryInk.words(territory),
                territory.registrations().size());
    }

    static String title(PlaceScene scene) {
        return Texts.of(
                "strip.title.place",
                scene.place().name(),
                scene.river().name(),
                scene.place().around(),
                scene.species());
    }

    static String description(PlaceScene scene) {
        List<String> sentences = new ArrayList<>();
        for (int year : scene.years()) {
            sentences.add(year(scene, year));
            scene.sightings().stream()
                    .filter(sighting -> sighting.date().getYear() == year)
                    .forEach(sighting -> sentences.add(seen(sighting) + "."));
        }
        scene.samples().forEach(sample -> sentences.add(sample.aloud() + "."));
        scene.nests().forEach(nest -> sentences.add(nest.aloud() + "."));
        return String.join(" ", sentences);
    }

    static String year(PlaceScene scene, int year) {
        List<Visit> passing = scene.passingIn(year);
        return Texts.of("strip.say.passed", Year.of(year), passing.size(), scene.seenOn(passing));
    }

    static String title(BirdScene scene) {
        return Texts.of("strip.title.bird", scene.bird().label());
    }

    static String description(BirdScene scene) {
        List<String> sentences = new ArrayList<>();
        scene.bird().ringed().ifPresent(day -> sentences.add(Texts.of("strip.say.ringed", day)));
        scene.readings().forEach(reading -> sentences.add(reading(reading) + "."));
        if (scene.readings().isEmpty()) {
            sentences.add(Texts.of("strip.say.neverRead"));
        }
        return String.join(" ", sentences);
    }

    static String year(BirdScene scene, int year) {
        long read = scene.readings().stream()
                .filter(reading -> reading.sighting().date().getYear() == year)
                .count();
        return Texts.of("strip.say.read", Year.of(year), read);
    }

    static String reading(BirdScene.Reading reading) {
        return seen(reading.sighting()) + Texts.of("strip.say.fits", reading.certain() ? 1 : 0);
    }

    private static String seen(Sighting sighting) {
        return Texts.of(
                "strip.say.seen",
                sighting.date(),
                sighting.place().chainage(),
                sighting.count(),
                sighting.activities().isEmpty()
                        ? Texts.of("strip.seen")
                        : sighting.activities().stream().sorted().toList());
    }
}
