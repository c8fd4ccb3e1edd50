package org.ouzelbook.ui.strip;

import java.time.Year;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToIntFunction;
import org.ouzelbook.stats.estimator.trend.SeasonTotal;
import org.ouzelbook.stats.estimator.trend.YearlyTrend;
import org.ouzelbook.stats.survey.CountTrend;
import org.ouzelbook.stats.survey.CountTrend.Counted;
import org.ouzelbook.stats.survey.CountTrend.SeasonTotals;
import org.ouzelbook.stats.survey.ModelledCount;
import org.ouzelbook.stats.survey.Verdict;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Shape.Anchor;
import org.ouzelbook.ui.strip.Shape.Lettering;
import org.ouzelbook.ui.strip.Shape.Step;

/**
 * The counts of all waters season by season, each with its range: by the model with the count by rule as a dash beside it, or by
 * rule alone; in whole numbers, as a tenth of a territory could tell where a nest is. Where a trend may be told, the fitted line in its band. A season in which not all water was counted stays open,
 * and one in which none was has no point.
 */
public final class CountFigure {
    private static final double LEFT = 46;
    private static final double RIGHT = 24;
    private static final double TOP = 34;
    private static final double BOTTOM = 40;
    private static final double DOT = 5;
    private static final double BESIDE = 7;
    private static final double DASH = 8;
    private static final double YEAR_WIDTH = 40;

    private final CountTrend trend;
    private final double width;
    private final double height;
    private final List<SeasonTotals> seasons;
    private final Optional<YearlyTrend> line;
    private final double most;
    private final List<Shape> shapes = new ArrayList<>();

    private CountFigure(CountTrend trend, double width, double height) {
        this.trend = trend;
        this.width = width;
        this.height = height;
        this.seasons = trend.seasons();
        this.line = trend.verdict().word() == Verdict.Word.TOO_FEW_SEASONS
                ? Optional.empty()
                : trend.line().found();
        double counted = seasons.stream()
                .mapToDouble(season -> Math.max(
                        range(season.season(), Counted::max),
                        season.model().map(ModelledCount::upper).orElse(0)))
                .max()
                .orElse(0);
        double fitted = line.stream()
                .flatMap(fit -> fit.totals().stream())
                .mapToDouble(total -> total.expected().upper())
                .max()
                .orElse(0);
        this.most = Math.max(4, Math.ceil(Math.max(counted, Math.min(fitted, 1.5 * counted))));
    }

    /**
     * The part of the figure that belongs to one season.
     *
     * @param season the calendar year
     * @param area from the top of the figure to its foot
     */
    public record Column(int season, Rect area) {}

    /**
     * {@return the figure}
     *
     * @param trend counts of one season or more
     * @param width width, in pixels; 300 or more
     * @param height height, in pixels; 150 or more
     */
    public static CountFigure of(CountTrend trend, double width, double height) {
        return new CountFigure(trend, width, height);
    }

    /** {@return a column for each season, going right} */
    public List<Column> columns() {
        double apart = seasons.size() < 2
                ? width - LEFT - RIGHT
                : (width - RIGHT - LEFT - 60)
                        / (seasons.get(seasons.size() - 1).season()
                                - seasons.get(0).season());
        return seasons.stream()
                .map(season -> new Column(
                        season.season(),
                        new Rect(x(season.season()) - apart / 2, TOP, apart, height - TOP - BOTTOM + 30)))
                .toList();
    }

    /** {@return the figure, drawn} */
    public Picture picture() {
        shapes.clear();
        shapes.add(label(LEFT - 34, TOP - 18, Texts.of("strip.counts"), Anchor.START, Ink.MUTED));
        scale();
        line.ifPresent(this::fitted);
        List<Integer> years = namedYears();
        years.forEach(year ->
                shapes.add(label(x(year), height - BOTTOM + 22, Integer.toString(year), Anchor.MIDDLE, Ink.INK)));
        seasons.forEach(season -> season(season, years));
        String title = Texts.of("strip.figure.title", trend.species());
        return new Picture(width, height, shapes, title, description());
    }

    private void scale() {
        int step = (int) Math.max(1, Math.ceil(most / 6));
        for (int count = 0; count <= most; count += step) {
            double y = Math.round(y(count)) + 0.5;
            shapes.add(new Shape.Line(new Point(LEFT, y), new Point(width - RIGHT, y), Pencil.solid(Ink.GRID, 1)));
            shapes.add(label(LEFT - 10, y + 4, Integer.toString(count), Anchor.END, Ink.MUTED));
        }
    }

    private void fitted(YearlyTrend fit) {
        List<SeasonTotal> totals = fit.totals();
        List<Step> edge = new ArrayList<>();
        totals.stream()
                .skip(1)
                .forEach(total ->
                        edge.add(new Step.To(at(total.season(), total.expected().upper()))));
        for (int i = totals.size() - 1; i >= 0; i--) {
            edge.add(new Step.To(
                    at(totals.get(i).season(), totals.get(i).expected().lower())));
        }
        Point start = at(totals.get(0).season(), totals.get(0).expected().upper());
        shapes.add(new Shape.Path(start, edge, true, Optional.of(Ink.COLUMN), Optional.empty()));
        shapes.add(Shape.Path.through(
                Pencil.solid(Ink.CONFIRMED, 1.5),
                totals.stream()
                        .map(total -> at(total.season(), total.expected().value()))
                        .toList()));
    }

    /** The last season and, going back, each that leaves room for its name beside the next one named. */
    private List<Integer> namedYears() {
        List<Integer> named = new ArrayList<>();
        double next = Double.POSITIVE_INFINITY;
        for (int i = seasons.size() - 1; i >= 0; i--) {
            int year = seasons.get(i).season();
            if (next - x(year) >= YEAR_WIDTH) {
                named.add(0, year);
                next = x(year);
            }
        }
        return named;
    }

    private void season(SeasonTotals season, List<Integer> years) {
        double x = x(season.season());
        if (season.count().isEmpty()) {
            if (years.contains(season.season())) {
                shapes.add(
                        label(x, height - BOTTOM - 8, Texts.of("strip.figure.notCounted"), Anchor.MIDDLE, Ink.MUTED));
            }
            return;
        }
        double byRule = season.count().getAsLong();
        Optional<ModelledCount> model = season.model();
        double count = model.map(one -> Math.rint(one.expected())).orElse(byRule);
        double min = model.map(one -> (double) one.lower()).orElseGet(() -> range(season.season(), Counted::min));
        double max = model.map(one -> (double) one.upper()).orElseGet(() -> range(season.season(), Counted::max));
        if (model.isPresent()) {
            double y = y(byRule);
            shapes.add(new Shape.Line(
                    new Point(x - BESIDE - DASH, y), new Point(x - BESIDE, y), Pencil.solid(Ink.MUTED, 2)));
        }
        if (max > min) {
            shapes.add(new Shape.Line(new Point(x, y(min)), new Point(x, y(max)), Pencil.solid(Ink.INK, 2)));
        }
        boolean whole = season.notCounted().isEmpty();
        shapes.add(new Shape.Disc(
                new Point(x, y(count)),
                DOT,
                Optional.of(whole ? Ink.CONFIRMED : Ink.PAPER),
                Optional.of(Pencil.solid(whole ? Ink.PAPER : Ink.CONFIRMED, 1.5))));
    }

    private double range(int season, ToIntFunction<Counted> limit) {
        return trend.counts().stream()
                .filter(counted -> counted.season() == season && counted.gap().isEmpty())
                .mapToInt(limit)
                .sum();
    }

    private String description() {
        List<String> sentences = new ArrayList<>();
        for (SeasonTotals season : seasons) {
            sentences.add(
                    season.count().isEmpty()
                            ? Texts.of("strip.figure.sayNone", Year.of(season.season()))
                            : season.model()
                                    .map(model -> Texts.of(
                                            "strip.figure.sayModel",
                                            Year.of(season.season()),
                                            model.expected(),
                                            model.lower(),
                                            model.upper(),
                                            season.count().getAsLong(),
                                            model.lower() < model.upper() ? 1 : 0))
                                    .orElseGet(() -> byRule(season)));
        }
        return String.join(" ", sentences);
    }

    private String byRule(SeasonTotals season) {
        double min = range(season.season(), Counted::min);
        double max = range(season.season(), Counted::max);
        return Texts.of(
                "strip.figure.say",
                Year.of(season.season()),
                season.count().orElseThrow(),
                min,
                max,
                min < max ? 1 : 0);
    }

    private Point at(int season, double count) {
        return new Point(x(season), y(Math.min(count, most)));
    }

    private double x(int season) {
        int first = seasons.get(0).season();
        int last = seasons.get(seasons.size() - 1).season();
        double from = LEFT + 30;
        double to = width - RIGHT - 30;
        return first == last ? (from + to) / 2 : from + (season - first) * (to - from) / (last - first);
    }

    private double y(double count) {
        return height - BOTTOM - count * (height - TOP - BOTTOM) / most;
    }

    private static Shape.Label label(double x, double y, String text, Anchor anchor, Ink ink) {
        return new Shape.Label(new Point(x, y), text, anchor, Lettering.SMALL, ink);
    }
}
