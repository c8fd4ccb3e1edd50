package org.ouzelbook.ui.report;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.ui.app.FieldWater;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Ink;
import org.ouzelbook.ui.strip.Palette;
import org.ouzelbook.ui.strip.Picture;
import org.ouzelbook.ui.strip.SvgPen;

/**
 * Sheets to take along the water and to write on with a pencil: a page for every few km of each stretch that is walked, in black
 * and white. They tell where the landmarks are, and nothing of birds.
 */
public final class FieldSheet implements Paper {
    /** More km to a page would leave no room to write. Common practice, no source. */
    private static final double MOST_METRES = 4000;

    private static final double WIDTH_MM = 190;
    private static final double STRIP_MM = 200;
    private static final double LINE_MM = 7;

    /** The room of a heading on one line, and on two with the rest of a word at the end of the first taken off, in heights of its letters. */
    private static final double ONE_LINE = 30;

    private static final double TWO_LINES = 58;

    private static final Palette BLACK = black();

    private final FieldWater water;
    private final boolean isPrivate;

    private FieldSheet(FieldWater water, boolean isPrivate) {
        this.water = water;
        this.isPrivate = isPrivate;
    }

    /**
     * {@return the sheets for some water}
     *
     * @param water what is walked
     * @param isPrivate whether names on it may tell what must stay private; then each sheet says so
     */
    public static FieldSheet of(FieldWater water, boolean isPrivate) {
        return new FieldSheet(water, isPrivate);
    }

    private static Palette black() {
        Map<Ink, String> colours = new EnumMap<>(Palette.LIGHT.colours());
        colours.replaceAll((ink, colour) -> "#000000");
        colours.put(Ink.PAPER, "#ffffff");
        colours.put(Ink.GRID, "#9a9a9a");
        colours.put(Ink.WALKED, "#666666");
        colours.put(Ink.WATER, "#e6e6e6");
        colours.put(Ink.STONE, "#555555");
        return new Palette(colours);
    }

    @Override
    public String page(Medium medium) {
        Page page = new Page(medium);
        for (FieldWater.Walk walk : water.walks()) {
            List<Stretch> parts = parts(walk.stretch());
            for (int i = 0; i < parts.size(); i++) {
                sheet(page, walk, parts, i);
            }
        }
        String title = Texts.of(
                "sheet.title", water.walks().stream().map(FieldWater.Walk::name).collect(Collectors.joining(", ")));
        return page.document(title, "sheet", false);
    }

    /** The pages of a stretch, going upstream, all of about one length; they meet at whole 100 m where that makes none too long. */
    private static List<Stretch> parts(Stretch stretch) {
        int pages = (int) Math.max(1, Math.ceil(stretch.length() / MOST_METRES - 1e-6));
        List<Double> ends = new ArrayList<>();
        for (int i = 0; i <= pages; i++) {
            double exact = stretch.lower().metres() + stretch.length() * i / pages;
            double round = Math.round(exact / 100) * 100.0;
            boolean meets = i > 0 && i < pages && round - ends.get(i - 1) <= MOST_METRES;
            ends.add(meets ? round : exact);
        }
        return IntStream.range(0, pages)
                .mapToObj(i -> new Stretch(new Chainage(ends.get(i)), new Chainage(ends.get(i + 1))))
                .toList();
    }

    private void sheet(Page page, FieldWater.Walk walk, List<Stretch> parts, int part) {
        Html html = page.body();
        String heading = heading(walk.name(), parts.get(part));
        html.open("section", "class", "sheet");
        html.open("header")
                .element("h1", heading)
                .element("p", Texts.of("sheet.part", part + 1, parts.size()))
                .close("header");
        if (isPrivate) {
            html.element("p", Texts.of("sheet.private"), "class", "private");
        }
        boxes(html);
        int linesMore = (isPrivate ? 1 : 0) + (HouseFont.SEMIBOLD.width(heading) > ONE_LINE ? 1 : 0);
        Picture picture = new SheetStrip(water, walk, parts.get(part), STRIP_MM - linesMore * LINE_MM).picture();
        String svg = SvgPen.write(
                picture, BLACK, "sheet" + letters(page.body().toString().length()));
        html.open("figure")
                .markup(page.onScreen() ? svg : ToldPicture.sized(svg, picture, WIDTH_MM))
                .close("figure");
        key(html);
        html.element("p", Texts.of("sheet.cautions"), "class", "cautions").close("section");
    }

    /** The name, cut where the heading would need a third line, and the km. */
    private static String heading(String name, Stretch part) {
        double room = TWO_LINES - HouseFont.SEMIBOLD.width(Texts.of("sheet.heading", "", part));
        return Texts.of("sheet.heading", HouseFont.SEMIBOLD.cut(name, room), part);
    }

    /** A name of letters only for a number. */
    private static String letters(int number) {
        return Integer.toString(number, 26)
                .chars()
                .map(digit -> 'a' + Character.digit(digit, 26))
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }

    private static void boxes(Html html) {
        html.open("table", "class", "boxes");
        row(html, "date", "observers", "start", "end");
        row(html, "direction", "weather", "level", "back");
        html.open("tr").open("td", "colspan", "2");
        label(html, "lookedFor");
        birds(html);
        html.close("td").open("td", "colspan", "2");
        label(html, "notSeen");
        birds(html);
        html.close("td").close("tr").close("table");
    }

    private static void row(Html html, String... boxes) {
        html.open("tr");
        for (String box : boxes) {
            html.open("td", "class", box);
            label(html, box);
            html.close("td");
        }
        html.close("tr");
    }

    private static void label(Html html, String box) {
        html.element("span", Texts.of("sheet.box." + box), "class", "label");
    }

    private static void birds(Html html) {
        html.open("div", "class", "birds");
        for (Species species : Species.all()) {
            html.element("span", "", "class", "tick").element("span", species.code(), "class", "code");
        }
        html.close("div");
    }

    private static void key(Html html) {
        String birds = Species.all().stream()
                .map(species -> species.code() + " " + species.englishName())
                .collect(Collectors.joining(", "));
        html.element("p", Texts.of("sheet.key.line", birds), "class", "key");
        html.element("p", Texts.of("sheet.key.marks"), "class", "key");
    }
}
