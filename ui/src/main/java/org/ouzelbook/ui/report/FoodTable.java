package org.ouzelbook.ui.report;

import java.util.Locale;
import org.ouzelbook.stats.survey.BenthosScore;
import org.ouzelbook.ui.app.Texts;

/** What the kick samples held, beside the birds, with the caution that belongs to it. */
final class FoodTable {
    private final BenthosScore benthos;

    FoodTable(BenthosScore benthos) {
        this.benthos = benthos;
    }

    void write(Html html) {
        if (benthos.beside().isEmpty()) {
            return;
        }
        html.open("section", "class", "food").element("h2", Texts.of("report.food"));
        html.element("p", Texts.of(benthos.caution()));
        html.open("div", "class", "scroll").open("table");
        html.element("caption", Texts.of("report.food.caption")).open("thead").open("tr");
        for (String column : new String[] {"season", "water", "perKm", "samples", "prey", "bmwp", "aspt"}) {
            html.element(
                    "th",
                    Texts.of("report.food." + column),
                    "scope",
                    "col",
                    "class",
                    column.equals("water") ? "words" : "number");
        }
        html.close("tr").close("thead").open("tbody");
        benthos.beside().forEach(row -> row(html, row));
        html.close("tbody").close("table").close("div").close("section");
    }

    private static void row(Html html, BenthosScore.Beside row) {
        html.open("tr")
                .element("td", Integer.toString(row.season()))
                .element("td", row.water(), "class", "words")
                .element("td", number("%.2f", row.perKm()))
                .element("td", Integer.toString(row.samples()))
                .element("td", number("%.1f", row.prey()))
                .element("td", number("%.0f", row.score()))
                .element(
                        "td",
                        row.average().isPresent() ? number("%.2f", row.average().getAsDouble()) : "–")
                .close("tr");
    }

    private static String number(String format, double value) {
        return String.format(Locale.ROOT, format, value);
    }
}
