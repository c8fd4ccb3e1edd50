package org.ouzelbook.ui.report;

import java.util.List;
import java.util.Locale;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Picture;
import org.ouzelbook.ui.strip.Rect;
import org.ouzelbook.ui.strip.SvgPen;

/**
 * A drawing that tells, on a screen, what a place on it stands for: under the mouse, at a tap, or by the arrow keys once the drawing
 * has been reached with the tabulator. The words stand in a line below it. On paper it is the drawing alone.
 */
final class ToldPicture {
    private ToldPicture() {}

    /**
     * A place that tells something.
     *
     * @param area where it lies on the drawing
     * @param words what is told
     */
    record Told(Rect area, String words) {}

    /**
     * Writes a drawing.
     *
     * @param page where to
     * @param picture the drawing
     * @param prefix begins every identifier in it
     * @param paperWidthMm its width on paper, in mm
     * @param told the places that tell something, the lowest first
     */
    static void write(Page page, Picture picture, String prefix, double paperWidthMm, List<Told> told) {
        String svg = SvgPen.write(picture, page.palette(), prefix);
        Html html = page.body();
        if (!page.onScreen()) {
            html.markup(sized(svg, picture, paperWidthMm));
            return;
        }
        int end = svg.lastIndexOf("</svg>");
        html.open("div", "class", "told", "tabindex", "0", "role", "group", "aria-label", picture.title())
                .open("div", "class", "drawing")
                .markup(svg.substring(0, end))
                .open("g", "class", "places", "fill", "transparent");
        told.forEach(one -> html.empty(
                "rect",
                "x",
                number(one.area().x()),
                "y",
                number(one.area().y()),
                "width",
                number(one.area().width()),
                "height",
                number(one.area().height()),
                "data-words",
                one.words()));
        html.close("g").markup(svg.substring(end)).close("div");
        html.element("p", Texts.of("report.told.how"), "class", "words", "aria-live", "polite")
                .close("div");
    }

    /**
     * {@return a drawing of a set size on paper, its heavier letters asked for by their family, and told in words to those who
     *     have the pages read to them}
     *
     * @param svg the drawing
     * @param picture what was drawn
     * @param widthMm its width, in mm
     */
    static String sized(String svg, Picture picture, double widthMm) {
        double heightMm = picture.height() * widthMm / picture.width();
        String told = Html.escaped(picture.title() + ". " + picture.description());
        return svg.replace(" role=\"img\"", " role=\"img\" alt=\"" + told + "\"")
                .replace("font-weight=\"600\"", "font-family=\"" + HouseFont.FAMILY_OF_SEMIBOLD + "\"")
                .replaceFirst(
                        "width=\"[^\"]*\" height=\"[^\"]*\"",
                        "width=\"" + number(widthMm) + "mm\" height=\"" + number(heightMm) + "mm\"");
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
