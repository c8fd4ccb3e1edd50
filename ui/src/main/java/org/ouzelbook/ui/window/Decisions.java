package org.ouzelbook.ui.window;

import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.Sighting;

/**
 * Lines that begin a decision about a territory of the strip, to be finished with a reason: the same words as those of the command
 * {@code decide}.
 *
 * @param riverId key of the river
 * @param river its name before each km; blank where the book has but one
 * @param territory the territory selected
 * @param neighbours the territories of its river, going upstream
 */
record Decisions(UUID riverId, String river, Territory territory, List<Territory> neighbours) {
    /** What stands before the reason of a decision. */
    static final String BECAUSE = " because ";

    /** What joins two decisions that are made at once. */
    private static final String AND = " and ";

    private static final Pattern ONE_PLACE =
            Pattern.compile("(?i)(\\s*(?:boundary|note)\\s+at\\s+)(.*?)(\\s+because\\b.*|\\s*:.*|\\s*)");
    private static final Pattern TWO_PLACES = Pattern.compile(
            "(?i)(\\s*(?:one|no)[\\s-]territory\\s+from\\s+)(.*?)(\\s+to\\s+)(.*?)(\\s+because\\b.*|\\s*:.*|\\s*)");
    private static final Pattern KM = Pattern.compile("\\d+\\.\\d+");

    Decisions {
        neighbours = List.copyOf(neighbours);
    }

    /**
     * {@return a boundary at a place}
     *
     * @param river name of the river before the km; blank where the book has but one
     * @param place where
     */
    static String boundaryAt(String river, Chainage place) {
        String km = String.format(Locale.ROOT, "%.2f", place.km());
        return "boundary at " + (river.isBlank() ? km : river + " " + km);
    }

    /**
     * {@return what the end of the territory at another place says: a boundary there, and where it was moved outwards over records of a
     * neighbour, that those are the territory’s too}
     *
     * @param upper whether it is the upper end
     * @param place where the end is to be
     */
    String end(boolean upper, Chainage place) {
        double from = (upper ? territory.stretch().upper() : territory.stretch().lower()).metres();
        double low = Math.min(from, place.metres());
        double high = Math.max(from, place.metres());
        boolean outwards = upper == (place.metres() > from);
        DoubleSummaryStatistics taken = neighbours.stream()
                .filter(other -> outwards && !other.id().equals(territory.id()))
                .flatMap(this::places)
                .filter(metres -> metres > low && metres < high)
                .mapToDouble(Double::doubleValue)
                .summaryStatistics();
        String boundary = boundaryAt(river, place);
        if (taken.getCount() == 0) {
            return boundary;
        }
        double lower = Math.min(territory.stretch().lower().metres(), taken.getMin());
        double higher = Math.max(territory.stretch().upper().metres(), taken.getMax());
        return boundary + AND + "one territory from " + stretch(lower, higher);
    }

    /** Where the records of a territory lie on this river, in metres. */
    private Stream<Double> places(Territory one) {
        return Stream.concat(
                        one.registrations().stream().map(Sighting::place),
                        one.nests().stream().map(Nest::place))
                .filter(place -> place.riverId().equals(riverId))
                .map(place -> place.chainage().metres());
    }

    /** {@return a boundary through the territory, where it is widest between two registrations} */
    String boundary() {
        List<Chainage> places = territory.registrations().stream()
                .map(Sighting::place)
                .map(place -> place.chainage())
                .filter(territory.stretch()::contains)
                .sorted()
                .toList();
        double at = (territory.stretch().lower().metres()
                        + territory.stretch().upper().metres())
                / 2;
        double widest = 0;
        for (int i = 1; i < places.size(); i++) {
            double gap = places.get(i).metres() - places.get(i - 1).metres();
            if (gap > widest) {
                widest = gap;
                at = (places.get(i).metres() + places.get(i - 1).metres()) / 2;
            }
        }
        return boundaryAt(river, new Chainage(at)) + BECAUSE;
    }

    /** {@return the territory and the next one upstream, or where it is the last, downstream, as one} */
    String one() {
        int place = neighbours.indexOf(territory);
        int other = place + 1 < neighbours.size() ? place + 1 : Math.max(0, place - 1);
        Territory next = neighbours.get(other);
        double lower = Math.min(
                territory.stretch().lower().metres(), next.stretch().lower().metres());
        double upper = Math.max(
                territory.stretch().upper().metres(), next.stretch().upper().metres());
        return "one territory from " + stretch(lower, upper) + BECAUSE;
    }

    /** {@return no territory where this one is} */
    String none() {
        return "no territory from "
                + stretch(
                        territory.stretch().lower().metres(),
                        territory.stretch().upper().metres())
                + BECAUSE;
    }

    /** {@return a note at its middle} */
    String note() {
        double middle = territory.centre().metres();
        return "note at " + km(middle) + ": ";
    }

    /** Both ends outwards to the next ten metres, so that no registration at an end is lost by rounding. */
    private String stretch(double lower, double upper) {
        double from = Math.floor(lower / 10 + 1e-6) * 10;
        double to = Math.ceil(upper / 10 - 1e-6) * 10;
        return km(from) + " to " + km(to > from ? to : from + 10);
    }

    private String km(double metres) {
        String km = String.format(Locale.ROOT, "%.2f", metres / 1000);
        return river.isBlank() ? km : river + " " + km;
    }

    /**
     * {@return a decision that is being typed, with a place of it moved: its only one, or of two the nearer; two decisions that are made at
     * once stay as they are}
     *
     * @param line what is typed
     * @param place the new place, as it is written
     */
    static String moved(String line, String place) {
        if (line.contains(AND + "one territory from ")) {
            return line;
        }
        Matcher one = ONE_PLACE.matcher(line);
        if (one.matches()) {
            return one.group(1) + place + one.group(3);
        }
        Matcher two = TWO_PLACES.matcher(line);
        if (!two.matches()) {
            return line;
        }
        boolean first = Math.abs(number(two.group(2)) - number(place)) < Math.abs(number(two.group(4)) - number(place));
        return two.group(1)
                + (first ? place : two.group(2))
                + two.group(3)
                + (first ? two.group(4) : place)
                + two.group(5);
    }

    private static double number(String place) {
        Matcher km = KM.matcher(place);
        double number = 0;
        while (km.find()) {
            number = Double.parseDouble(km.group());
        }
        return number;
    }
}
