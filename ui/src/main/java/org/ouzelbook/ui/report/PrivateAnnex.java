package org.ouzelbook.ui.report;

import java.time.Year;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.ui.app.SeasonFindings;
import org.ouzelbook.ui.app.Texts;

/**
 * What the report keeps back, for people who may know it: nests, rings and exact places of one season. It is made only where
 * somebody asks for it by name, is a file of its own, and says on every page what it is. The names of people are not in it either.
 */
public final class PrivateAnnex implements Paper {
    private final SeasonFindings findings;

    private PrivateAnnex(SeasonFindings findings) {
        this.findings = findings;
    }

    /**
     * {@return the annex to a season’s report}
     *
     * @param findings the findings of the season
     */
    public static PrivateAnnex of(SeasonFindings findings) {
        return new PrivateAnnex(findings);
    }

    @Override
    public String page(Medium medium) {
        return new Written(findings, new Page(medium)).page();
    }

    /** The annex while it is written. */
    private static final class Written {
        private final TerritoryMap map;
        private final SurveyRecords records;
        private final Page page;
        private final Html html;

        private Written(SeasonFindings findings, Page page) {
            this.map = findings.map();
            this.records = findings.records();
            this.page = page;
            this.html = page.body();
        }

        private String page() {
            html.element("div", Texts.of("annex.band"), "class", "band");
            String title = Texts.of("annex.title", map.species(), Year.of(map.season()));
            html.element("h1", title).element("p", Texts.of("annex.cautions"), "class", "cautions");
            nests();
            territories();
            places();
            birds();
            return page.document(title, "annex", false);
        }

        private void nests() {
            List<Nest> nests = records.nests().stream()
                    .filter(nest -> nest.species().equals(map.species()) && isOfTheSeason(nest))
                    .sorted(Comparator.comparing(Nest::label))
                    .toList();
            table("nests", List.of("nest", "river", "km", "position", "bank", "site", "height", "note"), rows -> {
                for (Nest nest : nests) {
                    rows.add(List.of(
                            nest.label(),
                            river(nest.place()),
                            km(nest.place()),
                            position(nest.place()),
                            word(nest.place().bank()),
                            word(nest.site()),
                            nest.heightMetres().isPresent()
                                    ? String.format(
                                            Locale.ROOT,
                                            "%.1f m",
                                            nest.heightMetres().getAsDouble())
                                    : "",
                            nest.note()));
                }
            });
            table(
                    "checks",
                    List.of("nest", "date", "time", "stage", "eggs", "young", "adults", "outcome", "note"),
                    rows -> {
                        for (Nest nest : nests) {
                            checks(nest).forEach(check -> rows.add(check(nest, check)));
                        }
                    });
        }

        private boolean isOfTheSeason(Nest nest) {
            return nest.found().map(day -> day.getYear() == map.season()).orElse(false)
                    || !checks(nest).isEmpty();
        }

        private List<NestCheck> checks(Nest nest) {
            return records.nestChecks().stream()
                    .filter(check ->
                            check.nestId().equals(nest.id()) && check.date().getYear() == map.season())
                    .sorted(Comparator.comparing(NestCheck::date))
                    .toList();
        }

        private static List<String> check(Nest nest, NestCheck check) {
            return List.of(
                    nest.label(),
                    Texts.of("annex.word", check.date()),
                    check.time().map(time -> Texts.of("annex.word", time)).orElse(""),
                    check.stageText().isBlank() ? word(check.stage()) : check.stageText(),
                    number(check.eggs()),
                    number(check.young()),
                    number(check.adults()),
                    check.outcome().map(Written::word).orElse(""),
                    check.note());
        }

        private void territories() {
            List<TerritoryMap.RiverMap> rivers = map.rivers();
            table("territories", List.of("territory", "river", "stretch", "evidence", "records"), rows -> {
                for (TerritoryMap.RiverMap river : rivers) {
                    for (Territory territory : river.territories()) {
                        rows.add(List.of(
                                territory.id(),
                                river.river().name(),
                                Texts.of("annex.word", territory.stretch()),
                                territory
                                        .evidence()
                                        .map(evidence ->
                                                Integer.toString(evidence.code().number()))
                                        .orElse(""),
                                territory.registrations().stream()
                                        .map(Sighting::label)
                                        .filter(label -> !label.isBlank())
                                        .collect(Collectors.joining(", "))));
                    }
                }
            });
        }

        private void places() {
            List<Sighting> seen = records.sightings().stream()
                    .filter(sighting -> sighting.species().equals(map.species())
                            && sighting.date().getYear() == map.season())
                    .sorted(Comparator.comparing(Sighting::date)
                            .thenComparing(sighting -> sighting.place().chainage()))
                    .toList();
            table(
                    "places",
                    List.of("sighting", "date", "time", "river", "km", "position", "count", "what", "rings", "note"),
                    rows -> {
                        for (Sighting sighting : seen) {
                            rows.add(List.of(
                                    sighting.label(),
                                    Texts.of("annex.word", sighting.date()),
                                    sighting.time()
                                            .map(time -> Texts.of("annex.word", time))
                                            .orElse(""),
                                    river(sighting.place()),
                                    km(sighting.place()),
                                    position(sighting.place()),
                                    Integer.toString(sighting.count()),
                                    sighting.activities().stream()
                                            .sorted()
                                            .map((Activity activity) -> word(activity))
                                            .collect(Collectors.joining(", ")),
                                    sighting.rings(),
                                    sighting.note()));
                        }
                    });
        }

        private void birds() {
            List<RingedBird> birds = records.ringedBirds().stream()
                    .sorted(Comparator.comparing(RingedBird::label))
                    .toList();
            table("birds", List.of("bird", "left", "right", "ring", "sex", "hatched", "ringed", "note"), rows -> {
                for (RingedBird bird : birds) {
                    rows.add(List.of(
                            bird.label(),
                            leg(bird.leftUpper(), bird.leftLower()),
                            leg(bird.rightUpper(), bird.rightLower()),
                            bird.ring(),
                            word(bird.sex()),
                            bird.hatched()
                                    .map(year -> Texts.of("annex.word", year))
                                    .orElse(""),
                            bird.ringed()
                                    .map(day -> Texts.of("annex.word", day))
                                    .orElse(""),
                            bird.note()));
                }
            });
        }

        private void table(String name, List<String> columns, Consumer<List<List<String>>> fill) {
            html.open("section").element("h2", Texts.of("annex." + name));
            List<List<String>> rows = new ArrayList<>();
            fill.accept(rows);
            if (rows.isEmpty()) {
                html.element("p", Texts.of("annex.none")).close("section");
                return;
            }
            html.open("div", "class", "scroll").open("table").open("thead").open("tr");
            columns.forEach(column -> html.element("th", Texts.of("annex.column." + column), "scope", "col"));
            html.close("tr").close("thead").open("tbody");
            for (List<String> row : rows) {
                html.open("tr");
                row.forEach(cell -> html.element("td", cell));
                html.close("tr");
            }
            html.close("tbody").close("table").close("div").close("section");
        }

        private String river(Place place) {
            return records.rivers().river(place.riverId()).name();
        }

        private static String km(Place place) {
            return String.format(Locale.ROOT, "%.3f ± %.0f m", place.chainage().km(), place.uncertaintyMetres());
        }

        /** Degrees with five decimals: a metre or so. */
        private String position(Place place) {
            Optional<GeoPoint> point =
                    records.rivers().measuredLine(place.riverId()).flatMap(line -> line.point(place.chainage()));
            return point.map(one -> String.format(Locale.ROOT, "%.5f, %.5f", one.latitude(), one.longitude()))
                    .orElse("");
        }

        private static String leg(String upper, String lower) {
            return upper.isBlank() ? lower : upper + " / " + lower;
        }

        private static String word(Enum<?> term) {
            return Texts.of("annex.word", term);
        }

        private static String number(OptionalInt number) {
            return number.isPresent() ? Integer.toString(number.getAsInt()) : "";
        }
    }
}
