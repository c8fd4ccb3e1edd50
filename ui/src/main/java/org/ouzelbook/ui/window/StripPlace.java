package org.ouzelbook.ui.window;

import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.ui.strip.StripView;
import org.ouzelbook.ui.strip.Subject;

/**
 * Where somebody left the strip: what was shown, how near, and what was selected. Whether nests were shown is not part of it, so
 * that they are hidden again at the next start.
 *
 * @param season the season shown, or last shown
 * @param view what was shown
 * @param near the part of the river's axis that was in view; empty for all of it
 * @param selected what was selected
 */
record StripPlace(int season, StripView view, Optional<Near> near, Optional<Subject> selected) {
    private static final String APART = "|";
    private static final String INSIDE = "/";

    /**
     * A part of the river's axis.
     *
     * @param from metres at its left
     * @param to metres at its right, above {@code from}
     */
    record Near(double from, double to) {}

    /**
     * {@return a season, all of it, nothing selected}
     *
     * @param season the season
     */
    static StripPlace of(int season) {
        return new StripPlace(season, new StripView.OneSeason(season), Optional.empty(), Optional.empty());
    }

    /** {@return the same in one line of text} */
    String written() {
        return String.join(
                APART,
                String.valueOf(season),
                written(view),
                near.map(range -> range.from() + INSIDE + range.to()).orElse(""),
                selected.map(StripPlace::written).orElse(""));
    }

    private static String written(StripView view) {
        if (view instanceof StripView.OnePlace place) {
            return String.join(
                    INSIDE,
                    "place",
                    place.riverId().toString(),
                    String.valueOf(place.around().lower().metres()),
                    String.valueOf(place.around().upper().metres()),
                    URLEncoder.encode(place.name(), StandardCharsets.UTF_8));
        }
        if (view instanceof StripView.OneBird bird) {
            return "bird" + INSIDE + bird.bird();
        }
        return view instanceof StripView.AllSeasons ? "all" : "season";
    }

    /** What is not a record of its own, such as a crowd of sightings, is not kept. */
    private static String written(Subject subject) {
        if (subject instanceof Subject.OfTerritory one) {
            return String.join(
                    INSIDE,
                    "territory",
                    String.valueOf(one.season()),
                    one.riverId().toString(),
                    one.id());
        }
        if (subject instanceof Subject.OfSighting one) {
            return "sighting" + INSIDE + one.id();
        }
        if (subject instanceof Subject.OfVisit one) {
            return "visit" + INSIDE + one.id();
        }
        return subject instanceof Subject.OfLandmark one ? "landmark" + INSIDE + one.id() : "";
    }

    /**
     * {@return the place that a line of text tells; empty if it tells none}
     *
     * @param line one line
     */
    static Optional<StripPlace> read(String line) {
        String[] parts = line.split("\\|", -1);
        try {
            int season = Integer.parseInt(parts[0]);
            return parts.length < 4
                    ? Optional.of(of(season))
                    : Optional.of(new StripPlace(
                            season, view(season, fields(parts[1])), near(fields(parts[2])), subject(fields(parts[3]))));
        } catch (IllegalArgumentException | IndexOutOfBoundsException e) {
            return Optional.empty();
        }
    }

    private static List<String> fields(String part) {
        return List.of(part.split(INSIDE, -1));
    }

    private static StripView view(int season, List<String> fields) {
        return switch (fields.get(0)) {
            case "all" -> new StripView.AllSeasons();
            case "bird" -> new StripView.OneBird(UUID.fromString(fields.get(1)));
            case "place" ->
                new StripView.OnePlace(
                        UUID.fromString(fields.get(1)),
                        new Stretch(
                                new Chainage(Double.parseDouble(fields.get(2))),
                                new Chainage(Double.parseDouble(fields.get(3)))),
                        URLDecoder.decode(fields.get(4), StandardCharsets.UTF_8));
            default -> new StripView.OneSeason(season);
        };
    }

    private static Optional<Near> near(List<String> fields) {
        if (fields.size() < 2) {
            return Optional.empty();
        }
        Near range = new Near(Double.parseDouble(fields.get(0)), Double.parseDouble(fields.get(1)));
        return range.to() - range.from() > 0 && Double.isFinite(range.to() - range.from())
                ? Optional.of(range)
                : Optional.empty();
    }

    private static Optional<Subject> subject(List<String> fields) {
        return switch (fields.get(0)) {
            case "territory" ->
                Optional.of(new Subject.OfTerritory(
                        Integer.parseInt(fields.get(1)), UUID.fromString(fields.get(2)), fields.get(3)));
            case "sighting" -> Optional.of(new Subject.OfSighting(UUID.fromString(fields.get(1))));
            case "visit" -> Optional.of(new Subject.OfVisit(UUID.fromString(fields.get(1))));
            case "landmark" -> Optional.of(new Subject.OfLandmark(UUID.fromString(fields.get(1))));
            default -> Optional.empty();
        };
    }
}
