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
import org.ouzelbook.stats.survey.SiteOccupancy;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.Counting;
import org.ouzelbook.ui.app.DensityAnswer;
import org.ouzelbook.ui.app.OccupancyAnswer;
import org.ouzelbook.ui.app.Scope;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.TrendAnswer;
import org.ouzelbook.ui.app.TrendWords;
import org.ouzelbook.ui.app.estimate.EstimateOccupancy;
import org.ouzelbook.ui.strip.IntervalFigure;
import org.ouzelbook.ui.strip.IntervalFigure.Figure;
import org.ouzelbook.ui.strip.IntervalFigure.Row;
import org.ouzelbook.ui.strip.IntervalFigure.Scale;
import org.ouzelbook.ui.window.FindingSheet.Line;

/** The findings that rest on counts: density, trend and occupancy. */
final class CountSheets {
    private static final int DRAWS = 200;

    private final Book book;
    private final Scope scope;
    private final RecordsBehind behind;
    private final double width;

    /**
     * @param book the book
     * @param contents what it holds
     * @param width width of the pictures, in pixels
     */
    CountSheets(Book book, BookContents contents, double width) {
        this.book = book;
        this.scope = Scope.everything().of(contents.species());
        this.behind = new RecordsBehind(contents);
        this.width = width;
    }

    /**
     * {@return territories per km, by water and season}
     *
     * @param progress hears how far it is, and may stop
     */
    FindingSheet density(Progress progress) {
        DensityAnswer answer = DensityAnswer.of(book, scope, UnaryOperator.identity(), Counting.BY_RULE, progress);
        String title = Topic.DENSITY.question();
        if (answer.rows().isEmpty()) {
            return FindingSheet.refused(title, Texts.of("window.findings.none", scope.species()));
        }
        List<DensityAnswer.Row> rows = answer.rows().stream()
                .sorted(Comparator.comparing(CountSheets::water).thenComparingInt(DensityAnswer.Row::season))
                .toList();
        Figure figure = IntervalFigure.of(
                Texts.of("window.findings.term.density"),
                new Scale(Texts.of("window.findings.perKm"), 0, OptionalDouble.empty(), two()),
                rows.stream()
                        .map(row -> new Row(
                                water(row),
                                String.valueOf(row.season()),
                                row.perKm(),
                                row.lower(),
                                row.upper(),
                                List.of(),
                                row.why().map(Texts::of).orElse("")))
                        .toList(),
                width);
        int last = rows.stream().mapToInt(DensityAnswer.Row::season).max().orElseThrow();
        String sentence = rows.stream()
                .filter(row -> row.season() == last && row.reach().isEmpty())
                .map(row -> row.perKm().isPresent()
                        ? Texts.of(
                                "window.findings.densityOf",
                                row.river(),
                                row.perKm().getAsDouble(),
                                row.lower().orElse(0),
                                row.upper().orElse(0))
                        : Texts.of(
                                "window.findings.noDensity",
                                row.river(),
                                row.why().map(Texts::of).orElse("")))
                .collect(Collectors.joining("; "));
        List<String> remarks = new ArrayList<>();
        remarks.add(Texts.of("cli.density.reading"));
        rows.stream().flatMap(row -> row.method().stream()).findFirst().ifPresent(how -> remarks.add(sentence(how)));
        return new FindingSheet(
                title,
                rows.stream()
                        .filter(row -> row.season() == last && row.reach().isEmpty())
                        .flatMap(row -> row.perKm().stream().mapToObj(two()))
                        .collect(Collectors.joining(" · ")),
                Texts.of("window.findings.inSeason", String.valueOf(last), sentence),
                Optional.of(figure),
                columns("water", "season", "territories", "range", "km", "perKm", "limits"),
                rows.stream().map(this::line).toList(),
                remarks);
    }

    private static String water(DensityAnswer.Row row) {
        return row.reach().orElse(row.river());
    }

    private Line line(DensityAnswer.Row row) {
        return new Line(
                List.of(
                        water(row),
                        String.valueOf(row.season()),
                        String.valueOf(row.territories()),
                        range(row.min(), row.max()),
                        form("%.1f", row.surveyedKm()),
                        form("%.2f", row.perKm()),
                        limits("%.2f", row.lower(), row.upper())),
                behind.count(row.season(), Optional.of(row.river()), row.reach()));
    }

    /**
     * {@return the counts of all water, season by season, and whether they changed}
     *
     * @param progress hears how far it is, and may stop
     */
    FindingSheet trend(Progress progress) {
        TrendAnswer answer = TrendAnswer.of(book, scope, UnaryOperator.identity(), Counting.BY_RULE, progress);
        Figure figure = IntervalFigure.of(
                Texts.of("window.findings.term.trend"),
                new Scale(Texts.of("window.findings.territories"), 0, OptionalDouble.empty(), whole()),
                answer.seasons().stream()
                        .map(season -> new Row(
                                "",
                                String.valueOf(season.season()),
                                season.count(),
                                season.lower(),
                                season.upper(),
                                List.of(),
                                season.why().map(Texts::of).orElse("")))
                        .toList(),
                width);
        List<String> remarks = new ArrayList<>();
        if (answer.perYear().percent().isPresent()) {
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
        return new FindingSheet(
                Topic.TREND.question(),
                answer.perYear().percent().isPresent()
                        ? Texts.of(
                                "window.findings.aYear",
                                signed(answer.perYear().percent()),
                                signed(answer.perYear().lower()),
                                signed(answer.perYear().upper()))
                        : "",
                sentence(answer.verdict()),
                Optional.of(figure),
                columns("season", "territories", "range", "km", "visits", "remark"),
                answer.seasons().stream()
                        .map(season -> new Line(
                                List.of(
                                        String.valueOf(season.season()),
                                        form("%.0f", season.count()),
                                        season.count().isPresent()
                                                ? limits("%.0f", season.lower(), season.upper())
                                                : "–",
                                        form("%.1f", season.surveyedKm()),
                                        String.valueOf(season.effectiveVisits()),
                                        season.why()
                                                .map(Texts::of)
                                                .orElse(season.imputed() ? Texts.of("window.findings.filledIn") : "")),
                                behind.count(season.season(), Optional.empty(), Optional.empty())))
                        .toList(),
                remarks);
    }

    /** {@return the share of the sites that birds used, season by season} */
    FindingSheet occupancy() {
        OccupancyAnswer answer = OccupancyAnswer.of(
                book,
                scope,
                new OccupancyAnswer.Question(
                        UnaryOperator.identity(), SiteOccupancy.Model.CONSTANT, false, Optional.of(DRAWS)));
        List<EstimateOccupancy.Season> seasons = answer.bySeason();
        Figure figure = IntervalFigure.of(
                Texts.of("window.findings.term.occupancy"),
                new Scale(Texts.of("window.findings.occupied"), 0, OptionalDouble.of(1), percent()),
                seasons.stream()
                        .map(season -> new Row(
                                "",
                                String.valueOf(season.season()),
                                season.occupancy(),
                                season.lower(),
                                season.upper(),
                                season.naive().stream().boxed().toList(),
                                season.why().map(Texts::of).orElse("")))
                        .toList(),
                width);
        Optional<EstimateOccupancy.Season> last =
                seasons.isEmpty() ? Optional.empty() : Optional.of(seasons.get(seasons.size() - 1));
        String sentence = answer.why()
                .map(CountSheets::sentence)
                .or(() -> last.filter(season -> season.occupancy().isPresent())
                        .map(season -> Texts.of(
                                "window.findings.occupancyOf",
                                String.valueOf(season.season()),
                                season.occupancy().orElseThrow(),
                                season.lower().orElse(0),
                                season.upper().orElse(1),
                                season.naive().orElse(0))))
                .orElseGet(() -> Texts.of("window.findings.none", scope.species()));
        List<String> remarks = Stream.concat(
                        Stream.of(Texts.of("window.findings.naiveDots")),
                        answer.warnings().stream().map(CountSheets::sentence))
                .toList();
        return new FindingSheet(
                Topic.OCCUPANCY.question(),
                last.map(season -> brief(season.occupancy(), season.lower(), season.upper()))
                        .orElse(""),
                sentence,
                answer.why().isPresent() || seasons.isEmpty() ? Optional.empty() : Optional.of(figure),
                columns("season", "visited", "foundAt", "naive", "occupied", "limits"),
                seasons.stream()
                        .map(season -> new Line(
                                List.of(
                                        String.valueOf(season.season()),
                                        String.valueOf(season.visited()),
                                        String.valueOf(season.detected()),
                                        form("%.2f", season.naive()),
                                        form("%.2f", season.occupancy()),
                                        limits("%.2f", season.lower(), season.upper())),
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
        return form("%+.1f", value).replace('-', '−');
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
