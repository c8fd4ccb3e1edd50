package org.ouzelbook.tracker.exchange;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.ImportedFile;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.place.PlaceSettings;
import org.ouzelbook.tracker.place.Places;
import org.ouzelbook.tracker.river.RiverNetwork;
import org.ouzelbook.tracker.store.BookEdit;

/** What the book holds that rows refer to, by the names that rows use; it grows with the import. Sightings stay in the book. */
final class BookIndex {
    private final BookEdit edit;
    private final RiverNetwork network;
    private final Map<String, River> rivers = new HashMap<>();
    private final Optional<River> usualRiver;
    private final Map<Named, Landmark> landmarks = new HashMap<>();
    private final Places places;
    private final Map<String, Reach> reaches = new HashMap<>();
    private final Map<String, Visit> visits = new HashMap<>();
    private final Map<RiverDay, List<Visit>> visitsByDay = new HashMap<>();
    private final Map<String, Nest> nests = new HashMap<>();
    private final Map<UUID, List<NestCheck>> checks = new HashMap<>();

    private record RiverDay(UUID riverId, LocalDate date) {}

    /** A name on a river, as names are compared. */
    private record Named(UUID riverId, String key) {}

    BookIndex(BookEdit edit, ImportAnswers answers) {
        this.edit = edit;
        this.network = edit.network();
        network.rivers().forEach(river -> rivers.putIfAbsent(key(river.name()), river));
        this.usualRiver = answers.river().isPresent()
                ? river(answers.river().get())
                : network.rivers().stream()
                        .filter(river -> network.rivers().size() == 1)
                        .findFirst();
        List<Landmark> known = edit.landmarks();
        this.places = Places.of(network, known, settings(answers));
        known.forEach(this::index);
        edit.reaches().forEach(reach -> reaches.put(key(reach.name()), reach));
        edit.visits().forEach(this::know);
        edit.nests().forEach(this::know);
        edit.nestChecks().forEach(this::know);
    }

    private static PlaceSettings settings(ImportAnswers answers) {
        PlaceSettings usual = PlaceSettings.USUAL;
        double accept = answers.offRiverMetres().orElse(usual.acceptMetres());
        return new PlaceSettings(
                accept, Math.max(accept, usual.askMetres()), usual.landmarkMetres(), usual.gpsMetres());
    }

    /** Names are the same in any case, with any spaces around. */
    static String key(String name) {
        return name.strip().toLowerCase(Locale.ROOT);
    }

    BookEdit edit() {
        return edit;
    }

    Optional<ImportedFile> importedFile(String sha256) {
        return edit.importedFile(sha256);
    }

    Places places() {
        return places;
    }

    Optional<River> usualRiver() {
        return usualRiver;
    }

    Optional<River> river(String name) {
        return Optional.ofNullable(rivers.get(key(name)));
    }

    String riverName(UUID riverId) {
        return network.river(riverId).name();
    }

    List<String> riverNames() {
        return network.rivers().stream().map(River::name).toList();
    }

    Optional<Landmark> landmark(UUID riverId, String name) {
        return Optional.ofNullable(landmarks.get(new Named(riverId, key(name))));
    }

    void know(Landmark landmark) {
        index(landmark);
        places.add(landmark);
    }

    private void index(Landmark landmark) {
        landmarks.putIfAbsent(new Named(landmark.place().riverId(), key(landmark.name())), landmark);
    }

    Optional<Reach> reach(String name) {
        return Optional.ofNullable(reaches.get(key(name)));
    }

    void know(Reach reach) {
        reaches.put(key(reach.name()), reach);
    }

    Optional<Visit> visit(String label) {
        return Optional.ofNullable(visits.get(key(label)));
    }

    /** {@return the visits of a river on a day} */
    List<Visit> visits(UUID riverId, LocalDate date) {
        return visitsByDay.getOrDefault(new RiverDay(riverId, date), List.of());
    }

    /** {@return the visits of all rivers on a day} */
    List<Visit> visits(LocalDate date) {
        return network.rivers().stream()
                .flatMap(river -> visits(river.id(), date).stream())
                .toList();
    }

    /** {@return labels of visits that somebody may have meant, the most similar first} */
    List<String> similarVisits(String label, Optional<LocalDate> date) {
        List<String> sameDay = visits.values().stream()
                .filter(visit -> date.isPresent() && visit.date().equals(date.get()))
                .map(Visit::label)
                .sorted()
                .toList();
        return sameDay.isEmpty() ? Similar.to(label, visits.values().stream().map(Visit::label)) : sameDay;
    }

    void know(Visit visit) {
        visits.put(key(visit.label()), visit);
        visitsByDay
                .computeIfAbsent(new RiverDay(visit.riverId(), visit.date()), day -> new ArrayList<>())
                .add(visit);
    }

    Optional<Nest> nest(String label) {
        return Optional.ofNullable(nests.get(key(label)));
    }

    List<String> similarNests(String label) {
        return Similar.to(label, nests.values().stream().map(Nest::label));
    }

    void know(Nest nest) {
        nests.put(key(nest.label()), nest);
    }

    List<NestCheck> checks(Nest nest) {
        return checks.getOrDefault(nest.id(), List.of());
    }

    void know(NestCheck check) {
        checks.computeIfAbsent(check.nestId(), id -> new ArrayList<>()).add(check);
    }
}
