package org.ouzelbook.ui.report;

import com.google.gson.Gson;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.river.MeasuredLine;
import org.ouzelbook.ui.app.FieldWater;
import org.ouzelbook.ui.app.Texts;

/**
 * The notebook for a phone: one page that needs no network. It finds its place along the water, keeps what is tapped on the phone,
 * and hands it out as tables that {@code import} reads. It knows the lines of the rivers and their landmarks; of nests, rings,
 * people and earlier birds it knows nothing.
 */
public final class PocketPage implements Paper {
    private static final String TEXTS = "pocket.say.";

    /** What a bird can be seen to do, in the order of the buttons: our word, and what is written in the table. */
    private static final Map<String, String> DOING = doing();

    private final FieldWater water;
    private final boolean isPrivate;

    private PocketPage(FieldWater water, boolean isPrivate) {
        this.water = water;
        this.isPrivate = isPrivate;
    }

    /**
     * {@return the page for some water}
     *
     * @param water where one walks
     * @param isPrivate whether names on it may tell what must stay private; then the page says so
     */
    public static PocketPage of(FieldWater water, boolean isPrivate) {
        return new PocketPage(water, isPrivate);
    }

    private static Map<String, String> doing() {
        Map<String, String> doing = new LinkedHashMap<>();
        doing.put("seen", "");
        doing.put("singing", "singing");
        doing.put("calling", "calling");
        doing.put("pair", "pair");
        doing.put("feeding", "feeding");
        doing.put("alarm", "alarm");
        doing.put("up", "flying up");
        doing.put("down", "flying down");
        doing.put("display", "display");
        doing.put("material", "carrying nest material");
        doing.put("food", "carrying food");
        doing.put("sac", "carrying faecal sac");
        doing.put("juvenile", "");
        doing.put("young", "dependent young");
        doing.put("dead", "dead");
        return doing;
    }

    @Override
    public String page(Medium medium) {
        Page page = new Page(Medium.SCREEN);
        Html html = page.body();
        html.element("p", Texts.of("pocket.noScript"), "id", "needs-script");
        html.open("div", "id", "app", "hidden", "hidden");
        place(html);
        html.open("main");
        if (isPrivate) {
            html.element("p", Texts.of("pocket.private"), "class", "private");
        }
        html.open("div", "id", "warning", "role", "alert", "hidden", "hidden").close("div");
        visit(html);
        bird(html);
        html.open("section", "id", "last", "hidden", "hidden")
                .element("p", "", "id", "said", "role", "status")
                .open("div", "id", "last-more")
                .close("div")
                .close("section");
        landmarks(html);
        notes(html);
        html.open("section", "class", "care")
                .element("h2", Texts.of("pocket.care"))
                .element("p", Texts.of("pocket.care.text"))
                .element("p", Texts.of("pocket.about"))
                .close("section");
        html.close("main");
        start(html);
        end(html);
        html.close("div");
        html.open("script", "type", "application/json", "id", "water")
                .markup(json())
                .close("script");
        return page.document(Texts.of("pocket.title", names()), "pocket", true);
    }

    private List<String> names() {
        return water.walks().stream()
                .map(walk -> walk.river().name())
                .distinct()
                .toList();
    }

    private static void place(Html html) {
        html.open("header")
                .element("p", "", "id", "where")
                .element("p", "", "id", "fix")
                .open("div", "class", "row", "id", "nudges", "hidden", "hidden");
        button(html, "down50", "pocket.down50");
        button(html, "up50", "pocket.up50");
        button(html, "follow", "pocket.follow");
        html.close("div").close("header");
    }

    private static void visit(Html html) {
        html.open("section", "id", "visit").element("p", "", "id", "running");
        button(html, "begin", "pocket.begin");
        button(html, "finish", "pocket.finish");
        html.close("section");
    }

    private static void bird(Html html) {
        html.open("section", "id", "bird").element("h2", Texts.of("pocket.which"));
        html.open("div", "class", "grid species");
        for (Species species : Species.all()) {
            html.open("button", "type", "button", "data-species", species.englishName(), "aria-pressed", "false")
                    .element("b", species.code())
                    .element("span", species.englishName())
                    .close("button");
        }
        html.close("div").element("h2", Texts.of("pocket.what"));
        html.open("div", "class", "grid doing");
        DOING.forEach((name, written) -> html.element(
                "button",
                Texts.of("pocket.do." + name),
                "type",
                "button",
                "data-doing",
                name,
                "data-written",
                written));
        html.close("div").close("section");
    }

    private static void landmarks(Html html) {
        html.open("section", "id", "landmarks-part")
                .element("h2", Texts.of("pocket.landmarks"))
                .element("p", Texts.of("pocket.landmarks.how"), "class", "how")
                .open("ul", "id", "landmarks")
                .close("ul")
                .close("section");
    }

    private static void notes(Html html) {
        html.open("section", "id", "notes-part")
                .element("h2", Texts.of("pocket.notes"))
                .open("ul", "id", "notes")
                .close("ul")
                .element("p", "", "id", "kept");
        button(html, "save", "pocket.save");
        button(html, "send", "pocket.send");
        html.element("p", Texts.of("pocket.save.how"), "class", "how");
        button(html, "clear", "pocket.clear");
        html.close("section");
    }

    private static void start(Html html) {
        html.open("dialog", "id", "start").open("form", "method", "dialog").element("h2", Texts.of("pocket.begin"));
        html.element("p", Texts.of("pocket.start.safety"), "class", "how");
        html.open("label")
                .text(Texts.of("pocket.river"))
                .open("select", "id", "start-river")
                .close("select")
                .close("label");
        field(html, "start-from", "pocket.from", "decimal");
        choice(html, "start-direction", "pocket.direction", "", "upstream", "downstream");
        html.open("fieldset").element("legend", Texts.of("pocket.lookedFor")).open("div", "class", "grid ticks");
        for (Species species : Species.all()) {
            html.open("label", "class", "tick")
                    .empty("input", "type", "checkbox", "value", species.englishName(), "checked", "checked")
                    .text(species.code())
                    .close("label");
        }
        html.close("div").close("fieldset");
        field(html, "start-observers", "pocket.observers", "text");
        choice(html, "start-level", "pocket.level", "", "low", "normal", "high", "spate");
        choice(html, "start-weather", "pocket.weather", "", "dry", "showers", "rain", "wind", "snow");
        html.element("p", "", "id", "start-problem", "class", "problem", "role", "alert");
        html.open("div", "class", "row");
        html.element("button", Texts.of("pocket.notYet"), "type", "button", "data-close", "start");
        html.element("button", Texts.of("pocket.begin"), "type", "button", "id", "begin-now", "class", "main");
        html.close("div").close("form").close("dialog");
    }

    private static void end(Html html) {
        html.open("dialog", "id", "end").open("form", "method", "dialog").element("h2", Texts.of("pocket.finish"));
        field(html, "end-to", "pocket.to", "decimal");
        html.open("label")
                .text(Texts.of("pocket.endAt"))
                .empty("input", "id", "end-at", "type", "time")
                .close("label");
        html.open("ul", "id", "seen").close("ul");
        html.open("label", "class", "tick wide")
                .empty("input", "type", "checkbox", "id", "end-effective", "checked", "checked")
                .text(Texts.of("pocket.effective"))
                .close("label");
        field(html, "end-note", "pocket.note", "text");
        html.element("p", "", "id", "end-problem", "class", "problem", "role", "alert");
        html.open("div", "class", "row");
        html.element("button", Texts.of("pocket.notYet"), "type", "button", "data-close", "end");
        html.element("button", Texts.of("pocket.finish"), "type", "button", "id", "finish-now", "class", "main");
        html.close("div").close("form").close("dialog");
    }

    private static void button(Html html, String id, String key) {
        html.element("button", Texts.of(key), "type", "button", "id", id);
    }

    private static void field(Html html, String id, String key, String keys) {
        html.open("label")
                .text(Texts.of(key))
                .empty("input", "id", id, "type", "text", "inputmode", keys, "autocomplete", "off")
                .close("label");
    }

    private static void choice(Html html, String id, String key, String... choices) {
        html.open("label").text(Texts.of(key)).open("select", "id", id);
        for (String choice : choices) {
            html.element("option", choice, "value", choice);
        }
        html.close("select").close("label");
    }

    /** A phone opens no paper, whatever the file is called. */
    @Override
    public Medium medium(Path file) {
        return Medium.SCREEN;
    }

    /**
     * What the script works with, a line for each part, so that what is found on one can be told by its line; Gson writes every
     * {@code <} so that no name can end the element.
     */
    private String json() {
        Map<String, Object> told = new LinkedHashMap<>();
        List<River> rivers = water.network().inOrderOfWater();
        told.put("key", rivers.get(0).id().toString());
        told.put(
                "rivers", rivers.stream().flatMap(river -> line(river).stream()).toList());
        told.put("landmarks", water.landmarks().stream().map(this::landmark).toList());
        told.put("texts", texts());
        Gson gson = new Gson();
        return told.entrySet().stream()
                .map(part -> gson.toJson(part.getKey()) + ":" + gson.toJson(part.getValue()))
                .collect(Collectors.joining(",\n", "{", "}"));
    }

    private Optional<Map<String, Object>> line(River river) {
        Optional<RiverLine> line = water.network().line(river.id());
        return line.map(one -> {
            List<List<Number>> points = new ArrayList<>();
            double metres = one.lowerEnd().metres();
            for (int i = 0; i < one.points().size(); i++) {
                if (i > 0) {
                    metres += MeasuredLine.length(one.points().subList(i - 1, i + 1));
                }
                points.add(List.of(
                        rounded(one.points().get(i).latitude(), 1e6),
                        rounded(one.points().get(i).longitude(), 1e6),
                        rounded(metres, 10)));
            }
            return Map.of("name", river.name(), "points", points);
        });
    }

    private Map<String, Object> landmark(Landmark landmark) {
        return new TreeMap<>(Map.of(
                "name", landmark.name(),
                "river", water.network().river(landmark.place().riverId()).name(),
                "metres", rounded(landmark.place().chainage().metres(), 10)));
    }

    private static double rounded(double value, double by) {
        return Math.round(value * by) / by;
    }

    /** The script’s own words, their facts still numbered. */
    private static Map<String, String> texts() {
        Map<String, String> texts = new TreeMap<>();
        for (String key : Texts.keys()) {
            if (key.startsWith(TEXTS)) {
                texts.put(key.substring(TEXTS.length()), Texts.of(key, "{0}", "{1}", "{2}", "{3}"));
            }
        }
        for (String name : DOING.keySet()) {
            texts.put("do." + name, Texts.of("pocket.do." + name).toLowerCase(Locale.ROOT));
        }
        return texts;
    }
}
