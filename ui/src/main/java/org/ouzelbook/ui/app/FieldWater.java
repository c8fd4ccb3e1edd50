package org.ouzelbook.ui.app;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.exchange.export.PublicGrid;
import org.ouzelbook.tracker.river.MeasuredLine;
import org.ouzelbook.tracker.river.RiverNetwork;
import org.ouzelbook.tracker.store.Book;

/**
 * The water that one walks with a sheet or a phone, and its landmarks: nothing of birds, nests, rings or people.
 *
 * @param network the rivers of the book
 * @param landmarks every landmark; which of them have nests may not be told
 * @param walks the stretches that are walked, in the order of the water
 */
public record FieldWater(RiverNetwork network, List<Landmark> landmarks, List<Walk> walks) {
    /** Copies the lists. */
    public FieldWater {
        landmarks = List.copyOf(landmarks);
        walks = List.copyOf(walks);
    }

    /**
     * A stretch that is walked as one.
     *
     * @param river its river
     * @param reach its name; empty where the book has no reach for it
     * @param stretch from its lower to its upper end
     */
    public record Walk(River river, Optional<String> reach, Stretch stretch) {
        /** {@return what it is called} */
        public String name() {
            return reach.map(name -> Texts.of("app.walk.reach", river.name(), name))
                    .orElse(river.name());
        }
    }

    /**
     * {@return the water of a book: the reach that is asked for, or all reaches of the river that is asked for; where the book
     * has none, the water that was ever walked, by whole cells of the public grid since a walk may have ended at a nest, or else the whole
     * line}
     *
     * @param book an open book
     * @param scope which river or reach; nothing else of it is used
     * @throws WrongRequest if the book has no such river or reach, or no water at all
     */
    public static FieldWater of(Book book, Scope scope) {
        return book.read(view -> {
            RiverNetwork network = view.network();
            List<Walk> walks = new ArrayList<>();
            for (River river : network.inOrderOfWater()) {
                List<Reach> reaches = view.reaches().stream()
                        .filter(reach -> reach.riverId().equals(river.id()))
                        .toList();
                reaches.forEach(reach -> walks.add(new Walk(river, Optional.of(reach.name()), reach.stretch())));
                if (reaches.isEmpty()) {
                    walked(view.visits(), river)
                            .map(stretch -> new PublicGrid(network).holding(river.id(), stretch))
                            .or(() -> line(network, river))
                            .ifPresent(stretch -> walks.add(new Walk(river, Optional.empty(), stretch)));
                }
            }
            return new FieldWater(network, view.landmarks(), asked(walks, scope));
        });
    }

    private static List<Walk> asked(List<Walk> walks, Scope scope) {
        List<Walk> asked = walks.stream()
                .filter(walk -> scope.river()
                        .map(name -> walk.river().name().equalsIgnoreCase(name.strip()))
                        .orElse(true))
                .filter(walk -> scope.reach()
                        .map(name ->
                                walk.reach().map(name.strip()::equalsIgnoreCase).orElse(false))
                        .orElse(true))
                .toList();
        if (asked.isEmpty()) {
            throw new WrongRequest(
                    Message.of("app.walk.none", walks.stream().map(Walk::name).toList()));
        }
        return asked;
    }

    private static Optional<Stretch> walked(List<Visit> visits, River river) {
        return visits.stream()
                .filter(visit -> visit.riverId().equals(river.id()))
                .flatMap(visit -> visit.walked().stream())
                .reduce((one, other) -> new Stretch(
                        Collections.min(List.of(one.lower(), other.lower())),
                        Collections.max(List.of(one.upper(), other.upper()))));
    }

    private static Optional<Stretch> line(RiverNetwork network, River river) {
        Optional<RiverLine> line = network.line(river.id());
        return line.map(MeasuredLine::of).map(MeasuredLine::extent);
    }

    /**
     * {@return the landmarks of a walk, going upstream}
     *
     * @param walk a stretch
     */
    public List<Landmark> along(Walk walk) {
        return landmarks.stream()
                .filter(landmark ->
                        landmark.place().riverId().equals(walk.river().id()))
                .filter(landmark -> walk.stretch().contains(landmark.place().chainage()))
                .sorted((one, other) ->
                        one.place().chainage().compareTo(other.place().chainage()))
                .toList();
    }

    /**
     * {@return the rivers that join a walk, by where they do}
     *
     * @param walk a stretch
     */
    public List<River> joining(Walk walk) {
        return network.tributaries(walk.river().id()).stream()
                .filter(river -> river.mouth()
                        .map(mouth -> walk.stretch().contains(mouth.chainage()))
                        .orElse(false))
                .toList();
    }
}
