package org.ouzelbook.ui.window;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.Territory.Standing;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Subject;

/** The records of the book that numbers rest on. */
final class RecordsBehind {
    private final BookContents contents;

    /**
     * @param contents the book
     */
    RecordsBehind(BookContents contents) {
        this.contents = contents;
    }

    /**
     * {@return what a count of a season rests on: its territories with their registrations, then the visits}
     *
     * @param season the calendar year
     * @param river name of the only river; empty for all
     * @param reach name of the only reach; empty for all water
     */
    List<Evidence> count(int season, Optional<String> river, Optional<String> reach) {
        Optional<TerritoryMap> map = Optional.ofNullable(contents.maps().get(season));
        List<Evidence> rests = new ArrayList<>();
        map.ifPresent(there -> there.rivers().stream()
                .filter(one -> river.map(one.river().name()::equals).orElse(true))
                .forEach(one -> one.territories().stream()
                        .filter(territory -> territory.standing() == Standing.COUNTED)
                        .filter(territory -> within(one, territory, reach))
                        .forEach(territory -> territory(season, one, territory, rests))));
        visits(season, river, rests);
        return rests;
    }

    private boolean within(TerritoryMap.RiverMap river, Territory territory, Optional<String> reach) {
        return reach.isEmpty()
                || contents.records().reaches().stream()
                        .filter(one -> one.name().equals(reach.get())
                                && one.riverId().equals(river.river().id()))
                        .map(Reach::stretch)
                        .anyMatch((Stretch stretch) -> stretch.contains(territory.centre()));
    }

    private static void territory(int season, TerritoryMap.RiverMap river, Territory territory, List<Evidence> rests) {
        rests.add(new Evidence(
                Texts.of(
                        "window.findings.territory",
                        territory.id(),
                        river.river().name(),
                        territory.stretch()),
                season,
                Optional.of(new Subject.OfTerritory(season, river.river().id(), territory.id()))));
        territory.registrations().forEach(sighting -> rests.add(sighting(sighting)));
    }

    private void visits(int season, Optional<String> river, List<Evidence> rests) {
        contents.records().visits().stream()
                .filter(visit ->
                        visit.date().getYear() == season && visit.lookedFor().contains(contents.species()))
                .filter(visit -> river.map(riverName(visit)::equals).orElse(true))
                .sorted(Comparator.comparing(Visit::date))
                .forEach(visit -> rests.add(new Evidence(
                        Texts.of("window.findings.visit", visit.date(), riverName(visit)),
                        season,
                        Optional.of(new Subject.OfVisit(visit.id())))));
    }

    private String riverName(Visit visit) {
        return contents.records().rivers().river(visit.riverId()).name();
    }

    private static Evidence sighting(Sighting sighting) {
        return new Evidence(
                Texts.of("window.why.line", sighting.date(), sighting.place().chainage(), sighting.count()),
                sighting.date().getYear(),
                Optional.of(new Subject.OfSighting(sighting.id())));
    }

    /**
     * {@return the visits of a season, then the sightings of the species}
     *
     * @param season the calendar year
     */
    List<Evidence> searches(int season) {
        List<Evidence> rests = new ArrayList<>();
        visits(season, Optional.empty(), rests);
        rests.addAll(sightings(season, sighting -> true));
        return rests;
    }

    /**
     * {@return the readings of rings in a season}
     *
     * @param season the calendar year
     */
    List<Evidence> readings(int season) {
        return sightings(season, sighting -> !sighting.rings().isBlank());
    }

    private List<Evidence> sightings(int season, Predicate<Sighting> which) {
        return contents.records().sightings().stream()
                .filter(sighting -> sighting.date().getYear() == season
                        && sighting.species().equals(contents.species()))
                .filter(which)
                .map(RecordsBehind::sighting)
                .toList();
    }

    /**
     * {@return the nests of a season with their checks; each leads to the territory that holds it}
     *
     * @param season the calendar year
     */
    List<Evidence> nests(int season) {
        List<Evidence> rests = new ArrayList<>();
        for (Nest nest : contents.records().nests()) {
            List<NestCheck> checks = contents.records().nestChecks().stream()
                    .filter(check ->
                            check.nestId().equals(nest.id()) && check.date().getYear() == season)
                    .sorted(Comparator.comparing(NestCheck::date))
                    .toList();
            if (nest.species().equals(contents.species()) && !checks.isEmpty()) {
                Optional<Subject> holder = holder(nest, season);
                rests.add(new Evidence(
                        Texts.of(
                                "window.findings.nest",
                                nest.label(),
                                nest.place().chainage()),
                        season,
                        holder));
                checks.forEach(check -> rests.add(
                        new Evidence(Texts.of("window.findings.check", check.date(), check.stage()), season, holder)));
            }
        }
        return rests;
    }

    private Optional<Subject> holder(Nest nest, int season) {
        return Optional.ofNullable(contents.maps().get(season)).stream()
                .flatMap(map -> map.rivers().stream())
                .flatMap(river -> river.territories().stream()
                        .filter(territory -> territory.nests().stream()
                                .anyMatch(one -> one.id().equals(nest.id())))
                        .map(territory -> (Subject)
                                new Subject.OfTerritory(season, river.river().id(), territory.id())))
                .findFirst();
    }
}
