package org.ouzelbook.ui.strip;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Shape.Anchor;
import org.ouzelbook.ui.strip.Shape.Lettering;

/**
 * What a year asks for and what was done of it: a row for each river and kind of work, the months across. What is due is a box over
 * the days on which it may be done; what was done is a dot, or a diamond for a kick sample, on its day.
 */
public final class CalendarFigure {
    private static final double TOP = 34;
    private static final double LANE = 28;
    private static final double BOX = 21;
    private static final double LEAST_BOX = 21;
    private static final double GAP = 10;
    private static final double DOT = 5;
    private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMM", Locale.ENGLISH);
    /** Room beside the last day, so that no frame is cut, in pixels. */
    private static final double MARGIN = 6;

    private static final DateTimeFormatter WHOLE_MONTH = DateTimeFormatter.ofPattern("MMMM", Locale.ENGLISH);

    private final List<Row> rows;
    private final double width;
    private final double left;
    private final LocalDate first;
    private final LocalDate end;
    private final List<Shape> shapes = new ArrayList<>();
    private final List<Placed> places = new ArrayList<>();

    private CalendarFigure(List<Row> rows, LocalDate otherwise, double width) {
        this.rows = rows;
        this.width = width;
        double labels = rows.stream()
                .mapToDouble(row -> TextWidths.of(row.label(), Lettering.STRONG))
                .max()
                .orElse(0);
        this.left = Math.min(width / 4, labels + 20);
        List<Item> items = rows.stream().flatMap(row -> row.items().stream()).toList();
        this.first = YearMonth.from(
                        items.stream().map(Item::from).min(LocalDate::compareTo).orElse(otherwise))
                .atDay(1);
        LocalDate last = items.stream().map(Item::to).max(LocalDate::compareTo).orElse(otherwise);
        LocalDate least = first.plusMonths(2);
        this.end = YearMonth.from(last.isAfter(least) ? last : least)
                .atEndOfMonth()
                .plusDays(1);
    }

    /** What an item is. */
    public enum Kind {
        /** A visit that is due. */
        VISIT_DUE,
        /** A visit that was made. */
        VISITED,
        /** A kick sample that is due. */
        SAMPLE_DUE,
        /** A kick sample that was taken. */
        SAMPLED,
        /** A look at a nest that is due. */
        NEST_DUE;

        private boolean isDone() {
            return this == VISITED || this == SAMPLED;
        }
    }

    /**
     * Something due, or done.
     *
     * @param kind what it is
     * @param from the first day
     * @param to the last day; the same as the first for what was done
     * @param mark a sign or a word in its box; blank for none
     * @param words what it is, in a sentence
     */
    public record Item(Kind kind, LocalDate from, LocalDate to, String mark, String words) {}

    /**
     * A row.
     *
     * @param label its name
     * @param items what is due and what was done, by day
     * @param remark what is said where nothing is drawn; blank for nothing
     */
    public record Row(String label, List<Item> items, String remark) {
        /** Copies the list. */
        public Row {
            items = List.copyOf(items);
        }
    }

    /**
     * Where an item lies.
     *
     * @param item the item
     * @param area its box, or the room of its dot
     */
    public record Placed(Item item, Rect area) {}

    /**
     * A figure.
     *
     * @param picture the picture
     * @param places where what is due lies on it, by day, and then what was done
     */
    public record Figure(Picture picture, List<Placed> places) {
        /** Copies the list. */
        public Figure {
            places = List.copyOf(places);
        }
    }

    /**
     * {@return the figure}
     *
     * @param title what it is a picture of
     * @param rows the rows, one or more
     * @param today a day that is marked where it is among the months
     * @param start a day of the first month where nothing is due or done
     * @param width width, in pixels; 480 or more
     */
    public static Figure of(String title, List<Row> rows, LocalDate today, LocalDate start, double width) {
        return new CalendarFigure(rows, start, width).figure(title, today);
    }

    private Figure figure(String title, LocalDate today) {
        double y = TOP;
        List<Shape> above = new ArrayList<>();
        for (Row row : rows) {
            y = row(row, y, above);
        }
        double bottom = y;
        months(bottom);
        today(today, bottom);
        shapes.addAll(above);
        places.sort((one, other) ->
                Boolean.compare(one.item().kind().isDone(), other.item().kind().isDone()) != 0
                        ? Boolean.compare(
                                one.item().kind().isDone(), other.item().kind().isDone())
                        : one.item().from().compareTo(other.item().from()));
        return new Figure(new Picture(width, bottom + 2, shapes, title, said()), places);
    }

    private String said() {
        return rows.stream()
                .flatMap(row -> Stream.concat(
                        Stream.of(row.label() + ":"),
                        row.items().isEmpty()
                                ? Stream.of(row.remark())
                                : row.items().stream().map(Item::words)))
                .collect(Collectors.joining(" "));
    }

    private void months(double bottom) {
        for (LocalDate month = first; month.isBefore(end); month = month.plusMonths(1)) {
            double from = Math.round(x(month)) + 0.5;
            double to = x(month.plusMonths(1));
            shapes.add(new Shape.Line(new Point(from, 6), new Point(from, bottom), Pencil.solid(Ink.GRID, 1)));
            String name = WHOLE_MONTH.format(month);
            boolean fits = TextWidths.of(name, Lettering.SMALL) < to - from - 10;
            shapes.add(
                    label(from + 6, 17, fits ? name : MONTH.format(month), Anchor.START, Lettering.SMALL, Ink.MUTED));
        }
        double right = Math.round(x(end)) - 0.5;
        shapes.add(new Shape.Line(new Point(right, 6), new Point(right, bottom), Pencil.solid(Ink.GRID, 1)));
    }

    private void today(LocalDate today, double bottom) {
        if (today.isBefore(first) || !today.isBefore(end)) {
            return;
        }
        double x = Math.round(x(today)) + 0.5;
        shapes.add(new Shape.Line(new Point(x, 22), new Point(x, bottom), Pencil.dotted(Ink.INK, 1.5)));
        String word = Texts.of("window.calendar.todayMark");
        boolean room = x + 6 + TextWidths.of(word, Lettering.SMALL) < width;
        shapes.add(label(room ? x + 5 : x - 5, 31, word, room ? Anchor.START : Anchor.END, Lettering.SMALL, Ink.INK));
    }

    /** One row; what would lie over each other goes into lanes of its own. */
    private double row(Row row, double y, List<Shape> above) {
        List<Double> free = new ArrayList<>();
        for (Item item : row.items().stream()
                .sorted((one, other) -> one.from().compareTo(other.from()))
                .toList()) {
            double from = x(item.from());
            double to = item.kind().isDone() ? from + DOT : x(item.to().plusDays(1));
            double words = item.mark().isBlank() ? 0 : TextWidths.of(item.mark(), Lettering.SMALL) + 12;
            double wide = Math.max(Math.max(LEAST_BOX, words), to - from);
            double start = Math.min(item.kind().isDone() ? from - DOT : from, width - MARGIN - wide);
            int lane = 0;
            while (lane < free.size() && free.get(lane) > start) {
                lane++;
            }
            if (lane == free.size()) {
                free.add(0.0);
            }
            double right = item.kind().isDone() ? from + DOT : start + wide;
            free.set(lane, right + 3);
            double middle = y + GAP / 2 + LANE * lane + LANE / 2;
            Rect area = item.kind().isDone()
                    ? new Rect(from - DOT - 2, middle - BOX / 2, 2 * DOT + 4, BOX)
                    : new Rect(start, middle - BOX / 2, wide, BOX);
            draw(item, area, above);
            places.add(new Placed(item, area));
        }
        double height = GAP + LANE * Math.max(1, free.size());
        String name = TextWidths.cut(row.label(), Lettering.STRONG, left - 12);
        above.add(label(0, y + GAP / 2 + LANE / 2 + 5, name, Anchor.START, Lettering.STRONG, Ink.INK));
        if (row.items().isEmpty()) {
            String remark = TextWidths.cut(row.remark(), Lettering.SMALL, width - left - 12);
            above.add(label(left + 6, y + GAP / 2 + LANE / 2 + 4, remark, Anchor.START, Lettering.SMALL, Ink.MUTED));
        }
        double line = Math.round(y + height) + 0.5;
        shapes.add(new Shape.Line(new Point(0, line), new Point(width, line), Pencil.solid(Ink.GRID, 1)));
        return y + height;
    }

    private void draw(Item item, Rect area, List<Shape> above) {
        Point middle = new Point(area.x() + area.width() / 2, area.y() + area.height() / 2);
        switch (item.kind()) {
            case VISITED ->
                above.add(new Shape.Disc(middle, DOT, Optional.of(Ink.INK), Optional.of(Pencil.solid(Ink.PAPER, 1.5))));
            case SAMPLED ->
                above.add(Shape.Path.area(
                        Ink.SAMPLE,
                        Pencil.solid(Ink.PAPER, 1.5),
                        new Point(middle.x(), middle.y() - DOT - 2),
                        new Shape.Step.To(new Point(middle.x() + DOT + 2, middle.y())),
                        new Shape.Step.To(new Point(middle.x(), middle.y() + DOT + 2)),
                        new Shape.Step.To(new Point(middle.x() - DOT - 2, middle.y()))));
            case VISIT_DUE -> {
                above.add(new Shape.Box(area, 5, Optional.of(Ink.CONFIRMED), Optional.empty()));
                above.add(label(
                        middle.x(), middle.y() + 4.5, item.mark(), Anchor.MIDDLE, Lettering.SMALL, Ink.ON_CONFIRMED));
            }
            case SAMPLE_DUE, NEST_DUE -> {
                Ink ink = item.kind() == Kind.SAMPLE_DUE ? Ink.SAMPLE : Ink.NEST;
                above.add(new Shape.Box(area, 5, Optional.of(Ink.PAPER), Optional.of(Pencil.solid(ink, 2))));
                above.add(label(middle.x(), middle.y() + 4.5, item.mark(), Anchor.MIDDLE, Lettering.SMALL, Ink.INK));
            }
        }
    }

    private double x(LocalDate day) {
        double share = ChronoUnit.DAYS.between(first, day) / (double) ChronoUnit.DAYS.between(first, end);
        return left + share * (width - MARGIN - left);
    }

    private static Shape.Label label(double x, double y, String text, Anchor anchor, Lettering type, Ink ink) {
        return new Shape.Label(new Point(x, y), text, anchor, type, ink);
    }
}
