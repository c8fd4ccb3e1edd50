package org.ouzelbook.ui.app.leak;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Finds coordinates near a nest: any two numbers beside each other, in either order, whatever they are called; degrees with minutes
 * and seconds; and pairs of doubles in a binary file.
 *
 * <p>A point by itself tells a nest if it is nearer to it than half a public cell, is written to 0.001° or finer, and is no place that
 * anybody may know. A point of a line does if it lies on the nest and belongs to no public line. Two numbers side by side that are
 * exactly a place that anybody may know are that, and neither of them makes another place with a third number, such as a river km.
 */
final class CoordinateSearch {
    /** Latitude and longitude of some receivers, in ten millionths of a degree. */
    private static final Pattern TEN_MILLIONTHS = Pattern.compile(
            "(?i)lat[a-z0-9]*\"?\\s*[:=]\\s*\"?(-?\\d{7,10})\\b[^-\\d]{1,40}lo?ng?[a-z0-9]*\"?\\s*[:=]\\s*\"?(-?\\d{7,10})\\b");

    private static final double TEN_MILLION = 1e7;

    /** Words that say that a number is one half of a point. */
    private static final Pattern HALF_OF_A_POINT = Pattern.compile("(?is)[^}\\]]*\\bl(?:at|on|ng)[a-z]*[^a-z0-9]*");

    private static final Pattern CELL = Pattern.compile("[-+]?\\d{1,3}\\.\\d{1,15}");

    private static final Set<String> LATITUDES = Set.of("lat", "latitude", "decimallatitude", "y");
    private static final Set<String> LONGITUDES = Set.of("lon", "lng", "long", "longitude", "decimallongitude", "x");

    private static final int FINE_DECIMALS = 3;
    private static final int EXACT_DECIMALS = 5;
    private static final int FINEST_DECIMALS = 7;
    private static final int MOST_BETWEEN = 48;
    private static final int NEIGHBOURS = 2;
    private static final double LINE_STEP_METRES = 300;
    private static final double ON_THE_NEST_METRES = 1.5;
    private static final double PUBLIC_METRES = 2;
    private static final int LINE_POINTS = 3;

    /** Where a line may be broken off, two points, or the halves of two, are one. */
    private static final int SHORTEST_LINE = 2;

    private static final double LARGEST_BOX_DEGREES = 0.2;

    /** Rounding moves a point along both axes. */
    private static final double ACROSS = 1.2;

    private final NestPlaces places;

    CoordinateSearch(NestPlaces places) {
        this.places = places;
    }

    /** A number in a text. */
    private static final class Figure {
        private final double value;
        private final boolean hasSide;
        private final int decimals;
        private final int at;
        private final int end;

        /** The number beside it with which it is a public place. */
        private Optional<Figure> other = Optional.empty();

        Figure(Angles.Angle angle) {
            value = angle.value();
            hasSide = angle.hasSide();
            decimals = angle.decimals();
            at = angle.at();
            end = angle.end();
        }

        void isPlaceWith(Figure beside) {
            other = Optional.of(beside);
            beside.other = Optional.of(this);
        }

        boolean isFreeFor(Figure third) {
            return other.isEmpty() || other.get() == third;
        }
    }

    /**
     * Two numbers that may be a point.
     *
     * @param free whether neither of them is half of another place
     */
    private record Pair(double latitude, double longitude, int decimals, int at, int order, boolean free) {
        boolean isNear(Pair other) {
            return order == other.order
                    && NestPlaces.distance(latitude, longitude, other.latitude, other.longitude) <= LINE_STEP_METRES;
        }
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
        for (Angles.Way way : Angles.WAYS) {
            judge(pairs(text, way), LINE_POINTS, hit);
        }
        Matcher millionths = TEN_MILLIONTHS.matcher(text);
        while (millionths.find()) {
            point(
                    Double.parseDouble(millionths.group(1)) / TEN_MILLION,
                    Double.parseDouble(millionths.group(2)) / TEN_MILLION,
                    FINEST_DECIMALS,
                    millionths.start(),
                    hit);
        }
    }

    /** Looks at the latitude and the longitude of a row whose cells stand under these names, however far apart. */
    void inTable(List<String> header, List<String> row, BiConsumer<Integer, NestPlaces.Nest> hit) {
        Optional<Angles.Angle> latitude = angle(header, row, LATITUDES);
        Optional<Angles.Angle> longitude = angle(header, row, LONGITUDES);
        if (latitude.isPresent() && longitude.isPresent()) {
            int decimals = Math.max(latitude.get().decimals(), longitude.get().decimals());
            point(latitude.get().value(), longitude.get().value(), decimals, 0, hit);
        }
    }

    private static Optional<Angles.Angle> angle(List<String> header, List<String> row, Set<String> names) {
        for (int i = 0; i < Math.min(header.size(), row.size()); i++) {
            String cell = names.contains(header.get(i)) ? row.get(i).strip().replace(',', '.') : "";
            if (CELL.matcher(cell).matches()) {
                int decimals = cell.length() - cell.indexOf('.') - 1;
                return Optional.of(new Angles.Angle(Double.parseDouble(cell), false, decimals, 0, 0));
            }
        }
        return Optional.empty();
    }

    private void point(
            double latitude, double longitude, int decimals, int at, BiConsumer<Integer, NestPlaces.Nest> hit) {
        if (decimals >= FINE_DECIMALS) {
            judge(new Pair(latitude, longitude, decimals, at, 0, true), false).ifPresent(nest -> hit.accept(at, nest));
        }
    }

    /** Neighbours, and those with one number between them, as an altitude or a style may stand there; of them those near nests. */
    private List<Pair> pairs(CharSequence text, Angles.Way way) {
        List<Pair> pairs = new ArrayList<>();
        Deque<Figure> before = new ArrayDeque<>();
        Matcher matcher = way.pattern().matcher(text);
        while (matcher.find()) {
            Figure figure = new Figure(way.read().apply(matcher));
            if (!before.isEmpty() && isPublic(text, before.getLast(), figure)) {
                figure.isPlaceWith(before.getLast());
            }
            // only now is it known whether the last number belongs to this one
            pairUp(text, before, pairs);
            before.addLast(figure);
            if (before.size() > NEIGHBOURS + 1) {
                before.removeFirst();
            }
        }
        pairUp(text, before, pairs);
        return pairs;
    }

    private boolean isPublic(CharSequence text, Figure one, Figure other) {
        int decimals = Math.max(one.decimals, other.decimals);
        double metres = PUBLIC_METRES + ACROSS * rounding(decimals);
        // most numbers are no place at all, and that is known sooner than what stands between them
        return decimals >= EXACT_DECIMALS
                && one.other.isEmpty()
                && (places.isPublic(one.value, other.value, metres) || places.isPublic(other.value, one.value, metres))
                && areTogether(text, one.end, other.at);
    }

    /** Pairs the last number with those before it. */
    private void pairUp(CharSequence text, Deque<Figure> figures, List<Pair> pairs) {
        for (Figure earlier : figures) {
            Figure last = figures.getLast();
            if (earlier != last) {
                pair(text, earlier, last, pairs);
            }
        }
    }

    private void pair(CharSequence text, Figure one, Figure other, List<Pair> pairs) {
        // a last zero may have been left out of one of them
        int decimals = Math.max(one.decimals, other.decimals);
        if (decimals < FINE_DECIMALS) {
            return;
        }
        boolean free = one.isFreeFor(other) && other.isFreeFor(one);
        boolean hasSide = one.hasSide || other.hasSide;
        List<Pair> near = new ArrayList<>(0);
        for (int signs = 0; signs < (hasSide ? 4 : 1); signs++) {
            double first = (signs & 1) == 0 ? one.value : -one.value;
            double second = (signs & 2) == 0 ? other.value : -other.value;
            add(near, new Pair(first, second, decimals, one.at, 0, free));
            add(near, new Pair(second, first, decimals, one.at, 1, free));
        }
        if (!near.isEmpty() && areTogether(text, one.end, other.at)) {
            pairs.addAll(near);
        }
    }

    /** Limits of a box stand as two numbers along one axis and two along the other. */
    private static boolean isInABox(ByteBuffer buffer, int at, double one, double other) {
        return at >= Double.BYTES
                && at + 3 * Double.BYTES <= buffer.limit()
                && Math.abs(buffer.getDouble(at - Double.BYTES) - one) < LARGEST_BOX_DEGREES
                && Math.abs(buffer.getDouble(at + 2 * Double.BYTES) - other) < LARGEST_BOX_DEGREES;
    }

    /** Two numbers of one point stand close together, and no bracket closes between them. */
    private static boolean areTogether(CharSequence text, int end, int start) {
        if (start - end > MOST_BETWEEN) {
            return false;
        }
        String between = text.subSequence(end, start).toString();
        if (HALF_OF_A_POINT.matcher(between).matches()) {
            return true;
        }
        boolean newRow =
                between.indexOf('\n') >= 0 && !between.replace(',', ' ').isBlank();
        boolean lineEnd = between.indexOf('\n') >= 0 && between.indexOf(',') < 0;
        return !newRow
                && !lineEnd
                && between.indexOf(']') < 0
                && between.indexOf('}') < 0
                && !between.contains("coordinates");
    }

    private void add(List<Pair> pairs, Pair pair) {
        if (Math.abs(pair.latitude) <= 90
                && Math.abs(pair.longitude) <= 180
                && places.near(pair.latitude, pair.longitude, NestPlaces.NEAR_METRES + LINE_STEP_METRES)
                        .isPresent()) {
            pairs.add(pair);
        }
    }

    private void judge(List<Pair> all, int linePoints, BiConsumer<Integer, NestPlaces.Nest> hit) {
        for (int order = 0; order < 2; order++) {
            int wanted = order;
            List<Pair> pairs = all.stream().filter(pair -> pair.order == wanted).toList();
            for (int i = 0; i < pairs.size(); i++) {
                Pair pair = pairs.get(i);
                if (pair.free) {
                    judge(pair, isInLine(pairs, i, linePoints)).ifPresent(nest -> hit.accept(pair.at, nest));
                }
            }
        }
    }

    private static boolean isInLine(List<Pair> pairs, int position, int linePoints) {
        int run = 1;
        for (int i = position; i > 0 && run < linePoints && pairs.get(i).isNear(pairs.get(i - 1)); i--) {
            run++;
        }
        for (int i = position;
                i < pairs.size() - 1 && run < linePoints && pairs.get(i).isNear(pairs.get(i + 1));
                i++) {
            run++;
        }
        return run >= linePoints;
    }

    /** {@return by how many metres a place may be off that is written to so many decimals of a degree} */
    private static double rounding(int decimals) {
        return 0.5 * Math.pow(10, -Math.min(decimals, FINEST_DECIMALS)) * 111_195;
    }

    private Optional<NestPlaces.Nest> judge(Pair pair, boolean inLine) {
        double rounding = rounding(pair.decimals);
        // few places lie near a nest, and many near a public one
        if (inLine) {
            return places.near(pair.latitude, pair.longitude, ON_THE_NEST_METRES + rounding)
                    .filter(nest -> !places.isOnPublicLine(pair.latitude, pair.longitude, PUBLIC_METRES + rounding));
        }
        return places.near(pair.latitude, pair.longitude, NestPlaces.NEAR_METRES)
                .filter(nest -> !places.isPublic(pair.latitude, pair.longitude, PUBLIC_METRES + ACROSS * rounding));
    }

    /**
     * Looks through bytes for pairs of doubles, of either byte order.
     *
     * @param bytes the bytes
     * @param broken whether lines may be broken off, so that a point of a public line may stand by itself
     * @param hit hears the place in them, and the nest
     */
    void inBytes(byte[] bytes, boolean broken, BiConsumer<Integer, NestPlaces.Nest> hit) {
        if (places.nests().isEmpty()) {
            return;
        }
        for (ByteOrder order : List.of(ByteOrder.LITTLE_ENDIAN, ByteOrder.BIG_ENDIAN)) {
            ByteBuffer buffer = ByteBuffer.wrap(bytes).order(order);
            for (int phase = 0; phase < Double.BYTES; phase++) {
                List<Pair> pairs = new ArrayList<>();
                for (int i = phase; i + 2 * Double.BYTES <= bytes.length; i += Double.BYTES) {
                    double one = buffer.getDouble(i);
                    double other = buffer.getDouble(i + Double.BYTES);
                    if (Math.abs(one) <= 180
                            && Math.abs(other) <= 180
                            && Math.abs(one) + Math.abs(other) > 1e-6
                            && !isInABox(buffer, i, one, other)) {
                        add(pairs, new Pair(one, other, FINEST_DECIMALS, i, 0, true));
                        add(pairs, new Pair(other, one, FINEST_DECIMALS, i, 1, true));
                    }
                }
                judge(pairs, broken ? SHORTEST_LINE : LINE_POINTS, hit);
            }
        }
    }
}
