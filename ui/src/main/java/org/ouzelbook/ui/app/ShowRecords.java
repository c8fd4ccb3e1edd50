package org.ouzelbook.ui.app;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.Year;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.river.RiverNetwork;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.BookView;
import org.ouzelbook.tracker.store.SightingQuery;

/** The records of a book as a person reads them, narrowed to what was asked for. */
public final class ShowRecords {
    private final BookView view;
    private final Wish wish;
    private final RiverNetwork network;
    private final Map<UUID, String> owners;
    private final Optional<River> river;

    private ShowRecords(BookView view, Wish wish) {
        this.view = view;
        this.wish = wish;
        this.network = view.network();
        this.owners = view.owners();
        this.river = wish.river().map(this::named);
    }

    /**
     * Which records are wanted: those that meet every condition given, as far as it applies to them.
     *
     * @param species of this species
     * @param from on this day or later
     * @param to on this day or earlier
     * @param river on the river with this name
     * @param visit of the visit with this label
     */
    public record Wish(
            Optional<Species> species,
            Optional<LocalDate> from,
            Optional<LocalDate> to,
            Optional<String> river,
            Optional<String> visit) {
        /** Everything. */
        public static final Wish ALL =
                new Wish(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

        private boolean includes(LocalDate day) {
            return from.filter(day::isBefore).isEmpty()
                    && to.filter(day::isAfter).isEmpty();
        }

        private boolean includes(Species one) {
            return species.isEmpty() || species.get().equals(one);
        }
    }

    /**
     * A record, and from whose book it came.
     *
     * @param line the record
     * @param owner whose book it was put together from; empty for the keeper’s own
     */
    public record Owned<T>(T line, Optional<String> owner) {
        /** {@return lines of which nobody is the owner} */
        public static <T> List<Owned<T>> byNobody(List<T> lines) {
            return lines.stream()
                    .map(line -> new Owned<>(line, Optional.empty()))
                    .toList();
        }
    }

    private <T> Owned<T> owned(UUID id, T line) {
        return new Owned<>(line, Optional.ofNullable(owners.get(id)));
    }

    /**
     * {@return what the work reads from the records that meet the wish}
     *
     * @param book the book
     * @param wish which records
     * @param work picks the kind of record
     * @throws WrongRequest if the book has no such river or visit
     */
    public static <T> List<Owned<T>> in(Path book, Wish wish, Function<ShowRecords, List<Owned<T>>> work) {
        try (Book open = Book.open(book)) {
            return open.read(view -> work.apply(new ShowRecords(view, wish)));
        }
    }

    private River named(String name) {
        return view.river(name)
                .orElseThrow(() -> new WrongRequest(Message.of(
                        "show.river.none",
                        name,
                        network.rivers().stream().map(River::name).toList())));
    }

    private boolean isOnRiver(UUID riverId) {
        return river.isEmpty() || river.get().id().equals(riverId);
    }

    private String riverName(UUID riverId) {
        return network.river(riverId).name();
    }

    /** {@return the rivers} */
    public List<Owned<ShownRecords.RiverLine>> rivers() {
        return network.rivers().stream()
                .filter(one -> isOnRiver(one.id()))
                .map(one -> owned(one.id(), ShownRecords.RiverLine.of(one, network)))
                .toList();
    }

    /** {@return the landmarks, from the mouth up} */
    public List<Owned<ShownRecords.LandmarkLine>> landmarks() {
        return view.landmarks().stream()
                .filter((Landmark landmark) -> isOnRiver(landmark.place().riverId()))
                .map(landmark -> owned(
                        landmark.id(),
                        ShownRecords.LandmarkLine.of(
                                landmark, riverName(landmark.place().riverId()))))
                .toList();
    }

    /** {@return the reaches, from the mouth up} */
    public List<Owned<ShownRecords.ReachLine>> reaches() {
        return view.reaches().stream()
                .filter((Reach reach) -> isOnRiver(reach.riverId()))
                .map(reach -> owned(reach.id(), ShownRecords.ReachLine.of(reach, riverName(reach.riverId()))))
                .toList();
    }

    /** {@return the visits by date, each with what it looked for and did not see} */
    public List<Owned<VisitAnswer>> visits() {
        return wanted().stream()
                .filter(visit -> wish.species().isEmpty()
                        || visit.lookedFor().contains(wish.species().get()))
                .map(visit -> owned(
                        visit.id(), VisitAnswer.of(visit, network, view.sightings(SightingQuery.ALL.during(visit)))))
                .toList();
    }

    private List<Visit> wanted() {
        if (wish.visit().isPresent()) {
            return List.of(visit(wish.visit().get()));
        }
        return view.visits().stream()
                .filter(visit -> isOnRiver(visit.riverId()) && wish.includes(visit.date()))
                .toList();
    }

    private Visit visit(String label) {
        return view.visit(label).orElseThrow(() -> new WrongRequest(Message.of("show.visit.none", label)));
    }

    /** {@return the sightings, by date and time} */
    public List<Owned<SightingAnswer>> sightings() {
        SightingQuery query = new SightingQuery(
                wish.species(),
                wish.from(),
                wish.to(),
                river.map(River::id),
                Optional.empty(),
                wish.visit().map(label -> visit(label).id()));
        Map<UUID, Visit> visits = view.visits().stream().collect(Collectors.toMap(Visit::id, Function.identity()));
        return view.sightings(query).stream()
                .map((Sighting sighting) -> owned(
                        sighting.id(),
                        SightingAnswer.of(sighting, network, sighting.visitId().map(visits::get))))
                .toList();
    }

    /** {@return the nests by label, each with how its last check found it; their places are private} */
    public List<Owned<ShownRecords.NestLine>> nests() {
        Map<UUID, List<NestCheck>> checks =
                view.nestChecks().stream().collect(Collectors.groupingBy(NestCheck::nestId));
        return view.nests().stream()
                .filter((Nest nest) -> isOnRiver(nest.place().riverId()) && wish.includes(nest.species()))
                .map(nest -> owned(
                        nest.id(),
                        ShownRecords.NestLine.of(
                                nest, riverName(nest.place().riverId()), checks.getOrDefault(nest.id(), List.of()))))
                .filter(nest -> nest.line()
                        .found()
                        .or(nest.line()::lastCheck)
                        .map(wish::includes)
                        .orElse(true))
                .toList();
    }

    /** {@return the birds with colour rings, by label; their rings are private} */
    public List<Owned<ShownRecords.BirdLine>> birds() {
        return view.ringedBirds().stream()
                .map(bird -> owned(bird.id(), ShownRecords.BirdLine.of(bird)))
                .toList();
    }

    /** {@return the kick samples, by date} */
    public List<Owned<ShownRecords.SampleLine>> samples() {
        return view.kickSamples().stream()
                .filter((KickSample sample) -> isOnRiver(sample.place().riverId()) && wish.includes(sample.date()))
                .map(sample -> owned(
                        sample.id(),
                        ShownRecords.SampleLine.of(
                                sample, riverName(sample.place().riverId()))))
                .toList();
    }

    /** {@return what surveyors decided about territories, by season, each with its number in the book} */
    public List<Owned<DecisionAnswer>> decisions() {
        return Owned.byNobody(DecisionAnswer.all(view.decisions(), network).stream()
                .filter(decision -> wish.includes(decision.species()))
                .filter(decision -> wish.from()
                                .filter(day -> decision.season().isBefore(Year.from(day)))
                                .isEmpty()
                        && wish.to()
                                .filter(day -> decision.season().isAfter(Year.from(day)))
                                .isEmpty())
                .filter(decision -> river.isEmpty() || river.get().name().equals(decision.river()))
                .toList());
    }

    /** {@return the files that were imported, oldest first, with how many rows of each are in the book now} */
    public List<Owned<ShownRecords.FileLine>> files() {
        return Owned.byNobody(view.importedFiles().stream()
                .map(file -> new ShownRecords.FileLine(
                        file.name(), view.rowsFrom(file).cardinality(), file.sha256()))
                .toList());
    }
}
