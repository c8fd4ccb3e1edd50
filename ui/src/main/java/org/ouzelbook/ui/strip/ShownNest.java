package org.ouzelbook.ui.strip;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.ui.app.Texts;

/**
 * A nest and the days on which it was looked at. Private: drawn only where nests were asked for.
 *
 * @param nest the nest
 * @param days the days, in order; one or more
 */
public record ShownNest(Nest nest, List<LocalDate> days) {
    /** Copies the list. */
    public ShownNest {
        days = List.copyOf(days);
    }

    static List<ShownNest> of(SurveyRecords records, Species species, int season) {
        List<ShownNest> shown = new ArrayList<>();
        for (Nest nest : records.nests()) {
            List<LocalDate> days = new ArrayList<>(records.nestChecks().stream()
                    .filter(check -> check.nestId().equals(nest.id()))
                    .map(NestCheck::date)
                    .toList());
            nest.found().ifPresent(days::add);
            days.removeIf(day -> day.getYear() != season);
            if (nest.species().equals(species) && !days.isEmpty()) {
                shown.add(new ShownNest(
                        nest,
                        days.stream()
                                .distinct()
                                .sorted(Comparator.naturalOrder())
                                .toList()));
            }
        }
        return shown;
    }

    /** Six strokes from one middle: the star by which maps mark an occupied nest. */
    static List<Shape> star(Point at) {
        List<Shape> strokes = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            double angle = Math.PI * (0.5 + i / 3.0);
            double dx = 6.5 * Math.cos(angle);
            double dy = 6.5 * Math.sin(angle);
            strokes.add(new Shape.Line(
                    new Point(at.x() - dx, at.y() - dy),
                    new Point(at.x() + dx, at.y() + dy),
                    Pencil.solid(Ink.NEST, 2.2)));
        }
        return strokes;
    }

    /** Draws a star at the nest's last day, and a thread back to its first. */
    void draw(Sheet sheet, double x, DateRows rows) {
        double first = rows.near(days.get(0));
        double last = rows.near(days.get(days.size() - 1));
        if (last - first > 4) {
            sheet.draw(new Shape.Line(new Point(x, first), new Point(x, last), Pencil.solid(Ink.NEST, 1.2)));
        }
        for (LocalDate day : days) {
            double y = rows.near(day);
            sheet.draw(new Shape.Line(new Point(x - 3, y), new Point(x + 3, y), Pencil.solid(Ink.NEST, 1.6)));
        }
        drawAt(sheet, new Point(x, last));
    }

    /** Draws the star. */
    void drawAt(Sheet sheet, Point at) {
        star(at).forEach(sheet::draw);
        sheet.answer(new HitArea(new Rect(at.x() - 8, at.y() - 8, 16, 16), new Subject.OfNest(nest.id()), this::aloud));
    }

    String aloud() {
        return Texts.of(
                "strip.nest",
                nest.label(),
                nest.place().chainage(),
                days.get(0),
                days.get(days.size() - 1),
                days.size());
    }
}
