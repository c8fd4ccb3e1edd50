package org.ouzelbook.ui.report;

import java.time.LocalDate;
import java.time.Year;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.ui.app.SeasonFindings;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.TrendWords;
import org.ouzelbook.ui.strip.CountFigure;
import org.ouzelbook.ui.strip.Frame;
import org.ouzelbook.ui.strip.RiverStrip;
import org.ouzelbook.ui.strip.SeasonsScene;
import org.ouzelbook.ui.strip.StripDrawing;
import org.ouzelbook.ui.strip.Water;
import org.ouzelbook.ui.strip.Waters;

/**
 * The report for the local group, on the screen and on paper from one source: the finding first. It is made for the public: it tells
 * no nest, no single record, and no person. The same book and program give the same bytes.
 */
public final class SeasonReport implements Paper {
    /** Widths at which letters keep their size on the screen, and can still be read on paper. */
    private static final double STRIP_ON_SCREEN = 944;

    private static final double STRIP_ON_PAPER = 840;
    private static final double STRIP_HEIGHT = 520;

    /** What a page of paper holds below the heading. */
    private static final double STRIP_OF_A_PAGE = 1200;

    private static final double HEIGHT_WITHOUT_SEASONS = 120;
    private static final double HEIGHT_OF_A_SEASON = 60;
    private static final double FIGURE_WIDTH = 760;
    private static final double FIGURE_ON_SCREEN = 300;
    private static final double FIGURE_ON_PAPER = 240;

    private final SeasonFindings findings;

    private SeasonReport(SeasonFindings findings) {
        this.findings = findings;
    }

    /**
     * {@return the report}
     *
     * @param findings what it tells
     */
    public static SeasonReport of(SeasonFindings findings) {
        return new SeasonReport(findings);
    }

    @Override
    public String page(Medium medium) {
        return new Written(findings, new Page(medium)).page();
    }

    /** The report while it is written. */
    private static final class Written {
        private final SeasonFindings findings;
        private final TerritoryMap map;
        private final FindingWords words;
        private final Page page;
        private final Html html;

        private Written(SeasonFindings findings, Page page) {
            this.findings = findings;
            this.map = findings.map();
            this.words = new FindingWords(findings);
            this.page = page;
            this.html = page.body();
        }

        private String page() {
            finding();
            sureness();
            figure();
            strip();
            new SeasonTable(findings).write(html);
            findings.benthos().ifPresent(benthos -> new FoodTable(benthos).write(html));
            explanations();
            caveats();
            new NextSteps(findings).write(html);
            method();
            records();
            section("report.care").element("p", Texts.of("report.care.text")).close("section");
            html.open("footer").text(Texts.of("report.footer")).close("footer");
            return page.document(words.title(), "report", true);
        }

        private void finding() {
            html.open("header")
                    .element("h1", words.title())
                    .element("p", words.walked())
                    .close("header");
            html.element("p", words.count(), "class", "finding");
            words.model()
                    .ifPresent(model -> html.open("p", "class", "direction")
                            .text(model.said() + " ")
                            .element("span", model.but(), "class", "but")
                            .close("p"));
            html.element("p", words.direction(), "class", "direction");
            html.element("p", words.countCaveat(), "class", "small");
            words.seal().ifPresent(told -> html.element("p", told, "class", "small sealed"));
        }

        private void sureness() {
            section("report.sure");
            claims(words.sureness());
            html.close("section");
        }

        private void claims(List<FindingWords.Claim> claims) {
            if (claims.isEmpty()) {
                return;
            }
            html.open("ul");
            for (FindingWords.Claim claim : claims) {
                html.open("li").text(claim.said());
                if (!claim.but().isBlank()) {
                    html.text(" ").element("span", claim.but(), "class", "but");
                }
                html.close("li");
            }
            html.close("ul");
        }

        private void strip() {
            SeasonsScene scene =
                    new PublicMap(findings.records().rivers()).scene(findings.records(), findings.seasons());
            if (scene.waters().list().isEmpty()) {
                return;
            }
            section("report.strip");
            List<StripDrawing> drawings = drawings(scene);
            for (int i = 0; i < drawings.size(); i++) {
                StripDrawing drawing = drawings.get(i);
                String prefix = i == 0 ? "strip" : "strip" + (i + 1);
                html.open("figure", "class", "strip");
                ToldPicture.write(page, drawing.picture(), prefix, 163, new ToldPlaces(findings).strip(drawing));
                if (i == drawings.size() - 1) {
                    html.element("figcaption", Texts.of("report.strip.caption"));
                }
                html.close("figure");
            }
            html.close("section");
        }

        private StripDrawing drawing(SeasonsScene scene) {
            double height = Math.min(
                    STRIP_HEIGHT,
                    HEIGHT_WITHOUT_SEASONS + HEIGHT_OF_A_SEASON * scene.maps().size());
            Frame frame = Frame.fitting(scene.waters(), page.onScreen() ? STRIP_ON_SCREEN : STRIP_ON_PAPER, height);
            return RiverStrip.seasons(scene, frame, Optional.empty());
        }

        /** As many rivers together as a page of paper holds, in their order. */
        private List<StripDrawing> drawings(SeasonsScene scene) {
            StripDrawing whole = drawing(scene);
            if (fits(whole)) {
                return List.of(whole);
            }
            List<StripDrawing> drawings = new ArrayList<>();
            List<Water> together = new ArrayList<>();
            StripDrawing last = whole;
            for (Water water : scene.waters().list()) {
                together.add(water);
                StripDrawing drawing = drawing(scene.on(new Waters(together)));
                if (together.size() > 1 && !fits(drawing)) {
                    drawings.add(last);
                    together = new ArrayList<>(List.of(water));
                    drawing = drawing(scene.on(new Waters(together)));
                }
                last = drawing;
            }
            drawings.add(last);
            return drawings;
        }

        private static boolean fits(StripDrawing drawing) {
            return drawing.picture().height() <= STRIP_OF_A_PAGE;
        }

        /** Two counts at least; of one the sentence above says all, and that it shows no way. */
        private void figure() {
            long counted = findings.trend().seasons().stream()
                    .filter(season -> season.count().isPresent())
                    .count();
            if (counted < 2) {
                return;
            }
            section("report.figure").open("figure", "class", "counts");
            CountFigure figure = CountFigure.of(
                    findings.trend(), FIGURE_WIDTH, page.onScreen() ? FIGURE_ON_SCREEN : FIGURE_ON_PAPER);
            ToldPicture.write(page, figure.picture(), "counts", 145, new ToldPlaces(findings).counts(figure));
            html.element("figcaption", Texts.of("report.figure.caption"))
                    .close("figure")
                    .close("section");
        }

        private void explanations() {
            section("report.explain");
            claims(words.explanations());
            html.element("p", Texts.of("report.explain.others")).close("section");
        }

        private void caveats() {
            PublicMap seen = new PublicMap(findings.records().rivers());
            List<Message> warnings = new ArrayList<>(seen.warnings(map.warnings()));
            warnings.addAll(seen.warnings(findings.trend().warnings()));
            List<String> lines = new ArrayList<>(warnings.stream()
                    .distinct()
                    .map(Texts::of)
                    .map(TrendWords::sentence)
                    .toList());
            lines.add(Texts.of("report.caveats.missed"));
            section("report.caveats");
            html.list(lines).close("section");
        }

        private void method() {
            MapSettings settings = map.settings();
            section("report.method")
                    .element("p", Texts.of("report.method.text"))
                    .open("dl");
            setting(
                    "season",
                    LocalDate.of(
                            map.season(),
                            settings.seasonFrom().getMonth(),
                            settings.seasonFrom().getDayOfMonth()),
                    LocalDate.of(
                            map.season(),
                            settings.seasonTo().getMonth(),
                            settings.seasonTo().getDayOfMonth()));
            if (settings.minimumRegistrations().isPresent()) {
                setting("registrations", settings.minimumRegistrations().get());
            } else {
                setting(
                        "registrationsByVisits",
                        settings.registrationsWithFewVisits(),
                        settings.manyVisits(),
                        settings.registrationsWithManyVisits());
            }
            setting("spread", settings.minimumSpreadDays());
            setting("length", settings.maximumLengthMetres() / 1000);
            setting("gap", settings.doubtfulGapMetres());
            setting("codes", List.copyOf(settings.decisiveCodes()));
            setting("edge", settings.edgeShareInside());
            html.close("dl")
                    .element("p", Texts.of("report.method.sources"), "class", "small")
                    .close("section");
        }

        private void setting(String name, Object... facts) {
            html.element("dt", Texts.of("report.setting.name." + name))
                    .element("dd", Texts.of("report.setting." + name, facts));
        }

        private void records() {
            int last = map.season();
            long visits = findings.records().visits().stream()
                    .filter(visit -> visit.date().getYear() <= last)
                    .filter(visit -> visit.lookedFor().contains(map.species()))
                    .count();
            long sightings = findings.records().sightings().stream()
                    .filter(sighting -> sighting.date().getYear() <= last)
                    .filter(sighting -> sighting.species().equals(map.species()))
                    .count();
            int first = findings.seasons().get(0).season();
            section("report.records")
                    .element(
                            "p",
                            Texts.of(
                                    "report.records.text",
                                    visits,
                                    sightings,
                                    Year.of(first),
                                    Year.of(last),
                                    first < last ? 1 : 0))
                    .close("section");
        }

        private Html section(String key) {
            return html.open("section").element("h2", Texts.of(key));
        }
    }
}
