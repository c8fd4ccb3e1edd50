package org.ouzelbook.ui.strip;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.ouzelbook.ui.strip.Shape.Anchor;
import org.ouzelbook.ui.strip.Shape.Lettering;

/** Parts of a whole as lengths of one bar, each named under its own part; what is undecided is hatched. */
public final class TallyFigure {
    private static final double BAR = 26;
    private static final double LEAST = 6;
    private static final double HEIGHT = 58;

    private TallyFigure() {}

    /** What becomes of a part. */
    public enum Fate {
        /** What is new. */
        NEW(Ink.CONFIRMED),
        /** What is there already. */
        THERE(Ink.POSSIBLE),
        /** What waits for an answer. */
        OPEN(Ink.UNWALKED),
        /** What cannot be taken. */
        OUT(Ink.PAPER);

        private final Ink ink;

        Fate(Ink ink) {
            this.ink = ink;
        }
    }

    /**
     * A part.
     *
     * @param count how many; parts of none are left out
     * @param words its name with its count
     * @param fate what becomes of it
     */
    public record Part(long count, String words, Fate fate) {}

    /**
     * {@return the figure}
     *
     * @param parts the parts, in order
     * @param width width, in pixels; 200 or more
     * @param title what it is a picture of
     */
    public static Picture of(List<Part> parts, double width, String title) {
        List<Part> some = parts.stream().filter(part -> part.count() > 0).toList();
        double all = some.stream().mapToLong(Part::count).sum();
        double room = width - 1 - LEAST * some.size();
        List<Shape> shapes = new ArrayList<>();
        double x = 0.5;
        double free = 0;
        for (Part part : some) {
            double length = LEAST + room * part.count() / all;
            Rect area = new Rect(x, 0.5, length - 2, BAR);
            if (part.fate() == Fate.OPEN) {
                shapes.add(new Shape.Hatch(area));
            }
            shapes.add(new Shape.Box(
                    area,
                    0,
                    part.fate() == Fate.OPEN ? Optional.empty() : Optional.of(part.fate().ink),
                    Optional.of(Pencil.solid(part.fate() == Fate.OUT ? Ink.MUTED : part.fate().ink, 1))));
            // A name wider than its part moves on to the right, or in from the edge, and stays on the paper.
            double wide = TextWidths.of(part.words(), Lettering.SMALL);
            double at = Math.max(free, Math.min(x, width - wide));
            shapes.add(new Shape.Label(new Point(at, BAR + 20), part.words(), Anchor.START, Lettering.SMALL, Ink.INK));
            free = at + wide + 16;
            x += length;
        }
        return new Picture(
                width, HEIGHT, shapes, title, some.stream().map(Part::words).collect(Collectors.joining(", ")) + ".");
    }
}
