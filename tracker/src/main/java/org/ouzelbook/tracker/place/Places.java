package org.ouzelbook.tracker.place;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.function.Predicate;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.grid.GridSquare;
import org.ouzelbook.tracker.place.PlaceReading.Found;
import org.ouzelbook.tracker.place.PlaceReading.Unclear;
import org.ouzelbook.tracker.river.MeasuredLine;
import org.ouzelbook.tracker.river.RiverNetwork;
import org.ouzelbook.tracker.river.Snap;

/**
 * Finds places on the rivers of a book: by river km, by landmark, by coordinates, by grid square, or by any of these as typed
 * text.
 *
 * <p>Uncertainty, unless one is given: a landmark 20 m, and a tenth of the offset more; a km by its decimals, none 500 m, one
 * 50 m, two 20 m, three 10 m (common practice, no source); coordinates 30 m; a grid reference half the diagonal of its square. See {@link PlaceSettings}.
 */
public final class Places {
    private static final double[] UNCERTAINTY_BY_DECIMALS = {500, 50, 20, 10};
    private static final double SHARE_OF_OFFSET = 0.1;

    private final RiverNetwork network;
    private final LandmarkNames landmarks;
    private final PlaceSettings settings;

    private Places(RiverNetwork network, LandmarkNames landmarks, PlaceSettings settings) {
        this.network = network;
        this.landmarks = landmarks;
        this.settings = settings;
    }

    /**
     * {@return a finder for these rivers and landmarks}
     *
     * @param network the rivers
     * @param landmarks the landmarks on them
     * @param settings limits and uncertainties
     */
    public static Places of(RiverNetwork network, List<Landmark> landmarks, PlaceSettings settings) {
        return new Places(network, new LandmarkNames(landmarks), settings);
    }

    /**
     * Takes up another landmark.
     *
     * @param landmark a landmark on one of the rivers
     */
    public void add(Landmark landmark) {
        landmarks.add(landmark);
    }

    /** {@return the rivers on which places are found} */
    public RiverNetwork network() {
        return network;
    }

    /**
     * {@return the place that a text means: {@code otter stone +50}, {@code 150 m below Mill Bridge}, {@code km 8.4 LB},
     * {@code 8.4 ± 30 m}, {@code Sorn Beck 0.3}, {@code 52.104, -3.412}, {@code NY 215 072}}
     *
     * @param text what somebody wrote
     * @param riverId the river that the place must lie on; empty if the text may say
     */
    public PlaceReading read(String text, Optional<UUID> riverId) {
        return new PlaceScanner(this).whole(text, riverId);
    }

    /**
     * {@return the place at the start of some words, and how many of them it took; empty if they do not start with a place}
     *
     * @param words the words, from the place on
     * @param riverId the river that the place must lie on; empty if the words may say
     * @param meansSomethingElse tells words, in lower case, that never begin the name of a landmark
     */
    public Optional<PlaceScan> scan(List<Word> words, Optional<UUID> riverId, Predicate<String> meansSomethingElse) {
        return new PlaceScanner(this).scan(words, riverId, meansSomethingElse);
    }

    LandmarkNames landmarkNames() {
        return landmarks;
    }

    /**
     * {@return the place at a river km, or a question if it lies beyond the ends of the river's line}
     *
     * @param riverId key of the river
     * @param km distance from the mouth, in km; finite and not negative
     * @param decimals how many decimals were written
     */
    public PlaceReading atKm(UUID riverId, double km, int decimals) {
        double uncertainty = UNCERTAINTY_BY_DECIMALS[Math.min(decimals, UNCERTAINTY_BY_DECIMALS.length - 1)];
        return at(riverId, km * 1000, uncertainty, Bank.UNKNOWN, Optional.empty());
    }

    /**
     * {@return the place at a landmark or some way from it along the water, or a question if that lies beyond the ends of the
     * river's line}
     *
     * @param landmark the landmark
     * @param offsetMetres how far upstream of it, in metres; negative downstream
     */
    public PlaceReading atLandmark(Landmark landmark, double offsetMetres) {
        Place place = landmark.place();
        double uncertainty = settings.landmarkMetres() + SHARE_OF_OFFSET * Math.abs(offsetMetres);
        Bank bank = offsetMetres == 0 ? place.bank() : Bank.UNKNOWN;
        return at(place.riverId(), place.chainage().metres() + offsetMetres, uncertainty, bank, Optional.of(landmark));
    }

    private PlaceReading at(UUID riverId, double metres, double uncertainty, Bank bank, Optional<Landmark> landmark) {
        River river = network.river(riverId);
        Optional<Stretch> extent = network.measuredLine(riverId).map(MeasuredLine::extent);
        boolean beyond = metres < 0 || (extent.isPresent() && !withinRounding(extent.get(), metres, uncertainty));
        if (beyond) {
            return extent.isPresent()
                    ? Unclear.of("place.beyondLine", metres / 1000, river.name(), extent.get())
                    : Unclear.of("place.belowMouth", river.name());
        }
        int version = network.line(riverId).map(RiverLine::version).orElse(1);
        Chainage chainage = new Chainage(metres);
        return new Found(new Place(riverId, chainage, bank, uncertainty, version), landmark, OptionalDouble.empty());
    }

    /** A place may lie past the end of the line by no more than its own uncertainty: km 12.4 on a line of 12.38 km. */
    private static boolean withinRounding(Stretch extent, double metres, double uncertainty) {
        return metres >= extent.lower().metres() - uncertainty
                && metres <= extent.upper().metres() + uncertainty;
    }

    /**
     * {@return the landmark with this name or alias, or begun by it; a question if there is none, or more than one}
     *
     * @param name a name as somebody wrote it
     * @param offsetMetres how far upstream of it the place lies, in metres; negative downstream
     * @param riverId the river that it must lie on; empty for any
     */
    public PlaceReading atLandmark(String name, double offsetMetres, Optional<UUID> riverId) {
        List<Word> words = Word.of(name);
        LandmarkNames.Match match = landmarks.whole(words);
        if (match.words() < words.size()) {
            match = landmarks.beginning(words, word -> false);
        }
        if (match.words() < words.size() || match.words() == 0) {
            return unknown(name);
        }
        return among(name, match.landmarks(), offsetMetres, riverId);
    }

    PlaceReading among(String name, List<Landmark> named, double offsetMetres, Optional<UUID> riverId) {
        List<Landmark> onRiver = named.stream()
                .filter(landmark ->
                        riverId.isEmpty() || landmark.place().riverId().equals(riverId.get()))
                .toList();
        if (onRiver.size() == 1) {
            return atLandmark(onRiver.get(0), offsetMetres);
        }
        if (onRiver.isEmpty()) {
            return Unclear.of(
                    "place.otherRiver",
                    named.get(0).name(),
                    network.river(named.get(0).place().riverId()).name(),
                    network.river(riverId.orElseThrow()).name());
        }
        List<Found> choices = new ArrayList<>();
        for (Landmark landmark : onRiver) {
            if (atLandmark(landmark, offsetMetres) instanceof Found found) {
                choices.add(found);
            }
        }
        return new Unclear(
                Message.of(
                        "place.ambiguous",
                        name,
                        onRiver.stream().map(this::named).toList()),
                choices);
    }

    private Message named(Landmark landmark) {
        Place place = landmark.place();
        return network.rivers().size() == 1
                ? Message.of("place.landmark", landmark.name(), place.chainage())
                : Message.of(
                        "place.landmarkOnRiver",
                        landmark.name(),
                        network.river(place.riverId()).name(),
                        place.chainage());
    }

    Unclear unknown(String text) {
        List<Message> similar =
                landmarks.similar(text).stream().map(this::named).toList();
        return similar.isEmpty()
                ? Unclear.of("place.unknown", text)
                : Unclear.of("place.unknown.similar", text, similar);
    }

    /**
     * {@return the place on a river nearest to a point on the ground; a question if the point lies far from the river, past
     * the end of its line, or about as near to another place: at a tight bend or a confluence}
     *
     * @param ground the point
     * @param accuracyMetres the accuracy that came with it, in metres; empty if none
     * @param riverId the river that it must lie on; empty for the nearest
     */
    public PlaceReading atPoint(GeoPoint ground, OptionalDouble accuracyMetres, Optional<UUID> riverId) {
        double accuracy = accuracyMetres.orElse(settings.gpsMetres());
        Map<River, MeasuredLine> lines = new LinkedHashMap<>();
        Map<River, Double> offsets = new HashMap<>();
        for (River river : network.rivers()) {
            if (riverId.isEmpty() || river.id().equals(riverId.get())) {
                network.measuredLine(river.id()).ifPresent(line -> {
                    lines.put(river, line);
                    offsets.put(river, line.nearest(ground).offsetMetres());
                });
            }
        }
        if (lines.isEmpty()) {
            return Unclear.of("place.noLine");
        }
        double least = Collections.min(offsets.values());
        List<OnRiver> candidates = new ArrayList<>();
        lines.forEach((river, line) -> {
            if (offsets.getOrDefault(river, least) <= least + accuracy) {
                line.candidates(ground, accuracy).forEach(snap -> candidates.add(new OnRiver(river, snap)));
            }
        });
        candidates.sort(Comparator.comparingDouble(candidate -> candidate.snap.offsetMetres()));
        OnRiver nearest = candidates.get(0);
        double offset = nearest.snap.offsetMetres();
        candidates.removeIf(candidate -> candidate.snap.offsetMetres() > offset + accuracy);
        return judged(candidates, accuracy);
    }

    /**
     * {@return the place on a river nearest to the middle of a grid square, uncertain by half the square's diagonal; a
     * question as for a point, except that a river that may pass through the square is near enough}
     *
     * @param square the square
     * @param riverId the river that it must lie on; empty for the nearest
     */
    public PlaceReading atSquare(GridSquare square, Optional<UUID> riverId) {
        double radius = square.radiusMetres();
        PlaceSettings within = new PlaceSettings(
                Math.max(settings.acceptMetres(), radius),
                Math.max(settings.askMetres(), radius),
                settings.landmarkMetres(),
                settings.gpsMetres());
        return new Places(network, landmarks, within).atPoint(square.centre(), OptionalDouble.of(radius), riverId);
    }

    private record OnRiver(River river, Snap snap) {
        Message words() {
            return Message.of("place.onRiver", river.name(), snap.chainage(), snap.offsetMetres());
        }
    }

    private PlaceReading judged(List<OnRiver> candidates, double accuracy) {
        OnRiver nearest = candidates.get(0);
        double offset = nearest.snap.offsetMetres();
        if (offset > settings.askMetres()) {
            return Unclear.of("place.held", nearest.words(), settings.askMetres());
        }
        List<Found> choices =
                candidates.stream().map(candidate -> found(candidate, accuracy)).toList();
        if (choices.size() > 1) {
            return new Unclear(
                    Message.of(
                            "place.severalNear",
                            candidates.stream().map(OnRiver::words).toList()),
                    choices);
        }
        if (nearest.snap.beyond().isPresent() && offset > accuracy) {
            return new Unclear(Message.of("place.pastEnd", nearest.words()), choices);
        }
        return offset > settings.acceptMetres()
                ? new Unclear(Message.of("place.ask", nearest.words(), settings.acceptMetres()), choices)
                : choices.get(0);
    }

    private Found found(OnRiver candidate, double accuracy) {
        UUID riverId = candidate.river.id();
        int version = network.line(riverId).map(RiverLine::version).orElseThrow();
        Place place = new Place(riverId, candidate.snap.chainage(), Bank.UNKNOWN, accuracy, version);
        return new Found(place, Optional.empty(), OptionalDouble.of(candidate.snap.offsetMetres()));
    }
}
