package org.ouzelbook.ui.strip;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.ouzelbook.ui.strip.Shape.Step;

/** Draws a strip as SVG 1.1 text that needs nothing else: no script, no picture, no font to fetch. */
public final class SvgPen {
    private static final String FAMILY = "'Source Sans 3','Liberation Sans',Arial,Helvetica,sans-serif";

    private final Palette palette;
    private final StringBuilder body = new StringBuilder();
    private final Map<String, String> fades = new LinkedHashMap<>();
    private final String prefix;

    private SvgPen(Palette palette, String prefix) {
        this.palette = palette;
        this.prefix = prefix;
    }

    /**
     * {@return a drawing as an {@code svg} element, with its title and description for screen readers}
     *
     * @param drawing the drawing
     * @param palette the colours
     * @param prefix begins every identifier inside, so that several drawings can stand in one page; letters only
     */
    public static String write(StripDrawing drawing, Palette palette, String prefix) {
        return write(drawing.picture(), palette, prefix);
    }

    /**
     * {@return a picture as an {@code svg} element, with its title and description for screen readers}
     *
     * @param drawing the picture
     * @param palette the colours
     * @param prefix begins every identifier inside, so that several pictures can stand in one page; letters only
     */
    public static String write(Picture drawing, Palette palette, String prefix) {
        SvgPen pen = new SvgPen(palette, prefix);
        drawing.shapes().forEach(pen::draw);
        return pen.document(drawing);
    }

    private String document(Picture drawing) {
        String width = number(drawing.width());
        String height = number(drawing.height());
        StringBuilder svg = new StringBuilder();
        svg.append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%s\" height=\"%s\" viewBox=\"0 0 %s %s\""
                .formatted(width, height, width, height));
        svg.append(" role=\"img\" aria-labelledby=\"%stitle %sdesc\" font-family=\"%s\">\n"
                .formatted(prefix, prefix, FAMILY));
        svg.append("<title id=\"%stitle\">%s</title>\n".formatted(prefix, escaped(drawing.title())));
        svg.append("<desc id=\"%sdesc\">%s</desc>\n".formatted(prefix, escaped(drawing.description())));
        if (!fades.isEmpty()) {
            svg.append("<defs>\n");
            fades.values().forEach(svg::append);
            svg.append("</defs>\n");
        }
        svg.append(
                "<rect width=\"%s\" height=\"%s\" fill=\"%s\"/>\n".formatted(width, height, palette.colour(Ink.PAPER)));
        return svg.append(body).append("</svg>\n").toString();
    }

    private void draw(Shape shape) {
        if (shape instanceof Shape.Line line) {
            element("<line x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\"%s/>"
                    .formatted(
                            number(line.from().x()),
                            number(line.from().y()),
                            number(line.to().x()),
                            number(line.to().y()),
                            stroke(line.pencil())));
        } else if (shape instanceof Shape.Path path) {
            element("<path d=\"%s\"%s%s/>".formatted(steps(path), fill(path.fill()), stroke(path.outline())));
        } else if (shape instanceof Shape.Disc disc) {
            element("<circle cx=\"%s\" cy=\"%s\" r=\"%s\"%s%s/>"
                    .formatted(
                            number(disc.centre().x()),
                            number(disc.centre().y()),
                            number(disc.radius()),
                            fill(disc.fill()),
                            stroke(disc.outline())));
        } else if (shape instanceof Shape.Box box) {
            element("<rect%s rx=\"%s\"%s%s/>"
                    .formatted(place(box.area()), number(box.radius()), fill(box.fill()), stroke(box.outline())));
        } else if (shape instanceof Shape.Band band) {
            element("<rect%s fill=\"url(#%s)\"/>".formatted(place(band.area()), fade(band)));
        } else if (shape instanceof Shape.Hatch hatch) {
            element("<rect%s fill=\"%s\"/>".formatted(place(hatch.area()), palette.colour(Ink.UNWALKED)));
            StringBuilder lines = new StringBuilder();
            hatch.lines()
                    .forEach(line -> lines.append("M%s %sL%s %s"
                            .formatted(
                                    number(line.from().x()),
                                    number(line.from().y()),
                                    number(line.to().x()),
                                    number(line.to().y()))));
            element("<path d=\"%s\"%s/>".formatted(lines, stroke(Pencil.solid(Ink.HATCHING, 1))));
        } else if (shape instanceof Shape.Label label) {
            label(label);
        } else if (shape instanceof Shape.Mark mark) {
            group(mark.parts());
        } else if (shape instanceof Shape.Tablet tablet) {
            group(tablet.parts());
        }
    }

    private void group(List<Shape> parts) {
        body.append("<g>\n");
        parts.forEach(this::draw);
        body.append("</g>\n");
    }

    private void element(String element) {
        body.append(element).append('\n');
    }

    private void label(Shape.Label label) {
        String anchor = switch (label.anchor()) {
            case START -> "start";
            case MIDDLE -> "middle";
            case END -> "end";
        };
        element("<text x=\"%s\" y=\"%s\" text-anchor=\"%s\" font-size=\"%s\"%s fill=\"%s\">%s</text>"
                .formatted(
                        number(label.at().x()),
                        number(label.at().y()),
                        anchor,
                        number(label.type().size()),
                        label.type().semibold() ? " font-weight=\"600\"" : "",
                        palette.colour(label.ink()),
                        escaped(label.text())));
    }

    private static String place(Rect area) {
        return " x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\""
                .formatted(number(area.x()), number(area.y()), number(area.width()), number(area.height()));
    }

    private static String steps(Shape.Path path) {
        StringBuilder steps = new StringBuilder(
                "M" + number(path.start().x()) + " " + number(path.start().y()));
        for (Step step : path.steps()) {
            if (step instanceof Step.Bend bend) {
                steps.append("Q%s %s %s %s"
                        .formatted(
                                number(bend.towards().x()),
                                        number(bend.towards().y()),
                                number(bend.end().x()), number(bend.end().y())));
            } else {
                steps.append("L%s %s"
                        .formatted(number(step.end().x()), number(step.end().y())));
            }
        }
        return path.closed() ? steps.append('Z').toString() : steps.toString();
    }

    private String fade(Shape.Band band) {
        String left = number(100 * Math.min(1, band.fadeLeft() / band.area().width()));
        String right =
                number(100 - 100 * Math.min(1, band.fadeRight() / band.area().width()));
        String colour = palette.colour(band.ink());
        String key = colour + left + "/" + right;
        String id = prefix + "fade"
                + (fades.containsKey(key) ? List.copyOf(fades.keySet()).indexOf(key) : fades.size());
        fades.putIfAbsent(key, """
                <linearGradient id="%s"><stop offset="0%%" stop-color="%s" stop-opacity="%s"/>\
                <stop offset="%s%%" stop-color="%s"/><stop offset="%s%%" stop-color="%s"/>\
                <stop offset="100%%" stop-color="%s" stop-opacity="%s"/></linearGradient>
                """.formatted(
                        id,
                        colour,
                        band.fadeLeft() > 0 ? 0 : 1,
                        left,
                        colour,
                        right,
                        colour,
                        colour,
                        band.fadeRight() > 0 ? 0 : 1));
        return id;
    }

    private String fill(Optional<Ink> ink) {
        return " fill=\"" + ink.map(palette::colour).orElse("none") + "\"";
    }

    private String stroke(Optional<Pencil> pencil) {
        return pencil.map(this::stroke).orElse("");
    }

    private String stroke(Pencil pencil) {
        String dots = pencil.dotted() ? " stroke-dasharray=\"0 %s\"".formatted(number(pencil.dotSpacing())) : "";
        return " stroke=\"%s\" stroke-width=\"%s\" stroke-linecap=\"round\" stroke-linejoin=\"round\"%s"
                .formatted(palette.colour(pencil.ink()), number(pencil.width()), dots);
    }

    private static String number(double value) {
        String text = String.format(Locale.ROOT, "%.2f", value);
        return text.replaceFirst("\\.?0+$", "");
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
