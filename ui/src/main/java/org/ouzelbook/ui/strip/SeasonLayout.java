package org.ouzelbook.ui.strip;

import java.time.LocalDate;
import java.time.Year;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.UUID;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.River;
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

    private final SeasonScene scene;
    private final Optional<Subject> selected;
    private final Across across;
    private final double width;
    private final List<Block> blocks = new ArrayList<>();
    private final double height;
    private final Sheet sheet;
    private final SightingLayer sightings;
    private boolean unwalkedExplained;

    SeasonLayout(SeasonScene scene, Frame frame, Optional<Subject> selected) {
        this.scene = scene;
        this.selected = selected;
        this.width = frame.width();
        this.across = new Across(LEFT, frame.width() - RIGHT, frame.from(), frame.to());
        this.height = stack(frame.height());
        this.sheet = new Sheet(width, height);
        this.sightings = new SightingLayer(sheet, across);
    }

    /** One river on the paper. */
    private record Block(Water water, Rounds rounds, double top, DateRows rows, double rowsBottom) {
        double rowsTop() {
            return top + Ribbon.HEIGHT;
        }

        double bottom() {
            return rowsBottom + TerritoryRow.HEIGHT;
        }
    }

    private double stack(double wished) {
        List<Rounds> rounds = scene.waters().list().stream().map(this::roundsOf).toList();
        List<SortedSet<LocalDate>> dates = rounds.stream().map(Rounds::rows).toList();
        double fixed = (Ribbon.HEIGHT + TerritoryRow.HEIGHT) * dates.size() + BLOCK_GAP * (dates.size() - 1);
        double least = dates.stream()
                .mapToDouble(set -> DateRows.leastHeight(set.size()))
                .sum();
        double spare = Math.max(0, wished - fixed - least);
        double weights = dates.stream().mapToDouble(DateRows::weight).sum();
        double top = 0;
        for (int i = 0; i < dates.size(); i++) {
            SortedSet<LocalDate> own = dates.get(i);
            double rowsTop = top + Ribbon.HEIGHT;
            double rowsHeight = DateRows.leastHeight(own.size()) + spare * DateRows.weight(own) / weights;
            DateRows rows = DateRows.of(own, rowsTop, rowsHeight);
            Block block = new Block(scene.waters().list().get(i), rounds.get(i), top, rows, rowsTop + rowsHeight);
            blocks.add(block);
            top = block.bottom() + BLOCK_GAP;
        }
        return Math.max(wished, top - BLOCK_GAP);
    }

    private Rounds roundsOf(Water water) {
        UUID riverId = water.river().id();
        return Rounds.of(scene.visitsOf(riverId), scene.sightingsOf(riverId));
    }

    StripDrawing drawing() {
        List<River> rivers = scene.waters().list().stream().map(Water::river).toList();
        Set<UUID> ofTerritories = new HashSet<>();
        List<Ribbon> ribbons = blocks.stream()
                .map(block -> new Ribbon(sheet, across, block.water(), block.top()))
                .toList();
        Ribbon.elbows(ribbons);
        for (int i = 0; i < blocks.size(); i++) {
            Block block = blocks.get(i);
            territoryColumns(block);
            ribbons.get(i).kilometres(block.rowsBottom());
            ribbons.get(i).draw(scene.landmarks(), rivers);
            rows(block);
            sightings.place(
                    block.water(),
                    block.rounds(),
                    block.rows(),
                    scene.sightingsOf(block.water().river().id()));
            territoriesOf(block).stream()
                    .filter(Territory::accepted)
                    .flatMap(territory -> territory.registrations().stream())
                    .forEach(sighting -> ofTerritories.add(sighting.id()));
        }
        for (Block block : blocks) {
            territoryRow(block).bars(territoriesOf(block), selectedOn(block));
        }
        sightings.draw(ofTerritories, meant());
        return new StripDrawing(
                width,
                height,
                sheet.shapes(),
                sheet.areas(),
                across,
                StripWords.title(scene),
                StripWords.description(scene));
    }

    private List<Territory> territoriesOf(Block block) {
        return scene.mapOf(block.water().river().id())
                .map(TerritoryMap.RiverMap::territories)
                .orElse(List.of());
    }

    private TerritoryRow territoryRow(Block block) {
        return new TerritoryRow(
                sheet, across, block.water(), scene.map().season(), block.rowsTop(), block.rowsBottom());
    }

    private void territoryColumns(Block block) {
        territoryRow(block).columns(territoriesOf(block));
    }

    private Optional<String> selectedOn(Block block) {
        return selected.flatMap(subject -> subject instanceof Subject.OfTerritory territory
                        && territory.season() == scene.map().season()
                        && territory.riverId().equals(block.water().river().id())
                ? Optional.of(territory.id())
                : Optional.empty());
    }

    private Set<UUID> meant() {
        Set<UUID> meant = new HashSet<>();
        selected.ifPresent(subject -> {
            if (subject instanceof Subject.OfSighting sighting) {
                meant.add(sighting.id());
            }
        });
        for (Block block : blocks) {
            selectedOn(block)
                    .ifPresent(id -> territoriesOf(block).stream()
                            .filter(territory -> territory.id().equals(id))
                            .flatMap(territory -> territory.hangsOn().stream())
                            .forEach(hangs -> meant.addAll(hangs.records())));
        }
        return meant;
    }

    private void rows(Block block) {
        Map<LocalDate, List<Visit>> visits = new TreeMap<>();
        scene.visitsOf(block.water().river().id())
                .forEach(visit -> visits.computeIfAbsent(block.rounds().row(visit.date()), date -> new ArrayList<>())
                        .add(visit));
        block.rows().byDate().forEach((date, y) -> row(block, date, y, visits.getOrDefault(date, List.of())));
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
                block.rounds().words(date),
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
        Unwalked.of(block.water().extent(), covered).forEach(gap -> hatch(block.water(), gap, y));
        Stretch.union(covered).forEach(walked -> walkedLine(block.water(), walked, y, false));
        visits.stream()
                .filter(visit -> !visit.effective())
                .flatMap(visit -> visit.walked().stream())
                .forEach(walked -> walkedLine(block.water(), walked, y, true));
    }

    private void answer(Rect area, Visit visit) {
        sheet.answer(new HitArea(area, new Subject.OfVisit(visit.id()), Texts.of("strip.visit", visit.date())));
    }

    private void hatch(Water water, Stretch gap, double y) {
        double left = across.clipped(across.x(water.metres(gap.lower())));
        double right = across.clipped(across.x(water.metres(gap.upper())));
        if (right - left < 0.5) {
            return;
        }
        sheet.draw(new Shape.Hatch(new Rect(left, y - HATCH_HEIGHT / 2, right - left, HATCH_HEIGHT)));
        if (!unwalkedExplained && right - left > 90) {
            Shape.Label words = new Shape.Label(
                    new Point(left + 12, y + 4), Texts.of("strip.notWalked"), Anchor.START, Lettering.SMALL, Ink.MUTED);
            sheet.draw(new Shape.Box(words.bounds().grown(2), 3, Optional.of(Ink.UNWALKED), Optional.empty()));
            unwalkedExplained = sheet.write(words);
        }
    }

    private void walkedLine(Water water, Stretch walked, double y, boolean dotted) {
        double left = across.clipped(across.x(water.metres(walked.lower())));
        double right = across.clipped(across.x(water.metres(walked.upper())));
        if (right > left) {
            sheet.draw(new Shape.Line(new Point(left, y), new Point(right, y), new Pencil(Ink.WALKED, 1.2, dotted)));
        }
    }
}
