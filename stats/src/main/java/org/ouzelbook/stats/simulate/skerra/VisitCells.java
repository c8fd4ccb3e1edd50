package org.ouzelbook.stats.simulate.skerra;

import java.util.function.Function;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Visit;

/** What stands in the cells of a table of visits, by the words that a {@link Layout} has for it. */
record VisitCells(Style style) {
    Function<Visit, String> cell(String kind) {
        return switch (kind) {
            case "label" -> Visit::label;
            case "date" -> visit -> style.day(visit.date());
            case "from time to time" -> this::interval;
            case "start" -> visit -> visit.start().map(style::clock).orElse("");
            case "end" -> visit -> visit.end().map(style::clock).orElse("");
            case "river" -> visit -> Skerra.name(visit.riverId());
            case "from km" ->
                visit -> visit.walked()
                        .map(walked -> style.number(walked.lower().km(), 1))
                        .orElse("");
            case "to km" ->
                visit -> visit.walked()
                        .map(walked -> style.number(walked.upper().km(), 1))
                        .orElse("");
            case "direction" -> visit -> visit.direction().map(Words::full).orElse("");
            case "mode" -> visit -> visit.mode().map(Words::full).orElse("");
            case "observers" -> visit -> String.join(", ", visit.observers());
            case "level" -> Visit::level;
            case "weather" -> Visit::weather;
            case "weather in degrees" -> VisitCells::celsius;
            case "y or n" -> visit -> visit.effective() ? "y" : "n";
            case "yes or no" -> visit -> visit.effective() ? "yes" : "no";
            case "Yes or No" -> visit -> visit.effective() ? "Yes" : "No";
            case "codes" -> visit -> species(visit, Species::code, ", ");
            case "names" -> visit -> species(visit, Species::englishName, "; ");
            case "scientific names" -> visit -> species(visit, Species::scientificName, " | ");
            case "bus fare" -> visit -> visit.walked().isPresent() ? "3.40" : "";
            case "note" -> Visit::note;
            default -> throw new IllegalArgumentException("A visit has no " + kind);
        };
    }

    private static String species(Visit visit, Function<Species, String> name, String between) {
        return visit.lookedFor().stream().map(name).collect(Collectors.joining(between));
    }

    private static String celsius(Visit visit) {
        int degrees = visit.date().getDayOfYear() / 14;
        return visit.weather().isEmpty() ? "" : degrees + " °C – " + visit.weather();
    }

    private String interval(Visit visit) {
        String day = style.day(visit.date());
        return visit.start().isPresent() && visit.end().isPresent()
                ? day + "T" + style.clock(visit.start().get()) + "/" + day + "T"
                        + style.clock(visit.end().get())
                : day;
    }
}
