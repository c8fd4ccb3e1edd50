package org.ouzelbook.ui.strip;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ouzelbook.ui.strip.IntervalFigure.Figure;
import org.ouzelbook.ui.strip.IntervalFigure.Row;
import org.ouzelbook.ui.strip.IntervalFigure.Scale;

/** Values with their limits, as shapes. */
class IntervalFigureTest {
    private static final Scale PER_KM =
            new Scale("per km", 0, OptionalDouble.empty(), value -> String.format(Locale.ROOT, "%.2f", value));

    private static Row row(String label, double value, double lower, double upper) {
        return new Row(
                "", label, OptionalDouble.of(value), OptionalDouble.of(lower), OptionalDouble.of(upper), List.of(), "");
    }

    private static Row none(String label, String why) {
        OptionalDouble empty = OptionalDouble.empty();
        return new Row("", label, empty, empty, empty, List.of(), why);
    }

    private static Figure figure(Row... rows) {
        return IntervalFigure.of("Density", PER_KM, List.of(rows), 640);
    }

    private static List<Shape.Disc> dots(Figure figure) {
        return figure.picture().shapes().stream()
                .filter(Shape.Disc.class::isInstance)
                .map(Shape.Disc.class::cast)
                .toList();
    }

    private static List<Shape.Band> bars(Figure figure) {
        return figure.picture().shapes().stream()
                .filter(Shape.Band.class::isInstance)
                .map(Shape.Band.class::cast)
                .toList();
    }

    @Test
    void drawsTheLimitsBeforeTheValueAndTheValueWithinThem() {
        Figure figure = figure(row("2026", 0.5, 0.2, 0.9));

        Shape.Band bar = bars(figure).get(0);
        Shape.Disc dot = dots(figure).get(0);
        assertThat(figure.picture().shapes().indexOf(bar))
                .isLessThan(figure.picture().shapes().indexOf(dot));
        assertThat(dot.centre().x()).isBetween(bar.area().x(), bar.area().right());
    }

    @Test
    void drawsEqualValuesBelowEachOtherAndLargerOnesToTheRight() {
        List<Shape.Disc> dots =
                dots(figure(row("2024", 0.5, 0.2, 0.9), row("2025", 0.5, 0.1, 1), row("2026", 0.7, 0.2, 1)));

        assertThat(dots.get(0).centre().x()).isEqualTo(dots.get(1).centre().x());
        assertThat(dots.get(2).centre().x()).isGreaterThan(dots.get(1).centre().x());
        assertThat(dots.get(1).centre().y()).isGreaterThan(dots.get(0).centre().y());
    }

    @Test
    void drawsNoPointWhereThereIsNoValueAndSaysWhy() {
        Figure figure = figure(none("2024", "one visit: no count"), row("2025", 0.5, 0.2, 0.9));

        assertThat(dots(figure)).hasSize(1);
        assertThat(figure.picture().shapes())
                .anyMatch(shape ->
                        shape instanceof Shape.Label label && label.text().equals("one visit: no count"));
        assertThat(figure.picture().description()).contains("2024: one visit: no count.");
    }

    @Test
    void fadesTowardsALimitThatNobodyKnows() {
        Row open = new Row(
                "", "2026", OptionalDouble.of(0.5), OptionalDouble.of(0.2), OptionalDouble.empty(), List.of(), "");

        Shape.Band bar = bars(figure(open, row("2025", 0.5, 0.2, 0.9))).get(0);

        assertThat(bar.fadeLeft()).isZero();
        assertThat(bar.fadeRight()).isPositive();
    }

    @Test
    void keepsEveryWordOnThePaperAndTellsWhereEachRowLies() {
        Figure figure = figure(
                row("2025", 0.51, 0.23, 0.97),
                none(
                        "2026",
                        "a very long reason that would run far beyond the right edge of a paper that is not wide"
                                + " enough for all of its many words, so that it has to be cut"));

        assertThat(figure.places()).hasSize(2);
        assertThat(figure.picture().shapes())
                .filteredOn(Shape.Label.class::isInstance)
                .allSatisfy(shape -> assertThat(((Shape.Label) shape).bounds().right())
                        .isLessThanOrEqualTo(figure.picture().width() + 0.5));
    }
}
