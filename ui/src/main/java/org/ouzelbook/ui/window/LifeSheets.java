package org.ouzelbook.ui.window;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ouzelbook.stats.survey.SeasonMaps;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.ui.app.BenthosAnswer;
import org.ouzelbook.ui.app.NestsAnswer;
import org.ouzelbook.ui.app.Scope;
import org.ouzelbook.ui.app.SurvivalAnswer;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.estimate.EstimateNests;
import org.ouzelbook.ui.app.estimate.EstimateSurvival;
import org.ouzelbook.ui.app.estimate.Parameter;
import org.ouzelbook.ui.strip.IntervalFigure;
import org.ouzelbook.ui.strip.IntervalFigure.Figure;
import org.ouzelbook.ui.strip.IntervalFigure.Row;
import org.ouzelbook.ui.strip.IntervalFigure.Scale;
import org.ouzelbook.ui.window.FindingSheet.Line;

/** The findings of how birds live: their nests, their survival, and what the river bed holds. */
final class LifeSheets {
    private static final double LEVEL = 0.95;
    private static final double LOWEST_ASPT = 3;
    private static final double HIGHEST_ASPT = 8;

    private final SeasonMaps maps;
    private final Scope scope;
    private final RecordsBehind behind;
    private final double width;

    /**
     * @param contents what it holds
     * @param width width of the pictures, in pixels
     */
    LifeSheets(BookContents contents, double width) {
        this.maps = contents.mapped();
        this.scope = Scope.everything().of(contents.species());
        this.behind = new RecordsBehind(contents);
        this.width = width;
    }

    /**
     * {@return how nests fare}
     *
     * @param progress hears how far the work has come, and may stop it
     */
    FindingSheet nests(Progress progress) {
        NestsAnswer answer = NestsAnswer.of(maps, scope, progress);
        Figure figure = IntervalFigure.of(
                Texts.of("window.findings.term.nests"),
                new Scale(Texts.of("window.findings.probability"), 0, OptionalDouble.of(1), CountSheets.percent()),
                List.of(
                        row("window.findings.success", answer.success()),
                        row("window.findings.successByStage", answer.successByStage()),
                        row("window.findings.apparent", answer.apparent())),
                width);
        EstimateNests.Figure success = answer.success();
        String sentence = success.estimate().isPresent()
                ? Texts.of(
                        "window.findings.successOf",
                        success.estimate().getAsDouble(),
                        success.lower().orElse(0),
                        success.upper().orElse(1),
                        answer.losses(),
                        answer.exposureDays())
                : success.why().map(CountSheets::sentence).orElse("");
        List<String> remarks = new ArrayList<>();
        remarks.add(mean("window.findings.clutch", answer.clutch()));
        remarks.add(mean("window.findings.fledged", answer.fledgedPerAttempt()));
        remarks.add(mean("window.findings.perTerritory", answer.fledgedPerTerritory()));
        remarks.add(Texts.of("cli.nests.reading"));
        answer.warnings().forEach(warning -> remarks.add(CountSheets.sentence(warning)));
        remarks.add(Texts.of("cli.nests.law"));
        return new FindingSheet(
                Topic.NESTS.question(),
                CountSheets.brief(success.estimate(), success.lower(), success.upper()),
                sentence,
                Optional.of(figure),
                CountSheets.columns("season", "attempts", "succeeded", "failed", "unknownEnd", "firstEgg"),
                answer.seasons().stream()
                        .map(season -> new Line(
                                List.of(
                                        String.valueOf(season.season()),
                                        String.valueOf(season.attempts()),
                                        String.valueOf(season.succeeded()),
                                        String.valueOf(season.failed()),
                                        String.valueOf(season.unknown()),
                                        season.medianFirstEgg().map(Texts::word).orElse("–")),
                                behind.nests(season.season())))
                        .toList(),
                remarks);
    }

    private static Row row(String key, EstimateNests.Figure figure) {
        return new Row(
                "",
                Texts.of(key),
                figure.estimate(),
                figure.lower(),
                figure.upper(),
                List.of(),
                figure.why().map(Texts::of).orElse(""));
    }

    private static String mean(String key, NestsAnswer.Mean mean) {
        return mean.mean().isPresent()
                ? Texts.of(
                        key,
                        mean.mean().getAsDouble(),
                        mean.lower().orElse(0),
                        mean.upper().orElse(0),
                        mean.n())
                : mean.why().map(CountSheets::sentence).orElse("");
    }

    /**
     * {@return how ringed birds survive}
     *
     * @param progress may stop the work
     */
    FindingSheet survival(Progress progress) {
        SurvivalAnswer answer = SurvivalAnswer.of(
                maps.records(), scope, EstimateSurvival.Model.of("", "", Optional.empty(), LEVEL), progress);
        List<Parameter> chances = answer.parameters().stream()
                .filter(parameter -> parameter.scale().equals("natural"))
                .toList();
        Optional<Figure> figure = chances.isEmpty()
                ? Optional.empty()
                : Optional.of(IntervalFigure.of(
                        Texts.of("window.findings.term.survival"),
                        new Scale(
                                Texts.of("window.findings.probability"),
                                0,
                                OptionalDouble.of(1),
                                CountSheets.percent()),
                        chances.stream()
                                .map(parameter -> new Row(
                                        "",
                                        name(parameter),
                                        parameter.estimate(),
                                        parameter.lower(),
                                        parameter.upper(),
                                        List.of(),
                                        parameter.why().map(Texts::of).orElse("")))
                                .toList(),
                        width));
        String sentence = answer.why()
                .map(CountSheets::sentence)
                .or(() -> survival(chances)
                        .map(parameter -> Texts.of(
                                "window.findings.survivalOf",
                                parameter.estimate().getAsDouble(),
                                parameter.lower().orElse(0),
                                parameter.upper().orElse(1),
                                answer.birds(),
                                answer.occasions())))
                .orElse("");
        List<String> remarks = new ArrayList<>();
        remarks.add(Texts.of("cli.survival.reading"));
        answer.warnings().forEach(warning -> remarks.add(CountSheets.sentence(warning)));
        remarks.add(Texts.of("cli.survival.law"));
        return new FindingSheet(
                Topic.SURVIVAL.question(),
                survival(chances)
                        .map(one -> CountSheets.brief(one.estimate(), one.lower(), one.upper()))
                        .orElse(""),
                sentence,
                figure,
                CountSheets.columns("season", "readings"),
                answer.seasons().stream()
                        .map(season -> {
                            List<Evidence> readings = behind.readings(season);
                            return new Line(List.of(String.valueOf(season), String.valueOf(readings.size())), readings);
                        })
                        .toList(),
                remarks);
    }

    private static Optional<Parameter> survival(List<Parameter> chances) {
        return chances.stream()
                .filter(parameter -> parameter.part().equals("survival")
                        && parameter.estimate().isPresent())
                .findFirst();
    }

    private static String name(Parameter parameter) {
        String part = parameter.part().equals("survival") ? "window.findings.survives" : "window.findings.met";
        return parameter.term().equals("intercept")
                ? Texts.of(part)
                : Texts.of("window.findings.ofTerm", Texts.of(part), parameter.term());
    }

    /**
     * {@return what kick samples score, place by place}
     *
     * @param progress hears how far the work has come, and may stop it
     */
    FindingSheet prey(Progress progress) {
        BenthosAnswer answer = BenthosAnswer.of(maps, scope, progress);
        Map<String, List<BenthosAnswer.Sample>> places = new LinkedHashMap<>();
        answer.samples().stream()
                .sorted((one, other) -> one.river().equals(other.river())
                        ? Double.compare(one.km(), other.km())
                        : one.river().compareTo(other.river()))
                .forEach(sample -> places.computeIfAbsent(place(sample), unused -> new ArrayList<>())
                        .add(sample));
        List<Row> rows = new ArrayList<>();
        places.values().forEach(samples -> rows.add(row(samples)));
        BenthosAnswer.Sample last = answer.samples().get(answer.samples().size() - 1);
        List<String> remarks = new ArrayList<>();
        remarks.add(Texts.of("window.findings.asptDots"));
        remarks.add(CountSheets.sentence(answer.caution()));
        answer.warnings().forEach(warning -> remarks.add(CountSheets.sentence(warning)));
        return new FindingSheet(
                Topic.PREY.question(),
                last.aspt().isPresent()
                        ? Texts.of("window.findings.lastAspt", last.aspt().getAsDouble())
                        : "",
                Texts.of(
                        "window.findings.preyOf",
                        answer.samples().size(),
                        places.size(),
                        last.date(),
                        last.aspt().isPresent() ? CountSheets.form("%.2f", last.aspt()) : "–",
                        last.taxa()),
                Optional.of(IntervalFigure.of(
                        Texts.of("window.findings.term.prey"),
                        new Scale(
                                Texts.of("window.findings.aspt"),
                                LOWEST_ASPT,
                                OptionalDouble.of(HIGHEST_ASPT),
                                value -> CountSheets.form("%.1f", value)),
                        rows,
                        width)),
                CountSheets.columns("sample", "date", "water", "kmAt", "bmwp", "taxa", "aspt", "prey"),
                answer.samples().stream()
                        .map(sample -> new Line(
                                List.of(
                                        sample.sample(),
                                        Texts.word(sample.date()),
                                        sample.river(),
                                        CountSheets.form("%.2f", sample.km()),
                                        figure(sample, sample.bmwp()),
                                        figure(sample, sample.taxa()),
                                        CountSheets.form("%.2f", sample.aspt()),
                                        figure(sample, sample.preyRanks())),
                                List.of(new Evidence(
                                        Texts.of(
                                                "window.findings.sample",
                                                sample.sample(),
                                                sample.date(),
                                                sample.river(),
                                                CountSheets.form("%.2f", sample.km())),
                                        sample.date().getYear(),
                                        Optional.empty()))))
                        .toList(),
                remarks);
    }

    private static String place(BenthosAnswer.Sample sample) {
        return sample.river() + CountSheets.form(" %.2f", sample.km());
    }

    /** All samples of one place: from the lowest to the highest, each a small dot, the last one the value. */
    private static Row row(List<BenthosAnswer.Sample> samples) {
        BenthosAnswer.Sample last = samples.get(samples.size() - 1);
        List<Double> all = samples.stream()
                .flatMap(sample -> sample.aspt().stream().boxed())
                .toList();
        return new Row(
                last.river(),
                Texts.of("window.findings.km", CountSheets.form("%.2f", last.km())),
                last.aspt(),
                all.stream().mapToDouble(Double::doubleValue).min(),
                all.stream().mapToDouble(Double::doubleValue).max(),
                all,
                last.why().map(Texts::of).orElse(""));
    }

    private static String figure(BenthosAnswer.Sample sample, int figure) {
        return sample.isComplete() ? String.valueOf(figure) : Texts.of("cli.benthos.atLeast", String.valueOf(figure));
    }
}
