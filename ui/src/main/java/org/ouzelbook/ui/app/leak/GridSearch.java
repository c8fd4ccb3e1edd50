package org.ouzelbook.ui.app.leak;

import java.util.Locale;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.grid.GridReading;
import org.ouzelbook.tracker.grid.GridReference;
import org.ouzelbook.tracker.grid.GridSquare;

/**
 * Finds the squares of nests: grid references of 100 m or finer in which, or so near to which, a nest lies that they tell more than a public
 * cell; and eastings with northings in metres, whatever grid they belong to.
 */
final class GridSearch {
    private static final Pattern REFERENCE = Pattern.compile("(?<![\\p{L}\\d.])(?:"
            + "[A-HJ-Za-hj-z]{1,2} ?(?:\\d{3} ?\\d{3}|\\d{4} ?\\d{4}|\\d{5} ?\\d{5})"
            + "|\\d{1,2} ?[A-Za-z] ?[A-Za-z]{2} ?(?:\\d{3} ?\\d{3}|\\d{4} ?\\d{4}|\\d{5} ?\\d{5})"
            + "|\\d{1,2} ?[A-Za-z] \\d{6}(?:\\.\\d+)? ?m?E?[ ,;/]{1,3}\\d{6,7}(?:\\.\\d+)?"
            + "|(?i:ITM):? \\d{6} ?E?[ ,;/]{1,3}\\d{6}"
            + ")(?![\\p{L}\\d])");

    private static final Pattern METRES = Pattern.compile(
            "(?<![\\w.])(-?\\d{5,7}(?:\\.\\d+)?)(?: ?m?[EN])?[\\s,;/:\"a-zA-Z=]{1,16}?(-?\\d{5,8}(?:\\.\\d+)?)(?![\\w]|\\.\\d)");

    private static final double FINE_METRES = 100;
    private static final double ROUNDING_METRES = 5;

    private final NestPlaces places;

    GridSearch(NestPlaces places) {
        this.places = places;
    }

    /**
     * Looks through a text.
     *
     * @param text the text
     * @param hit hears the place in the text, and the nest
     */
    void inText(CharSequence text, BiConsumer<Integer, NestPlaces.Nest> hit) {
        if (places.nests().isEmpty()) {
            return;
        }
        Matcher reference = REFERENCE.matcher(text);
        while (reference.find()) {
            if (GridReference.of(reference.group().toUpperCase(Locale.ROOT)) instanceof GridReading.Read read
                    && read.square().sideMetres() <= FINE_METRES) {
                int at = reference.start();
                nest(read.square()).ifPresent(nest -> hit.accept(at, nest));
            }
        }
        Matcher metres = METRES.matcher(text);
        int from = 0;
        while (metres.find(from)) {
            int at = metres.start();
            double one = Double.parseDouble(metres.group(1));
            double other = Double.parseDouble(metres.group(2));
            nest(one, other).or(() -> nest(other, one)).ifPresent(nest -> hit.accept(at, nest));
            from = metres.end(1);
        }
    }

    private Optional<NestPlaces.Nest> nest(double east, double north) {
        for (GeoPoint point : GridReference.points(east, north, places.longitudes())) {
            Optional<NestPlaces.Nest> nest = nest(new GridSquare(point, ROUNDING_METRES));
            if (nest.isPresent()) {
                return nest;
            }
        }
        return Optional.empty();
    }

    private Optional<NestPlaces.Nest> nest(GridSquare square) {
        double latitude = square.centre().latitude();
        double longitude = square.centre().longitude();
        return places.isPublic(latitude, longitude, square.radiusMetres())
                ? Optional.empty()
                : places.near(latitude, longitude, NestPlaces.NEAR_METRES);
    }
}
