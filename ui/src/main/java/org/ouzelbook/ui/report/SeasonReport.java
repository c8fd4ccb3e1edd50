package org.ouzelbook.ui.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.Year;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.ui.app.SeasonFindings;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.TrendWords;
import org.ouzelbook.ui.strip.CountFigure;
import org.ouzelbook.ui.strip.Frame;
import org.ouzelbook.ui.strip.Palette;
import org.ouzelbook.ui.strip.RiverStrip;
import org.ouzelbook.ui.strip.SeasonsScene;
import org.ouzelbook.ui.strip.SvgPen;

/**
 * The page for the local group: one HTML file that needs nothing else, the finding first. It is made for the public: it tells
 * no nest, no single record, and no person. The same book and program give the same bytes.
 */
public final class SeasonReport {
    private static final double STRIP_WIDTH = 1100;
    private static final double STRIP_HEIGHT = 520;
    private static final double FIGURE_WIDTH = 760;
    private static final double FIGURE_HEIGHT = 300;

    private final SeasonFindings findings;
    private final TerritoryMap map;
    private final FindingWords words;
    private final Html html = new Html();

    private SeasonReport(SeasonFindings findings) {
        this.findings = findings;
        this.map = findings.map();
        this.words = new FindingWords(findings);
    }

    /**
     * {@return the page, as HTML}
     *
     * @param findings what it tells
     */
    public static String html(SeasonFindings findings) {
        return new SeasonReport(findings).page();
    }

    private String page() {
        html.markup("<!DOCTYPE html>\n")
                .open("html", "lang", Locale.ENGLISH.getLanguage())
                .open("head")
                .markup(
                        "<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
                .element("title", words.title())
                .markup("<style>\n" + style() + "</style>\n")
                .close("head")
                .open("body");
        finding();
        sureness();
        strip();
        new SeasonTable(findings).write(html);
        figure();
        findings.benthos().ifPresent(benthos -> new FoodTable(benthos).write(html));
        caveats();
        method();
        records();
        section("report.care").element("p", Texts.of("report.care.text")).close("section");
        html.open("footer").text(Texts.of("report.footer")).close("footer");
        return html.close("body").close("html").toString();
    }

    private void finding() {
        html.open("header")
                .element("h1", words.title())
                .element("p", words.walked())
                .close("header");
        html.element("p", words.count(), "class", "finding");
        html.element("p", words.direction(), "class", "direction");
        html.element("p", words.countCaveat(), "class", "small");
    }

    private void sureness() {
        section("report.sure");
        html.list(words.sureness()).close("section");
    }

    private void strip() {
        SeasonsScene scene = SeasonsScene.of(
                findings.records(),
                findings.seasons().stream().map(PublicMap::of).toList());
        if (scene.waters().list().isEmpty()) {
            return;
        }
        Frame frame = Frame.fitting(scene.waters(), STRIP_WIDTH, STRIP_HEIGHT);
        section("report.strip").open("figure");
        html.markup(SvgPen.write(RiverStrip.seasons(scene, frame, Optional.empty()), Palette.LIGHT, "strip"));
        html.element("figcaption", Texts.of("report.strip.caption", PublicMap.GRID_METRES))
                .close("figure")
                .close("section");
    }

    private void figure() {
        section("report.figure").open("figure");
        html.markup(
                SvgPen.write(CountFigure.of(findings.trend(), FIGURE_WIDTH, FIGURE_HEIGHT), Palette.LIGHT, "counts"));
        html.element("figcaption", Texts.of("report.figure.caption"))
                .close("figure")
                .close("section");
    }

    private void caveats() {
        List<Message> warnings = new ArrayList<>(PublicMap.warnings(map.warnings()));
        warnings.addAll(PublicMap.warnings(findings.trend().warnings()));
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
        section("report.method").element("p", Texts.of("report.method.text")).open("dl");
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
        section("report.records")
                .element(
                        "p",
                        Texts.of(
                                "report.records.text",
                                visits,
                                sightings,
                                Year.of(findings.seasons().get(0).season()),
                                Year.of(last)))
                .close("section");
    }

    private Html section(String key) {
        return html.open("section").element("h2", Texts.of(key));
    }

    private static String style() {
        try (InputStream in = SeasonReport.class.getResourceAsStream("report.css")) {
            if (in == null) {
                throw new IllegalStateException("report.css is missing from the program");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("report.css", e);
        }
    }
}
