package org.ouzelbook.ui.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.ouzelbook.tracker.domain.LandmarkKind;
import org.ouzelbook.ui.strip.Ink;
import org.ouzelbook.ui.strip.Pencil;
import org.ouzelbook.ui.strip.Point;
import org.ouzelbook.ui.strip.Shape;
import org.ouzelbook.ui.strip.Shape.Anchor;
import org.ouzelbook.ui.strip.Shape.Lettering;

/**
 * The names at the side of a field sheet: each as near its place as its neighbours leave room, on several lines where it is long,
 * and cut only where many crowd together.
 */
final class SheetNames {
    /** From a line of a name to the next. */
    private static final double LINE = 16;

    /** Between two names on more than one line. */
    private static final double APART = 6;

    private static final int MOST_LINES = 4;

    /** A name farther from its place would seem to belong to another. */
    private static final double FARTHEST = 40;

    private final List<Name> names;
    private final double right;
    private final double top;
    private final double bottom;

    /**
     * @param names what is named, from the top
     * @param right where the names end; they begin at 0 or right of it
     * @param top the highest place of a name
     * @param bottom the lowest place of a name
     */
    SheetNames(List<Name> names, double right, double top, double bottom) {
        this.names = List.copyOf(names);
        this.right = right;
        this.top = top;
        this.bottom = bottom;
    }

    /**
     * Something at the water that has a name.
     *
     * @param y where it is, from the top of the drawing
     * @param text its name
     * @param kind what it is
     */
    record Name(double y, String text, LandmarkKind kind) {}

    /** A name on its lines, with its middle at a place. */
    private record Placed(Name name, List<String> lines, double at) {
        private double half() {
            return lines.size() * LINE / 2;
        }
    }

    /** {@return the names, each with a short line that leads to its place} */
    List<Shape> shapes() {
        List<Shape> shapes = new ArrayList<>();
        for (Placed placed : placed()) {
            double first = placed.at() - (placed.lines().size() - 1) * LINE / 2;
            for (int i = 0; i < placed.lines().size(); i++) {
                shapes.add(label(placed.lines().get(i), first + i * LINE + 4.5).within(right));
            }
            shapes.add(new Shape.Line(
                    new Point(right + 4, placed.at()),
                    new Point(right + 16, placed.name().y()),
                    new Pencil(Ink.INK, 1, false)));
        }
        return shapes;
    }

    /** On as many lines as all have room for. */
    private List<Placed> placed() {
        for (int lines = MOST_LINES; lines > 1; lines--) {
            List<Placed> placed = placed(lines);
            boolean fits = placed.stream()
                    .allMatch(one -> one.at() - one.half() >= top - LINE / 2
                            && Math.abs(one.at() - one.name().y()) <= FARTHEST);
            if (fits) {
                return placed;
            }
        }
        return placed(1);
    }

    private List<Placed> placed(int mostLines) {
        List<Placed> wanted = names.stream()
                .map(name -> new Placed(name, lines(name.text(), mostLines), name.y()))
                .toList();
        double[] places = wanted.stream().mapToDouble(Placed::at).toArray();
        for (int i = 1; i < places.length; i++) {
            places[i] = Math.max(places[i], places[i - 1] + between(wanted.get(i - 1), wanted.get(i)));
        }
        double lowest = bottom;
        for (int i = places.length - 1; i >= 0; i--) {
            double below = i == places.length - 1 ? 0 : between(wanted.get(i), wanted.get(i + 1));
            double last = i == places.length - 1 ? bottom - wanted.get(i).half() + LINE / 2 : lowest - below;
            places[i] = Math.min(places[i], last);
            lowest = places[i];
        }
        return IntStream.range(0, places.length)
                .mapToObj(i -> new Placed(wanted.get(i).name(), wanted.get(i).lines(), places[i]))
                .toList();
    }

    private static double between(Placed upper, Placed lower) {
        boolean oneLine = upper.lines().size() + lower.lines().size() == 2;
        return upper.half() + lower.half() + (oneLine ? 0 : APART);
    }

    /** The name on no more than so many lines, parted after blanks and hyphens; one that has no room is cut when it is drawn. */
    private List<String> lines(String name, int most) {
        List<String> lines = new ArrayList<>();
        String rest = name.strip();
        while (!rest.isEmpty()) {
            int end = lines.size() == most - 1 ? rest.length() : endOfLine(rest);
            lines.add(rest.substring(0, end).strip());
            rest = rest.substring(end).strip();
        }
        return lines;
    }

    /** Where the first line of a text ends: after its last word that has room, or inside its first one. */
    private int endOfLine(String text) {
        int end = 0;
        for (int i = 1; i <= text.length() && fits(text.substring(0, i).strip()); i++) {
            boolean mayPart = i == text.length() || text.charAt(i) == ' ' || text.charAt(i - 1) == '-';
            end = mayPart ? i : end;
        }
        if (end > 0) {
            return end;
        }
        int word = text.indexOf(' ');
        return word < 0 ? text.length() : word;
    }

    private boolean fits(String text) {
        return label(text, 0).bounds().width() <= right;
    }

    private Shape.Label label(String text, double y) {
        return new Shape.Label(new Point(right, y), text, Anchor.END, Lettering.BODY, Ink.INK);
    }
}
