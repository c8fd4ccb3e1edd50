package org.ouzelbook.ui.window;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ouzelbook.stats.survey.ModelledCounts;
import org.ouzelbook.stats.survey.SiteOccupancy;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.ui.app.BookCounts;
import org.ouzelbook.ui.app.DensityAnswer;
import org.ouzelbook.ui.app.OccupancyAnswer;
import org.ouzelbook.ui.app.Scope;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.TrendAnswer;
import org.ouzelbook.ui.app.TrendWords;
import org.ouzelbook.ui.app.estimate.OccupancyFigures;
import org.ouzelbook.ui.strip.IntervalFigure;
import org.ouzelbook.ui.strip.IntervalFigure.Figure;
import org.ouzelbook.ui.strip.IntervalFigure.Row;
import org.ouzelbook.ui.strip.IntervalFigure.Scale;
import org.ouzelbook.ui.window.FindingSheet.Line;

/** The findings that rest on counts: density, trend and occupancy. */
final class CountSheets {
    private final BookCounts counts;
    private final Scope scope;
    private final RecordsBehind behind;
    private final double width;

    /**
     * @param contents what it holds
     * @param modelled what the model counts; {@link ModelledCounts#NONE} while it does not
     * @param width width of the pictures, in pixels
     */
    CountSheets(BookContents contents, ModelledCounts modelled, double width) {
        this.counts = new BookCounts(contents.mapped(), modelled);
        this.scope = Scope.everything().of(contents.species());
        this.behind = new RecordsBehind(contents);
        this.width = width;
    }

    /**
     * {@return territories per km, by water and season}
     *
     * @param progress hears how far the work has come, and may stop it
     */
    FindingSheet density(Progress progress) {
        DensityAnswer answer = counts.density(progress);
        String title = Topic.DENSITY.question();
        if (answer.rows().isEmpty()) {
            return FindingSheet.refused(title, Texts.of("window.findings.none", scope.species()));
        }
        List<DensityAnswer.Row> rows = answer.rows().stream()
                .sorted(Comparator.comparing(CountSheets::water).thenComparingInt(DensityAnswer.Row::season))
                .toList();
        boolean modelled = rows.stream().anyMatch(row -> row.byModel().isPresent());
        Figure figure = IntervalFigure.of(
                Texts.of("window.findings.term.density"),
                new Scale(
                        Texts.of(modelled ? "window.findings.perKmByModel" : "window.findings.perKm"),
                        0,
                        OptionalDouble.empty(),
                        two()),
                rows.stream().map(row -> row(row, modelled)).toList(),
                width);
        int last = rows.stream().mapToInt(DensityAnswer.Row::season).max().orElseThrow();
        List<DensityAnswer.Row> now = rows.stream()
                .filter(row -> row.season() == last && row.reach().isEmpty())
                .toList();
        List<String> remarks = new ArrayList<>();
        if (modelled) {
            remarks.add(Texts.of("window.findings.ruleDots"));
        }
        remarks.add(Texts.of("cli.density.reading"));
        rows.stream().flatMap(row -> row.method().stream()).findFirst().ifPresent(how -> remarks.add(sentence(how)));
        return new FindingSheet(
                title,
                now.stream().flatMap(row -> shown(row).stream().mapToObj(two())).collect(Collectors.joining(" · ")),
                Texts.of(
                        "window.findings.inSeason",
                        String.valueOf(last),
                        now.stream().map(CountSheets::told).collect(Collectors.joining("; "))),
                Optional.of(figure),
                modelled
                        ? columns(
                                "water",
                                "season",
                                "perKmByModel",
                                "limits",
                                "territories",
                                "range",
                                "kmAt",
                                "perKmByRule",
                                "limitsByRule")
                        : columns("water", "season", "territories", "range", "km", "perKm", "limits"),
                rows.stream().map(row -> line(row, modelled)).toList(),
                remarks);
    }

    /** The model's value with its limits, and the rule's as a small dot; the rule's alone where the model tells nothing. */
    private static Row row(DensityAnswer.Row row, boolean modelled) {
        Optional<DensityAnswer.ByModel> model = row.byModel();
        return new Row(
                water(row),
                String.valueOf(row.season()),
                shown(row),
                modelled ? optional(model.map(DensityAnswer.ByModel::lower)) : row.lower(),
                modelled ? optional(model.map(DensityAnswer.ByModel::upper)) : row.upper(),
                model.isPresent() ? row.perKm().stream().boxed().toList() : List.of(),
                row.why().map(Texts::of).orElse(""));
    }

    private static OptionalDouble shown(DensityAnswer.Row row) {
        return row.byModel().isPresent() ? OptionalDouble.of(row.byModel().get().perKm()) : row.perKm();
    }

    private static OptionalDouble optional(Optional<Double> value) {
        return value.map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }

    private static String told(DensityAnswer.Row row) {
        if (row.byModel().isPresent()) {
            DensityAnswer.ByModel model = row.byModel().get();
            return Texts.of(
                    "window.findings.densityByModel",
                    row.river(),
                    model.perKm(),
                    model.lower(),
                    model.upper(),
                    row.perKm().orElse(0));
        }
        return row.perKm().isPresent()
                ? Texts.of(
                        "window.findings.densityOf",
                        row.river(),
                        row.perKm().getAsDouble(),
                        row.lower().orElse(0),
                        row.upper().orElse(0))
                : Texts.of(
                        "window.findings.noDensity",
                        row.river(),
                        row.why().map(Texts::of).orElse(""));
    }

    private static String water(DensityAnswer.Row row) {
        return row.reach().orElse(row.river());
    }

    private Line line(DensityAnswer.Row row, boolean modelled) {
        List<String> cells = new ArrayList<>(List.of(water(row), String.valueOf(row.season())));
        if (modelled) {
            cells.add(form("%.2f", optional(row.byModel().map(DensityAnswer.ByModel::perKm))));
            cells.add(limits(
                    "%.2f",
                    optional(row.byModel().map(DensityAnswer.ByModel::lower)),
                    optional(row.byModel().map(DensityAnswer.ByModel::upper))));
        }
        boolean counted = row.perKm().isPresent();
        cells.addAll(List.of(
                counted ? String.valueOf(row.territories()) : Texts.of("cli.density.notCounted"),
                counted ? range(row.min(), row.max()) : "–",
                row.surveyedKm() > 0 ? form("%.1f", row.surveyedKm()) : "–",
                form("%.2f", row.perKm()),
                limits("%.2f", row.lower(), row.upper())));
        return new Line(cells, behind.count(row.season(), Optional.of(row.river()), row.reach()));
    }

    /**
     * {@return the counts of all water, season by season, and whether they changed}
     *
     * @param progress hears how far the work has come, and may stop it
     */
    FindingSheet trend(Progress progress) {
        TrendAnswer answer = counts.trend(progress);
        boolean modelled =
                answer.seasons().stream().anyMatch(season -> season.byModel().isPresent());
        Figure figure = IntervalFigure.of(
                Texts.of("window.findings.term.trend"),
                new Scale(
                        Texts.of(modelled ? "window.findings.territoriesByModel" : "window.findings.territories"),
                        0,
                        OptionalDouble.empty(),
                        modelled ? CountSheets::one : whole()),
                answer.seasons().stream().map(season -> row(season, modelled)).toList(),
                width);
        return new FindingSheet(
                Topic.TREND.question(),
                answer.perYear().percent().isPresent()
                        ? Texts.of(
                                "window.findings.aYear",
                                answer.perYear().percent().getAsDouble(),
                                signed(answer.perYear().lower()),
                                signed(answer.perYear().upper()))
                        : "",
                sentence(answer.verdict()),
                Optional.of(figure),
                modelled
                        ? columns("season", "byModel", "limits", "territories", "range", "kmAt", "visits", "remark")
                        : columns("season", "territories", "range", "km", "visits", "remark"),
                answer.seasons().stream().map(season -> line(season, modelled)).toList(),
                remarks(answer, modelled));
    }

    private static Row row(TrendAnswer.Season season, boolean modelled) {
        Optional<TrendAnswer.ByModel> model = season.byModel();
        return new Row(
                "",
                String.valueOf(season.season()),
                model.isPresent() ? OptionalDouble.of(model.get().estimate()) : season.count(),
                modelled ? optional(model.map(TrendAnswer.ByModel::lower)) : season.lower(),
                modelled ? optional(model.map(TrendAnswer.ByModel::upper)) : season.upper(),
                model.isPresent() ? season.count().stream().boxed().toList() : List.of(),
                season.why().map(Texts::of).orElse(""));
    }

    private static List<String> remarks(TrendAnswer answer, boolean modelled) {
        List<String> remarks = new ArrayList<>();
        if (modelled) {
            remarks.add(Texts.of("window.findings.ruleDots"));
        }
        if (answer.perYear().percent().isPresent()) {
            answer.byRule()
                    .filter(byRule -> byRule.perYear().percent().isPresent())
                    .ifPresent(byRule -> remarks.add(Texts.of(
                            "window.findings.aYearByRule",
                            byRule.perYear().percent().orElseThrow(),
                            signed(byRule.perYear().lower()),
                            signed(byRule.perYear().upper()))));
            answer.shareFromCounts().ifPresent(share -> remarks.add(Texts.of("cli.trend.shareFromCounts", share)));
            answer.probabilityFalling().ifPresent(falling -> remarks.add(Texts.of("cli.trend.falling", falling)));
            answer.smallestDetectable()
                    .percentPerYear()
                    .ifPresent(fall -> remarks.add(Texts.of(
                            "cli.trend.smallest",
                            -fall,
                            answer.smallestDetectable().power())));
        }
        answer.why().forEach(why -> remarks.add(sentence(why)));
        answer.warnings().forEach(warning -> remarks.add(sentence(warning)));
        answer.model().ifPresent(model -> remarks.add(sentence(model)));
        return remarks;
    }

    private Line line(TrendAnswer.Season season, boolean modelled) {
        List<String> cells = new ArrayList<>(List.of(String.valueOf(season.season())));
        if (modelled) {
            cells.add(form("%.1f", optional(season.byModel().map(TrendAnswer.ByModel::estimate))));
            cells.add(limits(
                    "%.0f",
                    optional(season.byModel().map(TrendAnswer.ByModel::lower)),
                    optional(season.byModel().map(TrendAnswer.ByModel::upper))));
        }
        boolean counted = season.count().isPresent();
        cells.addAll(List.of(
                counted ? form("%.0f", season.count()) : Texts.of("cli.density.notCounted"),
                counted ? limits("%.0f", season.lower(), season.upper()) : "–",
                counted ? form("%.1f", season.surveyedKm()) : "–",
                counted ? String.valueOf(season.effectiveVisits()) : "–",
                season.why().map(Texts::of).orElse(season.imputed() ? Texts.of("window.findings.filledIn") : "")));
        return new Line(cells, behind.count(season.season(), Optional.empty(), Optional.empty()));
    }

    /**
     * {@return the share of the sites that birds used, season by season}
     *
     * @param progress hears how far the work has come, and may stop it
     */
    FindingSheet occupancy(Progress progress) {
        OccupancyAnswer answer = OccupancyAnswer.of(
                counts.maps().records(),
                scope,
                new OccupancyAnswer.Question(
                        UnaryOperator.identity(), SiteOccupancy.Model.CONSTANT, false, Optional.empty()),
                progress);
        List<OccupancyFigures.Season> seasons = answer.bySeason();
        Figure figure = IntervalFigure.of(
                Texts.of("window.findings.term.occupancy"),
                new Scale(Texts.of("window.findings.occupied"), 0, OptionalDouble.of(1), percent()),
                seasons.stream()
                        .map(season -> new Row(
                                "",
                                String.valueOf(season.season()),
                                season.ofTheseSites(),
                                season.ofTheseSitesLower(),
                                season.ofTheseSitesUpper(),
                                season.naive().stream().boxed().toList(),
                                season.why().map(Texts::of).orElse("")))
                        .toList(),
                width);
        Optional<OccupancyFigures.Season> last =
                seasons.isEmpty() ? Optional.empty() : Optional.of(seasons.get(seasons.size() - 1));
        String sentence = answer.why()
                .map(CountSheets::sentence)
                .or(() -> last.filter(season -> season.ofTheseSites().isPresent())
                        .map(season -> Texts.of(
                                "window.findings.occupancyOf",
                                String.valueOf(season.season()),
                                season.ofTheseSites().orElseThrow(),
                                season.ofTheseSitesLower().orElse(0),
                                season.ofTheseSitesUpper().orElse(1),
                                season.naive().orElse(0))))
                .or(() -> last.flatMap(OccupancyFigures.Season::why).map(CountSheets::sentence))
                .orElseGet(() -> Texts.of("window.findings.none", scope.species()));
        List<String> remarks = Stream.concat(
                        Stream.of(Texts.of("window.findings.naiveDots")),
                        answer.warnings().stream().map(CountSheets::sentence))
                .toList();
        return new FindingSheet(
                Topic.OCCUPANCY.question(),
                last.map(season -> brief(season.ofTheseSites(), season.ofTheseSitesLower(), season.ofTheseSitesUpper()))
                        .orElse(""),
                sentence,
                answer.why().isPresent() || seasons.isEmpty() ? Optional.empty() : Optional.of(figure),
                columns("season", "visited", "foundAt", "naive", "occupied", "limits", "expected"),
                seasons.stream()
                        .map(season -> new Line(
                                List.of(
                                        String.valueOf(season.season()),
                                        String.valueOf(season.visited()),
                                        String.valueOf(season.detected()),
                                        form("%.2f", season.naive()),
                                        form("%.2f", season.ofTheseSites()),
                                        limits("%.2f", season.ofTheseSitesLower(), season.ofTheseSitesUpper()),
                                        form("%.2f", season.occupancy())),
                                behind.searches(season.season())))
                        .toList(),
                remarks);
    }

    /** {@return a share and its limits in few words; blank without a share} */
    static String brief(OptionalDouble share, OptionalDouble lower, OptionalDouble upper) {
        return share.isEmpty()
                ? ""
                : Texts.of("window.findings.share", share.getAsDouble(), 100 * lower.orElse(0), upper.orElse(1));
    }

    static DoubleFunction<String> two() {
        return value -> form("%.2f", value);
    }

    private static String one(double value) {
        return form("%.1f", value);
    }

    static DoubleFunction<String> whole() {
        return value -> form(value == Math.rint(value) ? "%.0f" : "%.1f", value);
    }

    static DoubleFunction<String> percent() {
        return value -> form("%.0f %%", 100 * value);
    }

    static String sentence(Message message) {
        return TrendWords.sentence(Texts.of(message));
    }

    static String form(String form, double value) {
        return String.format(Locale.ROOT, form, value);
    }

    static String form(String form, OptionalDouble value) {
        return value.isPresent() ? form(form, value.getAsDouble()) : "–";
    }

    private static String signed(OptionalDouble value) {
        return value.isPresent() ? Texts.of("cli.trend.limit", value.getAsDouble()) : "–";
    }

    static String limits(String form, OptionalDouble lower, OptionalDouble upper) {
        String from = form(form, lower);
        String to = form(form, upper);
        return from.equals(to) ? from : from + "–" + to;
    }

    private static String range(int min, int max) {
        return min == max ? String.valueOf(min) : min + "–" + max;
    }

    static List<String> columns(String... names) {
        return Stream.of(names)
                .map(name -> Texts.of("window.findings.column." + name))
                .toList();
    }
}
