package org.ouzelbook.ui.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.SightingQuery;
import org.ouzelbook.ui.app.BookRecords;
import org.ouzelbook.ui.app.ModelShading;
import org.ouzelbook.ui.app.ShadeByModel;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.WrongRequest;
import org.ouzelbook.ui.app.leak.Leak;
import org.ouzelbook.ui.app.leak.LeakCheck;
import org.ouzelbook.ui.app.leak.PrivateFile;
import org.ouzelbook.ui.app.leak.PublicFile;
import org.ouzelbook.ui.report.PublicMap;
import org.ouzelbook.ui.strip.BirdScene;
import org.ouzelbook.ui.strip.Frame;
import org.ouzelbook.ui.strip.Palette;
import org.ouzelbook.ui.strip.PlaceScene;
import org.ouzelbook.ui.strip.ReadyStrip;
import org.ouzelbook.ui.strip.RiverStrip;
import org.ouzelbook.ui.strip.SeasonScene;
import org.ouzelbook.ui.strip.SeasonsScene;
import org.ouzelbook.ui.strip.StripDrawing;
import org.ouzelbook.ui.strip.StripView;
import org.ouzelbook.ui.strip.SvgPen;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code picture}: the river strip as a file, just as the window shows it. */
@Command(name = "picture")
final class PictureCommand implements Callable<Integer> {
    private static final double PLACE_METRES = 150;

    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "BOOK")
    private @Nullable Path book;

    @Parameters(index = "1", paramLabel = "FILE")
    private @Nullable Path file;

    @Option(
            names = "--species",
            paramLabel = "NAME",
            defaultValue = "dipper",
            converter = AnalysisOptions.SpeciesNamed.class)
    private Species species = Species.DIPPER;

    @Option(names = "--season", paramLabel = "YEAR")
    private @Nullable Integer season;

    @Option(names = "--place", paramLabel = "NAME")
    private @Nullable String place;

    @Option(names = "--bird", paramLabel = "LABEL")
    private @Nullable String bird;

    @Option(names = "--by-model")
    private boolean byModel;

    @Option(names = "--nests")
    private boolean nests;

    @Option(names = "--public")
    private boolean isPublic;

    @Option(names = "--dark")
    private boolean dark;

    @Option(names = "--width", paramLabel = "PIXELS", defaultValue = "1060")
    private double width;

    @Option(names = "--height", paramLabel = "PIXELS", defaultValue = "640")
    private double height;

    PictureCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        if (isPublic && (season != null || place != null || bird != null || byModel || nests)) {
            throw new WrongRequest(Message.of("cli.picture.wrong.public"));
        }
        SurveyRecords records;
        LeakCheck check;
        try (Book open = Book.open(Objects.requireNonNull(book))) {
            records = open.read(view -> BookRecords.of(view, SightingQuery.ALL, day -> true));
            check = open.read(view -> LeakCheck.of(view, false));
        }
        List<TerritoryMap> maps = maps(records);
        if (maps.isEmpty()) {
            throw new WrongRequest(Message.of("cli.picture.nothing", species));
        }
        ReadyStrip strip = strip(records, maps);
        Frame frame = strip.farthest(Math.max(480, width), Math.max(200, height));
        StripDrawing drawing = strip.drawing(frame);
        Path out = Objects.requireNonNull(file);
        Palette palette = dark ? Palette.DARK : Palette.LIGHT;
        if (isPublic) {
            String svg = SvgPen.write(drawing.picture(), palette, "s");
            List<Leak> leaks = PublicFile.write(check, out, svg.getBytes(StandardCharsets.UTF_8));
            if (!leaks.isEmpty()) {
                terminal.err().println(Texts.of("cli.picture.stopped"));
                LeakLines.print(leaks, terminal);
                return ExitCode.PROBLEMS;
            }
        } else {
            PrivateFile.write(out, SvgPen.write(RiverStrip.sheet(drawing), palette, "s"));
        }
        terminal.out().println(Texts.of("cli.picture.done", drawing.title(), out.toString()));
        return ExitCode.DONE;
    }

    private List<TerritoryMap> maps(SurveyRecords records) {
        TreeSet<Integer> years = new TreeSet<>();
        records.visits().stream()
                .filter(visit -> visit.lookedFor().contains(species))
                .forEach(visit -> years.add(visit.date().getYear()));
        records.sightings().stream()
                .filter(sighting -> sighting.species().equals(species))
                .forEach(sighting -> years.add(sighting.date().getYear()));
        List<TerritoryMap> maps = new ArrayList<>();
        for (int year : years) {
            maps.add(TerritoryMap.of(records, species, year, MapSettings.usualFor(species), Water.ALL));
        }
        return maps;
    }

    private ReadyStrip strip(SurveyRecords records, List<TerritoryMap> maps) {
        if (place != null) {
            return RiverStrip.ready(PlaceScene.of(records, species, place(records, place), nests));
        }
        if (bird != null) {
            return RiverStrip.ready(BirdScene.of(records, bird(records, bird), maps));
        }
        if (season != null) {
            int year = season;
            TerritoryMap map = maps.stream()
                    .filter(one -> one.season() == year)
                    .findFirst()
                    .orElseThrow(() -> new WrongRequest(Message.of("cli.picture.noSeason", species, year)));
            SeasonScene scene = SeasonScene.of(records, map)
                    .shaded(Optional.ofNullable(shadings(records, List.of(map)).get(map.season())));
            return RiverStrip.ready(nests ? scene.withNests(records) : scene);
        }
        if (isPublic) {
            return RiverStrip.ready(new PublicMap(records.rivers()).scene(records, maps));
        }
        SeasonsScene scene = SeasonsScene.of(records, maps).shaded(shadings(records, maps));
        return RiverStrip.ready(nests ? scene.withNests(records) : scene);
    }

    private Map<Integer, ModelShading> shadings(SurveyRecords records, List<TerritoryMap> maps) {
        if (!byModel) {
            return Map.of();
        }
        try (ProgressLine progress = new ProgressLine(terminal, Texts.of("cli.picture.counting"))) {
            return ShadeByModel.of(records, maps, progress);
        }
    }

    private static StripView.OnePlace place(SurveyRecords records, String name) {
        Landmark found = records.landmarks().stream()
                .filter(mark -> mark.name().equalsIgnoreCase(name)
                        || mark.aliases().stream().anyMatch(name::equalsIgnoreCase))
                .findFirst()
                .orElseThrow(() -> new WrongRequest(Message.of("cli.picture.noPlace", name)));
        double metres = found.place().chainage().metres();
        return new StripView.OnePlace(
                found.place().riverId(),
                new Stretch(new Chainage(Math.max(0, metres - PLACE_METRES)), new Chainage(metres + PLACE_METRES)),
                found.name());
    }

    private static RingedBird bird(SurveyRecords records, String label) {
        return records.ringedBirds().stream()
                .filter(one -> one.label().equalsIgnoreCase(label))
                .findFirst()
                .orElseThrow(() -> new WrongRequest(Message.of("cli.picture.noBird", label)));
    }
}
