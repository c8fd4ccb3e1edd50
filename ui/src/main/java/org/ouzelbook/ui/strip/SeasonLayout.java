package org.ouzelbook.ui.strip;

import java.time.LocalDate;
import java.time.Year;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Shape.Anchor;
import org.ouzelbook.ui.strip.Shape.Lettering;

/** One season: across, river km; down, its dates; river under river. */
final class SeasonLayout {
    private static final double LEFT = 140;
    private static final double RIGHT = 30;
    private static final double BLOCK_GAP = 14;
    private static final double HATCH_HEIGHT = 16;

    /** What is left between words in a row and the symbols in it, in pixels. */
    private static final double WORDS_APART = 12;

    /** With rows nearer to each other a score would stand among symbols. */
    private static final double SCORES_FROM = 30;

    private final SeasonPlan plan;
    private final SeasonScene scene;
    private final Across across;
    private final double width;
    private final List<Block> blocks = new ArrayList<>();
    private final Sheet sheet;
    private final SightingLayer sightings;
    private boolean unwalkedExplained;

    SeasonLayout(SeasonPlan plan, Frame frame) {
        this.plan = plan;
        this.scene = plan.scene();
        this.width = frame.width();
        this.across = new Across(LEFT, frame.width() - RIGHT, frame.from(), frame.to());
        double height = stack(frame.height());
        this.sheet = new Sheet(width, height);
        this.sightings = new SightingLayer(sheet, across);
    }

    /** One river on the paper. */
    private record Block(SeasonPlan.OnWater plan, double top, DateRows rows, double rowsBottom) {
        Water water() {
            return plan.water();
        }

        double rowsTop() {
            return top + Ribbon.HEIGHT;
        }

        double bottom() {
            return rowsBottom + TerritoryRow.HEIGHT;
        }

        /** How far apart the rows are, or would be at the ends, with nothing over the km or the bars. */
        double room(LocalDate date) {
            double y = rows.y(date);
            return Math.min(rows.closest(), 2 * Math.min(y - rowsTop(), rowsBottom - y));
        }

        UUID river() {
            return water().river().id();
        }
    }

    private double stack(double wished) {
        List<SeasonPlan.OnWater> waters = plan.waters();
        double fixed = (Ribbon.HEIGHT + TerritoryRow.HEIGHT) * waters.size() + BLOCK_GAP * (waters.size() - 1);
        double least = waters.stream()
                .mapToDouble(one -> DateRows.leastHeight(one.dates().size()))
                .sum();
        double spare = Math.max(0, wished - fixed - least);
        double weights =
                waters.stream().mapToDouble(one -> DateRows.weight(one.dates())).sum();
        double top = 0;
        for (SeasonPlan.OnWater one : waters) {
            double rowsTop = top + Ribbon.HEIGHT;
            double rowsHeight =
                    DateRows.leastHeight(one.dates().size()) + spare * DateRows.weight(one.dates()) / weights;
            DateRows rows = DateRows.of(one.dates(), rowsTop, rowsHeight);
            Block block = new Block(one, top, rows, rowsTop + rowsHeight);
            blocks.add(block);
            top = block.bottom() + BLOCK_GAP;
        }
        return Math.max(wished, top - BLOCK_GAP);
    }

    StripDrawing drawing() {
        List<Ribbon> ribbons = blocks.stream()
                .map(block -> new Ribbon(sheet, across, block.water(), block.top()))
                .toList();
        Ribbon.elbows(ribbons);
        if (!scene.nests().isEmpty()) {
            sheet.write(new Shape.Label(
                    new Point(width - 4, 12), Texts.of("strip.private"), Anchor.END, Lettering.STRONG, Ink.NEST));
        }
        for (int i = 0; i < blocks.size(); i++) {
            Block block = blocks.get(i);
            territoryRow(block).columns(block.plan().territories());
            ribbons.get(i).kilometres(block.rowsBottom());
            ribbons.get(i).draw(scene.landmarks(), scene.waters());
            rows(block);
            block.plan()
                    .rows()
                    .forEach((date, row) -> sightings.place(
                            row,
                            new SightingLayer.Line(
                                    block.rows().y(date),
                                    lanes(block.room(date)),
                                    block.water().river().name(),
                                    Optional.of(block.water()))));
        }
        for (Block block : blocks) {
            territoryRow(block).bars(block.plan().territories());
            nests(block);
            samples(block);
        }
        sightings.draw(plan.ofTerritories());
        return sheet.drawing(across, plan.words());
    }

    /** One lane on the line and as many above and below it as come no nearer to the next row than to this one. */
    static int lanes(double rowGap) {
        return Math.max(3, Math.min(9, 2 * (int) Math.floor((rowGap / 2 - 5) / 11) + 1));
    }

    private void nests(Block block) {
        scene.nests().stream()
                .filter(shown -> shown.nest().place().riverId().equals(block.river()))
                .forEach(shown -> {
                    double metres = block.water().metres(shown.nest().place().chainage());
                    if (across.shows(metres) && !block.rows().byDate().isEmpty()) {
                        shown.draw(sheet, across.x(metres), block.rows());
                    }
                });
    }

    private void samples(Block block) {
        scene.samples().stream()
                .filter(shown -> shown.sample().place().riverId().equals(block.river()))
                .forEach(shown -> {
                    double metres = block.water().metres(shown.sample().place().chainage());
                    if (across.shows(metres) && !block.rows().byDate().isEmpty()) {
                        double y = block.rows().near(shown.sample().date());
                        shown.draw(
                                sheet,
                                new Point(across.x(metres), y),
                                block.rows().closest() >= SCORES_FROM);
                    }
                });
    }

    private TerritoryRow territoryRow(Block block) {
        return new TerritoryRow(
                sheet,
                across,
                block.water(),
                scene.map().season(),
                scene.shading().flatMap(shading -> shading.of(block.river())),
                block.rowsTop(),
                block.rowsBottom());
    }

    private void rows(Block block) {
        block.rows()
                .byDate()
                .forEach((date, y) -> row(block, date, y, block.plan().visits().getOrDefault(date, List.of())));
        if (block.rows().byDate().isEmpty()) {
            double middle = (block.rowsTop() + block.rowsBottom()) / 2;
            sheet.write(new Shape.Label(
                    new Point((across.left() + across.right()) / 2, middle),
                    Texts.of(
                            "strip.noVisits",
                            scene.map().species(),
                            Year.of(scene.map().season())),
                    Anchor.MIDDLE,
                    Lettering.BODY,
                    Ink.MUTED));
        }
    }

    private void row(Block block, LocalDate date, double y, List<Visit> visits) {
        boolean counts =
                visits.stream().anyMatch(visit -> visit.isEffortFor(scene.map().species()));
        Shape.Label label = new Shape.Label(
                new Point(across.left() - 14, y + 4.5),
                block.plan().rounds().words(date),
                Anchor.END,
                Lettering.BODY,
                counts ? Ink.INK : Ink.MUTED);
        if (sheet.write(label) && !visits.isEmpty()) {
            answer(label.bounds().grown(4), visits.get(0));
        }
        visits.forEach(visit -> visit.walked().ifPresent(walked -> {
            double left = across.clipped(across.x(block.water().metres(walked.lower())));
            double right = across.clipped(across.x(block.water().metres(walked.upper())));
            answer(new Rect(left, y - 7, right - left, 14), visit);
        }));
        if (visits.isEmpty()) {
            return;
        }
        List<Stretch> covered = visits.stream()
                .filter(visit -> visit.effective())
                .flatMap(visit -> visit.walked().stream())
                .toList();
        Unwalked.of(block.water().extent(), covered).forEach(gap -> hatch(block, date, gap, y));
        Stretch.union(covered).forEach(walked -> walkedLine(block.water(), walked, y, false));
        visits.stream()
                .filter(visit -> !visit.effective())
                .flatMap(visit -> visit.walked().stream())
                .forEach(walked -> walkedLine(block.water(), walked, y, true));
    }

    private void answer(Rect area, Visit visit) {
        sheet.answer(new HitArea(area, new Subject.OfVisit(visit.id()), () -> Texts.of("strip.visit", visit.date())));
    }

    private void hatch(Block block, LocalDate date, Stretch gap, double y) {
        Water water = block.water();
        double left = across.clipped(across.x(water.metres(gap.lower())));
        double right = across.clipped(across.x(water.metres(gap.upper())));
        if (right - left < 0.5) {
            return;
        }
        Rect area = new Rect(left, y - HATCH_HEIGHT / 2, right - left, HATCH_HEIGHT);
        sheet.draw(new Shape.Hatch(area));
        sheet.answer(new HitArea(
                area,
                new Subject.OfUnwalked(scene.map().season(), block.river(), gap, Optional.of(date)),
                () -> Texts.of("strip.unwalked", gap, block.plan().rounds().words(date))));
        for (double x = left + 12; !unwalkedExplained && x < right - 78; x += 24) {
            Shape.Label words = new Shape.Label(
                    new Point(x, y + 4), Texts.of("strip.notWalked"), Anchor.START, Lettering.SMALL, Ink.MUTED);
            if (isFree(block, date, words.bounds().grown(WORDS_APART))) {
                sheet.draw(new Shape.Box(words.bounds().grown(2), 3, Optional.of(Ink.UNWALKED), Optional.empty()));
                unwalkedExplained = sheet.write(words);
            }
        }
    }

    /** Whether no sighting of a row lies there. */
    private boolean isFree(Block block, LocalDate date, Rect room) {
        SightingRow row = block.plan().rows().get(date);
        return row == null || row.first(across.metres(room.x())) == row.first(Math.nextUp(across.metres(room.right())));
    }

    private void walkedLine(Water water, Stretch walked, double y, boolean dotted) {
        double left = across.clipped(across.x(water.metres(walked.lower())));
        double right = across.clipped(across.x(water.metres(walked.upper())));
        if (right > left) {
            sheet.draw(new Shape.Line(new Point(left, y), new Point(right, y), new Pencil(Ink.WALKED, 1.2, dotted)));
        }
    }
}
