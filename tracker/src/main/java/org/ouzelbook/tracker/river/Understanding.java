package org.ouzelbook.tracker.river;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Keys;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.river.RiverAnswers.Mouth;
import org.ouzelbook.tracker.river.UnderstoodRiver.MouthBy;

/** The work of understanding drawn rivers; see {@link UnderstoodRivers}. */
final class Understanding {
    /** A mouth farther than this from the river that it joins is refused; a nearer end is proposed. Common practice, no source. */
    private static final double NEAR_METRES = 250;

    /** No river of the earth is longer. */
    private static final double LONGEST_METRES = 8_000_000;

    private final RiverAnswers answers;
    private final Map<String, DrawnRiver> drawn = new LinkedHashMap<>();
    private final Map<String, ChainedLine> chained = new LinkedHashMap<>();
    private final Map<String, MeasuredLine> measured = new HashMap<>();
    private final Map<String, UnderstoodRiver> understood = new LinkedHashMap<>();
    private final List<Message> questions = new ArrayList<>();

    Understanding(List<DrawnRiver> rivers, RiverAnswers answers) {
        this.answers = answers;
        rivers.forEach(river -> drawn.put(key(river.name()), river));
    }

    private static String key(String name) {
        return name.strip().toLowerCase(Locale.ROOT);
    }

    UnderstoodRivers done() {
        answers.mouthAt().keySet().stream().filter(name -> !name.isBlank()).forEach(this::refuseUnknown);
        answers.joins().keySet().forEach(this::refuseUnknown);
        drawn.values().forEach(this::chain);
        if (questions.isEmpty()) {
            proposeJoins();
        }
        if (questions.isEmpty()) {
            drawn.values().stream()
                    .filter(river -> receiving(river).isEmpty())
                    .forEach(river -> orient(river, Optional.empty()));
            int before = -1;
            while (before < understood.size()) {
                before = understood.size();
                drawn.values().forEach(this::orientTributary);
            }
        }
        if (questions.isEmpty() && understood.size() < drawn.size()) {
            questions.add(Message.of(
                    "river.circle",
                    drawn.values().stream()
                            .filter(river -> !understood.containsKey(key(river.name())))
                            .map(DrawnRiver::name)
                            .toList()));
        }
        return new UnderstoodRivers(List.copyOf(understood.values()), questions);
    }

    private void refuseUnknown(String name) {
        if (!drawn.containsKey(key(name))) {
            questions.add(Message.of("river.unknown", name, names()));
        }
    }

    private List<String> names() {
        return drawn.values().stream().map(DrawnRiver::name).toList();
    }

    private void chain(DrawnRiver river) {
        Optional<ChainedLine> all = ChainedLine.of(
                river.pieces(), answers.leaveGaps() ? answers.widestGapMetres() : Double.POSITIVE_INFINITY);
        if (all.isEmpty()) {
            questions.add(Message.of("river.noLength", river.name()));
            return;
        }
        ChainedLine line = all.get();
        double length = MeasuredLine.length(line.points());
        if (length > LONGEST_METRES) {
            questions.add(Message.of("river.tooLong", river.name(), length / 1000));
            return;
        }
        receiving(river).ifPresent(this::refuseUnknown);
        chained.put(key(river.name()), line);
    }

    private Optional<String> receiving(DrawnRiver river) {
        for (Map.Entry<String, Optional<String>> said : answers.joins().entrySet()) {
            if (key(said.getKey()).equals(key(river.name()))) {
                return said.getValue();
            }
        }
        return river.mouthOn();
    }

    private boolean isSettled(DrawnRiver river) {
        return river.mouthOn().isPresent()
                || answers.joins().keySet().stream().anyMatch(name -> key(name).equals(key(river.name())));
    }

    /** Asks whether a river joins another that one of its ends comes near to. */
    private void proposeJoins() {
        for (DrawnRiver river : drawn.values()) {
            if (isSettled(river)) {
                continue;
            }
            drawn.values().stream()
                    .filter(other -> !other.equals(river) && isSettledOrLonger(other, river))
                    .map(other -> new Proposal(other, nearestEnd(line(river).points(), measured(other))))
                    .filter(proposal -> proposal.end.offsetMetres() <= NEAR_METRES)
                    .min(Comparator.comparingDouble(proposal -> proposal.end.offsetMetres()))
                    .ifPresent(proposal -> questions.add(Message.of(
                            "river.joins", river.name(), proposal.other.name(), proposal.end.offsetMetres())));
        }
    }

    private record Proposal(DrawnRiver other, Snap end) {}

    private boolean isSettledOrLonger(DrawnRiver other, DrawnRiver river) {
        boolean joinsThis = receiving(other)
                .filter(name -> key(name).equals(key(river.name())))
                .isPresent();
        return !joinsThis && measured(other).length() > measured(river).length();
    }

    private ChainedLine line(DrawnRiver river) {
        return Objects.requireNonNull(chained.get(key(river.name())));
    }

    private MeasuredLine measured(DrawnRiver river) {
        return measured.computeIfAbsent(
                key(river.name()), name -> MeasuredLine.of(line(river).points()));
    }

    private static Snap nearestEnd(List<GeoPoint> points, MeasuredLine receiving) {
        Snap first = receiving.nearest(points.get(0));
        Snap last = receiving.nearest(points.get(points.size() - 1));
        return first.offsetMetres() <= last.offsetMetres() ? first : last;
    }

    private void orientTributary(DrawnRiver river) {
        Optional<UnderstoodRiver> receiving =
                receiving(river).flatMap(name -> Optional.ofNullable(understood.get(key(name))));
        if (receiving.isPresent() && !understood.containsKey(key(river.name()))) {
            orient(river, receiving);
        }
    }

    private void orient(DrawnRiver river, Optional<UnderstoodRiver> receiving) {
        List<GeoPoint> points = line(river).points();
        Optional<Mouth> told = told(river, receiving.isPresent());
        boolean mouthFirst;
        MouthBy by;
        if (told.isPresent()) {
            mouthFirst = isFirst(told.get(), points);
            by = MouthBy.TOLD;
        } else if (receiving.isPresent()) {
            MeasuredLine other = MeasuredLine.of(receiving.get().line());
            double first = other.nearest(points.get(0)).offsetMetres();
            double last = other.nearest(points.get(points.size() - 1)).offsetMetres();
            if (Math.max(first, last) <= NEAR_METRES) {
                questions.add(Message.of(
                        "river.bothEndsNear",
                        river.name(),
                        receiving.get().river().name()));
            }
            mouthFirst = first < last;
            by = MouthBy.JOINS;
        } else {
            if (river.walked()) {
                questions.add(Message.of("river.walked", river.name()));
            }
            mouthFirst = false;
            by = MouthBy.DRAWN_DOWNSTREAM;
        }
        List<GeoPoint> upstream = new ArrayList<>(points);
        if (!mouthFirst) {
            Collections.reverse(upstream);
        }
        understand(river, receiving, upstream, by);
    }

    private Optional<Mouth> told(DrawnRiver river, boolean isTributary) {
        for (Map.Entry<String, Mouth> said : answers.mouthAt().entrySet()) {
            if (key(said.getKey()).equals(key(river.name()))) {
                return Optional.of(said.getValue());
            }
        }
        return isTributary
                ? Optional.empty()
                : Optional.ofNullable(answers.mouthAt().get(""));
    }

    private static boolean isFirst(Mouth mouth, List<GeoPoint> points) {
        if (mouth instanceof Mouth.Near near) {
            return Earth.distance(near.point(), points.get(0))
                    <= Earth.distance(near.point(), points.get(points.size() - 1));
        }
        return mouth instanceof Mouth.First;
    }

    private static boolean reachesWithAxesSwapped(List<GeoPoint> points, MeasuredLine other) {
        return Stream.of(points.get(0), points.get(points.size() - 1))
                .filter(end -> Math.abs(end.longitude()) <= 90)
                .map(end -> new GeoPoint(end.longitude(), end.latitude()))
                .anyMatch(end -> other.nearest(end).offsetMetres() <= NEAR_METRES);
    }

    private void understand(
            DrawnRiver drawing, Optional<UnderstoodRiver> receiving, List<GeoPoint> upstream, MouthBy by) {
        UUID id = Keys.next();
        RiverLine line = new RiverLine(id, 1, Chainage.ofKm(drawing.kmOrigin()), upstream, drawing.source());
        MeasuredLine measured = MeasuredLine.of(line);
        Optional<MeasuredLine> other = receiving.map(joined -> MeasuredLine.of(joined.line()));
        Optional<Snap> mouth = other.map(joined -> joined.nearest(upstream.get(0)));
        if (mouth.isPresent() && drawing.kmOrigin() == 0 && mouth.get().offsetMetres() > NEAR_METRES) {
            questions.add(Message.of(
                    reachesWithAxesSwapped(upstream, other.orElseThrow()) ? "river.axesSwapped" : "river.mouthFar",
                    drawing.name(),
                    receiving.get().river().name(),
                    mouth.get().offsetMetres(),
                    NEAR_METRES));
        }
        River river = new River(
                id,
                drawing.name().strip(),
                mouth.map(snap -> new River.Confluence(receiving.get().river().id(), snap.chainage())));
        ChainedLine chain = line(drawing);
        List<UnderstoodRiver.Gap> gaps = chain.gaps().stream()
                .map(gap -> {
                    Chainage from = measured.nearest(gap.from()).chainage();
                    Chainage to = measured.nearest(gap.to()).chainage();
                    return new UnderstoodRiver.Gap(from.compareTo(to) <= 0 ? from : to, gap.metres());
                })
                .sorted(Comparator.comparing(UnderstoodRiver.Gap::at))
                .toList();
        for (UnderstoodRiver.Gap gap : gaps) {
            if (gap.metres() > answers.widestGapMetres()) {
                questions.add(Message.of("river.gap", drawing.name(), gap.metres(), gap.at(), Math.ceil(gap.metres())));
            }
        }
        understood.put(
                key(drawing.name()),
                new UnderstoodRiver(
                        river,
                        line,
                        measured.length(),
                        by,
                        chain.pieces(),
                        chain.turned(),
                        gaps,
                        chain.leftOutMetres(),
                        mouth.map(Snap::offsetMetres)));
    }
}
