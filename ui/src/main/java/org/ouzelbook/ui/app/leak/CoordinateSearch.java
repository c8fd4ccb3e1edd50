package org.ouzelbook.ui.app.leak;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Function;
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
    private static final Pattern NUMBER = Pattern.compile("(?<![\\w.])[-−+]?\\d{1,3}(?:\\.\\d+)?(?!\\w|\\.\\d)");
    private static final Pattern WITH_COMMA = Pattern.compile("(?<![\\w.,])[-−+]?\\d{1,3},\\d{3,}(?!\\w|[.,]\\d)");

    private static final Pattern SEXAGESIMAL = Pattern.compile(
            "(\\d{1,3})\\s*°\\s*(\\d{1,2}(?:[.,]\\d+)?)\\s*['′’]\\s*(?:(\\d{1,2}(?:[.,]\\d+)?)\\s*(?:[\"″”]|''))?\\s*([NSEWnsew])");

    private static final int FINE_DECIMALS = 3;
    private static final int EXACT_DECIMALS = 5;
    private static final int FINEST_DECIMALS = 7;
    private static final int MOST_BETWEEN = 48;
    private static final int NEIGHBOURS = 2;
    private static final double LINE_STEP_METRES = 300;
    private static final double ON_THE_NEST_METRES = 1.5;
    private static final double PUBLIC_METRES = 2;
    private static final int LINE_POINTS = 3;

    /** Rounding moves a point along both axes. */
    private static final double ACROSS = 1.2;

    private final NestPlaces places;

    CoordinateSearch(NestPlaces places) {
        this.places = places;
    }

    /** A number in a text. */
    private static final class Figure {
        private final double value;
        private final int decimals;
        private final int at;
        private final int end;

        /** The number beside it with which it is a public place. */
        private Optional<Figure> other = Optional.empty();

        Figure(double value, int decimals, int at, int end) {
            this.value = value;
            this.decimals = decimals;
            this.at = at;
            this.end = end;
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
        judge(pairs(text, NUMBER, CoordinateSearch::figure), hit);
        judge(pairs(text, WITH_COMMA, CoordinateSearch::figure), hit);
        judge(pairs(text, SEXAGESIMAL, CoordinateSearch::sexagesimal), hit);
    }

    private static Figure figure(Matcher number) {
        String written = number.group().replace(',', '.').replace('−', '-');
        int point = written.indexOf('.');
        int decimals = point < 0 ? 0 : written.length() - point - 1;
        return new Figure(Double.parseDouble(written), decimals, number.start(), number.end());
    }

    private static Figure sexagesimal(Matcher angle) {
        double degrees = number(angle.group(1))
                + number(angle.group(2)) / 60
                + (angle.group(3) == null ? 0 : number(angle.group(3)) / 3600);
        boolean below = "SWsw".contains(angle.group(4));
        // a second of arc is 31 m: between three and four decimals of a degree
        int decimals = angle.group(3) != null || angle.group(2).length() > 2 ? FINE_DECIMALS + 1 : 2;
        return new Figure(below ? -degrees : degrees, decimals, angle.start(), angle.end());
    }

    private static double number(String text) {
        return Double.parseDouble(text.replace(',', '.'));
    }

    /** Neighbours, and those with one number between them, as an altitude or a style may stand there; of them those near nests. */
    private List<Pair> pairs(CharSequence text, Pattern pattern, Function<Matcher, Figure> read) {
        List<Pair> pairs = new ArrayList<>();
        Deque<Figure> before = new ArrayDeque<>();
        Matcher matcher = pattern.matcher(text);
        while (matcher.find()) {
            Figure figure = read.apply(matcher);
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
        return decimals >= EXACT_DECIMALS
                && one.other.isEmpty()
                && areTogether(text, one.end, other.at)
                && (places.isPublic(one.value, other.value, metres) || places.isPublic(other.value, one.value, metres));
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
        if (decimals >= FINE_DECIMALS && areTogether(text, one.end, other.at)) {
            boolean free = one.isFreeFor(other) && other.isFreeFor(one);
            add(pairs, new Pair(one.value, other.value, decimals, one.at, 0, free));
            add(pairs, new Pair(other.value, one.value, decimals, one.at, 1, free));
        }
    }

    /** Two numbers of one point stand close together, and no bracket closes between them. */
    private static boolean areTogether(CharSequence text, int end, int start) {
        if (start - end > MOST_BETWEEN) {
            return false;
        }
        String between = text.subSequence(end, start).toString();
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

    private void judge(List<Pair> all, BiConsumer<Integer, NestPlaces.Nest> hit) {
        judgeOrder(all.stream().filter(pair -> pair.order == 0).toList(), hit);
        judgeOrder(all.stream().filter(pair -> pair.order == 1).toList(), hit);
    }

    private void judgeOrder(List<Pair> pairs, BiConsumer<Integer, NestPlaces.Nest> hit) {
        for (int i = 0; i < pairs.size(); i++) {
            Pair pair = pairs.get(i);
            if (pair.free) {
                judge(pair, isInLine(pairs, i)).ifPresent(nest -> hit.accept(pair.at, nest));
            }
        }
    }

    private static boolean isInLine(List<Pair> pairs, int position) {
        int run = 1;
        for (int i = position; i > 0 && run < LINE_POINTS && pairs.get(i).isNear(pairs.get(i - 1)); i--) {
            run++;
        }
        for (int i = position;
                i < pairs.size() - 1 && run < LINE_POINTS && pairs.get(i).isNear(pairs.get(i + 1));
                i++) {
            run++;
        }
        return run >= LINE_POINTS;
    }

    /** {@return by how many metres a place may be off that is written to so many decimals of a degree} */
    private static double rounding(int decimals) {
        return 0.5 * Math.pow(10, -Math.min(decimals, FINEST_DECIMALS)) * 111_195;
    }

    private Optional<NestPlaces.Nest> judge(Pair pair, boolean inLine) {
        double rounding = rounding(pair.decimals);
        if (inLine) {
            return places.isOnPublicLine(pair.latitude, pair.longitude, PUBLIC_METRES + rounding)
                    ? Optional.empty()
                    : places.near(pair.latitude, pair.longitude, ON_THE_NEST_METRES + rounding);
        }
        return places.isPublic(pair.latitude, pair.longitude, PUBLIC_METRES + ACROSS * rounding)
                ? Optional.empty()
                : places.near(pair.latitude, pair.longitude, NestPlaces.NEAR_METRES);
    }

    /**
     * Looks through bytes for pairs of doubles, of either byte order.
     *
     * @param bytes the bytes
     * @param hit hears the place in them, and the nest
     */
    void inBytes(byte[] bytes, BiConsumer<Integer, NestPlaces.Nest> hit) {
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
                    if (Math.abs(one) <= 180 && Math.abs(other) <= 180 && Math.abs(one) + Math.abs(other) > 1e-6) {
                        add(pairs, new Pair(one, other, FINEST_DECIMALS, i, 0, true));
                        add(pairs, new Pair(other, one, FINEST_DECIMALS, i, 1, true));
                    }
                }
                judge(pairs, hit);
            }
        }
    }
}
