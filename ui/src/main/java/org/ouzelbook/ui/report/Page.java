package org.ouzelbook.ui.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Ink;
import org.ouzelbook.ui.strip.Palette;

/** A page while it is written: its head, its style, and its body for one medium. */
final class Page {
    /** The colours on white paper. */
    private static final Palette ON_PAPER = onWhite();

    /** The room of the foot beside the number of the page, in heights of its letters. */
    private static final double FOOT = 52;

    private final Medium medium;
    private final Html body = new Html();

    Page(Medium medium) {
        this.medium = medium;
    }

    Html body() {
        return body;
    }

    boolean onScreen() {
        return medium == Medium.SCREEN;
    }

    Palette palette() {
        return onScreen() ? Palette.LIGHT : ON_PAPER;
    }

    private static Palette onWhite() {
        Map<Ink, String> colours = new EnumMap<>(Palette.LIGHT.colours());
        colours.put(Ink.PAPER, "#ffffff");
        return new Palette(colours);
    }

    /**
     * {@return the whole page}
     *
     * @param title what it is called
     * @param name the name of its style: {@code NAME.css} on the screen, {@code NAME-paper.css} on paper, and {@code NAME.js} if {@code scripted}
     * @param scripted whether a script belongs to it on the screen
     */
    String document(String title, String name, boolean scripted) {
        Html html = new Html();
        html.markup("<!DOCTYPE html>\n")
                .open("html", "lang", Locale.ENGLISH.getLanguage())
                .open("head")
                .empty("meta", "charset", "utf-8")
                .empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1")
                .element("title", title);
        String contents = onScreen() ? body.toString() : HouseFont.onPaper(body.toString());
        String foot = onScreen() ? "" : foot(title, contents);
        String script = scripted && onScreen() ? resource(name + ".js") : "";
        String style = HouseFont.rulesFor(contents + script + title + foot)
                + (onScreen() ? "" : HouseFont.rulesForDrawings(contents))
                + resource(onScreen() ? name + ".css" : name + "-paper.css");
        html.markup("<style>\n" + style + "</style>\n").close("head").open("body");
        if (!onScreen()) {
            html.element("div", foot, "class", foot.indexOf(HouseFont.LACKING) < 0 ? "running" : "running lacking");
        }
        html.markup(contents);
        if (!script.isEmpty()) {
            html.markup("<script>\n" + script + "</script>\n");
        }
        return html.close("body").close("html").toString();
    }

    /** One line: the title as far as there is room, and what stands for letters that the font lacks. */
    private static String foot(String title, String contents) {
        String shown = HouseFont.onPaper(title);
        boolean lacks = (contents + shown).indexOf(HouseFont.LACKING) >= 0;
        String note = lacks ? " · " + Texts.of("paper.lacking", Character.toString(HouseFont.LACKING)) : "";
        return HouseFont.REGULAR.cut(shown, FOOT - HouseFont.REGULAR.width(note)) + note;
    }

    private static String resource(String file) {
        try (InputStream in = Page.class.getResourceAsStream(file)) {
            if (in == null) {
                throw new IllegalStateException(file + " is missing from the program");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(file, e);
        }
    }
}
