package org.ouzelbook.ui.strip;

/**
 * From where to where a shape reaches down the paper, thickness of lines and reach of symbols included.
 *
 * @param top its upper end, in pixels
 * @param bottom its lower end, in pixels
 */
record Heights(double top, double bottom) {
    private static final double BEYOND = 4;
    private static final double MARK = 22;

    boolean meets(double from, double to) {
        return bottom + BEYOND >= from && top - BEYOND <= to;
    }

    static Heights of(Shape shape) {
        if (shape instanceof Shape.Line line) {
            return between(line.from().y(), line.to().y());
        }
        if (shape instanceof Shape.Path path) {
            return of(path);
        }
        if (shape instanceof Shape.Disc disc) {
            return new Heights(disc.centre().y() - disc.radius(), disc.centre().y() + disc.radius());
        }
        if (shape instanceof Shape.Box box) {
            return of(box.area());
        }
        if (shape instanceof Shape.Band band) {
            return of(band.area());
        }
        if (shape instanceof Shape.Hatch hatch) {
            return of(hatch.area());
        }
        if (shape instanceof Shape.Label label) {
            return new Heights(label.at().y() - 16, label.at().y() + 6);
        }
        double middle = shape instanceof Shape.Tablet tablet
                ? tablet.centre().y()
                : ((Shape.Mark) shape).centre().y();
        return new Heights(middle - MARK, middle + MARK);
    }

    private static Heights of(Rect area) {
        return new Heights(area.y(), area.bottom());
    }

    private static Heights of(Shape.Path path) {
        double top = path.start().y();
        double bottom = top;
        for (Shape.Step step : path.steps()) {
            top = Math.min(top, step.end().y());
            bottom = Math.max(bottom, step.end().y());
            if (step instanceof Shape.Step.Bend bend) {
                top = Math.min(top, bend.towards().y());
                bottom = Math.max(bottom, bend.towards().y());
            }
        }
        return new Heights(top, bottom);
    }

    private static Heights between(double one, double other) {
        return new Heights(Math.min(one, other), Math.max(one, other));
    }
}
