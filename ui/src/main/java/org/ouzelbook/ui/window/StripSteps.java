package org.ouzelbook.ui.window;

import java.time.Year;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.BirdScene;
import org.ouzelbook.ui.strip.StripView;
import org.ouzelbook.ui.strip.Subject;

/** Where the way leads from a thing on the strip, and to which neighbour. */
final class StripSteps {
    /** What counts as one place: as far as this below and above it, in metres; common practice, no source. */
    private static final double PLACE_METRES = 150;

    private StripSteps() {}

    /**
     * {@return the nearer view to which a thing leads; empty where it leads to none}
     *
     * @param there what the book holds
     * @param from the view in which it stands
     * @param subject the thing
     */
    static Optional<StripView> into(BookContents there, StripView from, Subject subject) {
        boolean inSeason = from instanceof StripView.OneSeason;
        if (subject instanceof Subject.OfSeason season) {
            return Optional.of(new StripView.OneSeason(season.season()));
        }
        if (subject instanceof Subject.OfTerritory territory) {
            return inSeason ? ground(there, territory) : Optional.of(new StripView.OneSeason(territory.season()));
        }
        if (subject instanceof Subject.OfEnd end) {
            return into(there, from, new Subject.OfTerritory(end.season(), end.riverId(), end.id()));
        }
        if (subject instanceof Subject.OfSighting seen) {
            return there.records().sightings().stream()
                    .filter(one -> one.id().equals(seen.id()))
                    .findFirst()
                    .map(one -> inSeason
                            ? birdOrPlace(there, one)
                            : new StripView.OneSeason(one.date().getYear()));
        }
        if (subject instanceof Subject.OfRoom room) {
            return inSeason ? Optional.empty() : Optional.of(new StripView.OneSeason(room.season()));
        }
        if (subject instanceof Subject.OfUnwalked gap) {
            return inSeason ? Optional.empty() : Optional.of(new StripView.OneSeason(gap.season()));
        }
        if (subject instanceof Subject.OfBird bird) {
            return Optional.of(new StripView.OneBird(bird.id()));
        }
        return from instanceof StripView.OnePlace ? Optional.empty() : placeOf(there, subject);
    }

    private static Optional<StripView> placeOf(BookContents there, Subject subject) {
        if (subject instanceof Subject.OfLandmark mark) {
            return there.records().landmarks().stream()
                    .filter(one -> one.id().equals(mark.id()))
                    .findFirst()
                    .map(StripSteps::at);
        }
        if (subject instanceof Subject.OfSample wanted) {
            return there.records().kickSamples().stream()
                    .filter(one -> one.id().equals(wanted.id()))
                    .findFirst()
                    .map(one -> at(one.place()));
        }
        if (subject instanceof Subject.OfNest wanted) {
            return there.records().nests().stream()
                    .filter(one -> one.id().equals(wanted.id()))
                    .findFirst()
                    .map(one -> at(one.place()));
        }
        return Optional.empty();
    }

    private static StripView birdOrPlace(BookContents there, Sighting sighting) {
        return BirdScene.identified(there.records(), sighting)
                .<StripView>map(bird -> new StripView.OneBird(bird.id()))
                .orElseGet(() -> at(sighting.place()));
    }

    private static Optional<StripView> ground(BookContents there, Subject.OfTerritory wanted) {
        return Optional.ofNullable(there.maps().get(wanted.season())).stream()
                .flatMap(map -> map.rivers().stream())
                .filter(river -> river.river().id().equals(wanted.riverId()))
                .map(TerritoryMap.RiverMap::territories)
                .flatMap(List::stream)
                .filter(territory -> territory.id().equals(wanted.id()))
                .findFirst()
                .map(territory -> new StripView.OnePlace(
                        wanted.riverId(),
                        territory.stretch().length() < PLACE_METRES
                                ? around(territory.stretch().middle(), PLACE_METRES)
                                : territory.stretch(),
                        Texts.of("window.place.ground", territory.id(), Year.of(wanted.season()))));
    }

    private static StripView at(Landmark mark) {
        return new StripView.OnePlace(
                mark.place().riverId(), around(mark.place().chainage(), PLACE_METRES), mark.name());
    }

    private static StripView at(Place place) {
        return new StripView.OnePlace(
                place.riverId(), around(place.chainage(), PLACE_METRES), Texts.of("window.place.km", place.chainage()));
    }

    private static Stretch around(Chainage middle, double metres) {
        return new Stretch(new Chainage(Math.max(0, middle.metres() - metres)), new Chainage(middle.metres() + metres));
    }

    /**
     * {@return the next known place along the same river; empty at its end}
     *
     * @param there what the book holds
     * @param from a place
     * @param step 1 for upstream, −1 for downstream
     */
    static Optional<StripView> nextPlace(BookContents there, StripView.OnePlace from, int step) {
        List<Landmark> along = there.records().landmarks().stream()
                .filter(mark -> mark.place().riverId().equals(from.riverId()))
                .sorted(Comparator.comparing(mark -> mark.place().chainage()))
                .toList();
        double middle = from.around().middle().metres();
        return (step > 0
                        ? along.stream()
                                .filter(mark -> mark.place().chainage().metres() > middle + 1)
                                .findFirst()
                        : along.stream()
                                .filter(mark -> mark.place().chainage().metres() < middle - 1)
                                .reduce((one, other) -> other))
                .map(StripSteps::at);
    }

    /**
     * {@return the next ringed bird in the order of labels; the first where none is shown; empty at the end}
     *
     * @param there what the book holds
     * @param from the bird shown
     * @param step 1 or −1
     */
    static Optional<StripView> nextBird(BookContents there, Optional<UUID> from, int step) {
        List<UUID> birds = there.records().ringedBirds().stream()
                .sorted(Comparator.comparing(RingedBird::label))
                .map(RingedBird::id)
                .toList();
        int next = from.map(birds::indexOf).map(now -> now + step).orElse(0);
        return next < 0 || next >= birds.size()
                ? Optional.empty()
                : Optional.of(new StripView.OneBird(birds.get(next)));
    }
}
