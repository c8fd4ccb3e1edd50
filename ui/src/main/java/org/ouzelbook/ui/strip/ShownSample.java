package org.ouzelbook.ui.strip;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.ouzelbook.stats.estimator.score.FoundTaxon;
import org.ouzelbook.stats.estimator.score.SampleScore;
import org.ouzelbook.stats.estimator.score.ScoreTable;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.ui.app.Texts;

/**
 * A kick sample with its average score per taxon.
 *
 * @param sample the sample
 * @param average average score per taxon; empty where nothing in it scores
 */
public record ShownSample(KickSample sample, Optional<Double> average) {
    private static final double HALF = 5.5;
    private static final double SMALL = 4;

    static List<ShownSample> of(SurveyRecords records, int season) {
        return records.kickSamples().stream()
                .filter(sample -> sample.date().getYear() == season)
                .sorted(Comparator.comparing(KickSample::date).thenComparing(KickSample::label))
                .map(ShownSample::of)
                .toList();
    }

    static ShownSample of(KickSample sample) {
        List<FoundTaxon> found = sample.taxa().stream()
                .flatMap(taxon -> FoundTaxon.of(taxon.name(), taxon.abundance()).stream())
                .toList();
        SampleScore score = SampleScore.of(found, ScoreTable.bmwp());
        return new ShownSample(
                sample,
                score.average().isPresent() ? Optional.of(score.average().getAsDouble()) : Optional.empty());
    }

    /** Draws the diamond, and its score beside it where there is room and no other word stands. */
    void draw(Sheet sheet, Point at, boolean withScore) {
        diamond(at, withScore ? HALF : SMALL).forEach(sheet::draw);
        average.filter(score -> withScore)
                .ifPresent(score -> sheet.write(new Shape.Label(
                        new Point(at.x() + 8, at.y() + 4),
                        String.format(Locale.ROOT, "%.1f", score),
                        Shape.Anchor.START,
                        Shape.Lettering.SMALL,
                        Ink.MUTED)));
        sheet.answer(
                new HitArea(new Rect(at.x() - 7, at.y() - 7, 14, 14), new Subject.OfSample(sample.id()), this::aloud));
    }

    static List<Shape> shapes(Point at) {
        return diamond(at, HALF);
    }

    private static List<Shape> diamond(Point at, double half) {
        return List.of(Shape.Path.area(
                Ink.SAMPLE,
                Pencil.solid(Ink.PAPER, 1),
                new Point(at.x(), at.y() - half),
                new Shape.Step.To(new Point(at.x() + half, at.y())),
                new Shape.Step.To(new Point(at.x(), at.y() + half)),
                new Shape.Step.To(new Point(at.x() - half, at.y()))));
    }

    String aloud() {
        return Texts.of(
                "strip.sample",
                sample.date(),
                sample.place().chainage(),
                average.isPresent() ? 1 : 0,
                average.orElse(0.0));
    }
}
