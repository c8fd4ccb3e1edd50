package org.ouzelbook.ui.strip;

import org.ouzelbook.stats.survey.ModelCount;
import org.ouzelbook.ui.app.Texts;

/** Water where a pair that no visit found would fit: a row of dots. */
final class Room {
    private Room() {}

    static void draw(Sheet sheet, Across across, Water water, int season, ModelCount.Room room, double y) {
        double left = across.clipped(across.x(water.metres(room.stretch().lower())));
        double right = across.clipped(across.x(water.metres(room.stretch().upper())));
        if (right - left < 4) {
            return;
        }
        sheet.draw(new Shape.Line(new Point(left, y), new Point(right, y), Pencil.dotted(Ink.CONFIRMED, 2.2)));
        sheet.answer(new HitArea(
                new Rect(left, y - 6, right - left, 12),
                new Subject.OfRoom(season, water.river().id(), room.stretch()),
                () -> Texts.of("strip.say.room", room.stretch(), room.probability())));
    }

    /** Draws the dots, and the question below them where it fits. */
    static void draw(
            Sheet sheet, Across across, Water water, int season, ModelCount.Room room, double y, double wordsY) {
        draw(sheet, across, water, season, room, y);
        double middle = across.x(water.metres(room.stretch().middle()));
        if (middle > across.left() && middle < across.right()) {
            sheet.write(new Shape.Label(
                    new Point(middle, wordsY),
                    Texts.of("strip.room", room.probability()),
                    Shape.Anchor.MIDDLE,
                    Shape.Lettering.SMALL,
                    Ink.MUTED));
        }
    }
}
