package org.ouzelbook.ui.cli;

import com.google.gson.JsonElement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.ui.app.BookHistory;
import org.ouzelbook.ui.app.DecisionAnswer;
import org.ouzelbook.ui.app.ShowRecords;
import org.ouzelbook.ui.app.ShownRecords;
import org.ouzelbook.ui.app.SightingAnswer;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.VisitAnswer;

/**
 * Records of one kind under headings; what is not known stays blank.
 *
 * @param name what the records are called, which is also their name in JSON
 * @param columns the columns
 */
record RecordTable<T>(String name, List<Column<T>> columns) {
    /**
     * One column.
     *
     * @param heading key of its heading
     * @param value what stands in it
     */
    record Column<T>(String heading, Function<T, Object> value) {}

    static final RecordTable<ShownRecords.RiverLine> RIVERS = new RecordTable<>(
            "rivers",
            List.of(
                    new Column<>("show.heading.river", ShownRecords.RiverLine::river),
                    new Column<>("show.heading.joins", ShownRecords.RiverLine::mouthOn),
                    new Column<>("show.heading.atKm", ShownRecords.RiverLine::mouthKm),
                    new Column<>("show.heading.fromKm", ShownRecords.RiverLine::fromKm),
                    new Column<>("show.heading.toKm", ShownRecords.RiverLine::toKm),
                    new Column<>("show.heading.line", ShownRecords.RiverLine::lineVersion),
                    new Column<>("show.heading.source", ShownRecords.RiverLine::source)));

    static final RecordTable<ShownRecords.LandmarkLine> LANDMARKS = new RecordTable<>(
            "landmarks",
            List.of(
                    new Column<>("show.heading.river", ShownRecords.LandmarkLine::river),
                    new Column<>("show.heading.km", ShownRecords.LandmarkLine::km),
                    new Column<>("show.heading.landmark", ShownRecords.LandmarkLine::landmark),
                    new Column<>("show.heading.kind", ShownRecords.LandmarkLine::kind),
                    new Column<>("show.heading.aliases", ShownRecords.LandmarkLine::aliases),
                    new Column<>("show.heading.nestSite", ShownRecords.LandmarkLine::nestSite)));

    static final RecordTable<ShownRecords.ReachLine> REACHES = new RecordTable<>(
            "reaches",
            List.of(
                    new Column<>("show.heading.river", ShownRecords.ReachLine::river),
                    new Column<>("show.heading.fromKm", ShownRecords.ReachLine::fromKm),
                    new Column<>("show.heading.toKm", ShownRecords.ReachLine::toKm),
                    new Column<>("show.heading.reach", ShownRecords.ReachLine::reach)));

    static final RecordTable<VisitAnswer> VISITS = new RecordTable<>(
            "visits",
            List.of(
                    new Column<>("show.heading.visit", VisitAnswer::visit),
                    new Column<>("show.heading.date", VisitAnswer::date),
                    new Column<>("show.heading.start", VisitAnswer::start),
                    new Column<>("show.heading.end", VisitAnswer::end),
                    new Column<>("show.heading.river", VisitAnswer::river),
                    new Column<>("show.heading.fromKm", VisitAnswer::fromKm),
                    new Column<>("show.heading.toKm", VisitAnswer::toKm),
                    new Column<>("show.heading.observers", VisitAnswer::observers),
                    new Column<>("show.heading.sightings", VisitAnswer::sightings),
                    new Column<>("show.heading.notSeen", VisitAnswer::notSeen)));

    static final RecordTable<SightingAnswer> SIGHTINGS = new RecordTable<>(
            "sightings",
            List.of(
                    new Column<>("show.heading.date", SightingAnswer::date),
                    new Column<>("show.heading.time", SightingAnswer::time),
                    new Column<>("show.heading.river", SightingAnswer::river),
                    new Column<>("show.heading.km", SightingAnswer::km),
                    new Column<>("show.heading.species", SightingAnswer::species),
                    new Column<>("show.heading.count", SightingAnswer::count),
                    new Column<>("show.heading.activity", SightingAnswer::activities),
                    new Column<>("show.heading.flewToKm", SightingAnswer::flewToKm),
                    new Column<>("show.heading.visit", SightingAnswer::visit),
                    new Column<>("show.heading.note", SightingAnswer::note)));

    static final RecordTable<ShownRecords.NestLine> NESTS = new RecordTable<>(
            "nests",
            List.of(
                    new Column<>("show.heading.nest", ShownRecords.NestLine::nest),
                    new Column<>("show.heading.river", ShownRecords.NestLine::river),
                    new Column<>("show.heading.km", ShownRecords.NestLine::km),
                    new Column<>("show.heading.species", ShownRecords.NestLine::species),
                    new Column<>("show.heading.site", ShownRecords.NestLine::site),
                    new Column<>("show.heading.found", ShownRecords.NestLine::found),
                    new Column<>("show.heading.checks", ShownRecords.NestLine::checks),
                    new Column<>("show.heading.lastCheck", ShownRecords.NestLine::lastCheck),
                    new Column<>("show.heading.stage", ShownRecords.NestLine::lastStage),
                    new Column<>("show.heading.outcome", ShownRecords.NestLine::outcome)));

    static final RecordTable<ShownRecords.BirdLine> BIRDS = new RecordTable<>(
            "birds",
            List.of(
                    new Column<>("show.heading.bird", ShownRecords.BirdLine::bird),
                    new Column<>("show.heading.leftUpper", ShownRecords.BirdLine::leftUpper),
                    new Column<>("show.heading.leftLower", ShownRecords.BirdLine::leftLower),
                    new Column<>("show.heading.rightUpper", ShownRecords.BirdLine::rightUpper),
                    new Column<>("show.heading.rightLower", ShownRecords.BirdLine::rightLower),
                    new Column<>("show.heading.ring", ShownRecords.BirdLine::ring),
                    new Column<>("show.heading.sex", ShownRecords.BirdLine::sex),
                    new Column<>("show.heading.hatched", ShownRecords.BirdLine::hatched),
                    new Column<>("show.heading.ringed", ShownRecords.BirdLine::ringed)));

    static final RecordTable<ShownRecords.SampleLine> SAMPLES = new RecordTable<>(
            "samples",
            List.of(
                    new Column<>("show.heading.sample", ShownRecords.SampleLine::sample),
                    new Column<>("show.heading.date", ShownRecords.SampleLine::date),
                    new Column<>("show.heading.river", ShownRecords.SampleLine::river),
                    new Column<>("show.heading.km", ShownRecords.SampleLine::km),
                    new Column<>("show.heading.minutes", ShownRecords.SampleLine::minutes),
                    new Column<>("show.heading.sampler", ShownRecords.SampleLine::sampler),
                    new Column<>("show.heading.taxa", sample -> sample.taxa().size())));

    static final RecordTable<DecisionAnswer> DECISIONS = new RecordTable<>(
            "decisions",
            List.of(
                    new Column<>("show.heading.number", DecisionAnswer::number),
                    new Column<>("show.heading.season", DecisionAnswer::season),
                    new Column<>("show.heading.species", DecisionAnswer::species),
                    new Column<>("show.heading.river", DecisionAnswer::river),
                    new Column<>("show.heading.decision", DecisionAnswer::kind),
                    new Column<>("show.heading.km", DecisionAnswer::km),
                    new Column<>("show.heading.by", DecisionAnswer::by),
                    new Column<>("show.heading.on", DecisionAnswer::on),
                    new Column<>("show.heading.because", DecisionAnswer::note)));

    static final RecordTable<ShownRecords.FileLine> FILES = new RecordTable<>(
            "files",
            List.of(
                    new Column<>("show.heading.file", ShownRecords.FileLine::file),
                    new Column<>("show.heading.rows", ShownRecords.FileLine::rows)));

    static final RecordTable<BookHistory.Line> HISTORY = new RecordTable<>(
            "history",
            List.of(
                    new Column<>("show.heading.step", BookHistory.Line::step),
                    new Column<>("show.heading.date", BookHistory.Line::date),
                    new Column<>("show.heading.time", BookHistory.Line::time),
                    new Column<>("show.heading.who", BookHistory.Line::who),
                    new Column<>("show.heading.added", BookHistory.Line::added),
                    new Column<>("show.heading.changed", BookHistory.Line::changed),
                    new Column<>("show.heading.removed", BookHistory.Line::removed),
                    new Column<>("show.heading.undone", BookHistory.Line::undone),
                    new Column<>("show.heading.what", BookHistory.Line::what)));

    /**
     * Prints records of which nobody is the owner.
     *
     * @param records the records
     * @param terminal where to
     * @param json whether as JSON, under their name
     */
    void print(List<T> records, Terminal terminal, boolean json) {
        printOwned(ShowRecords.Owned.byNobody(records), terminal, json);
    }

    /**
     * Prints the records, each with its owner where the book was put together from those of several people.
     *
     * @param records the records
     * @param terminal where to
     * @param json whether as JSON, under their name
     */
    void printOwned(List<ShowRecords.Owned<T>> records, Terminal terminal, boolean json) {
        if (json) {
            Json.print(Map.of(name, records.stream().map(RecordTable::tree).toList()), terminal.out());
            return;
        }
        if (records.isEmpty()) {
            terminal.out().println(Texts.of("show.none"));
            return;
        }
        List<String> headings = new ArrayList<>(
                columns.stream().map(column -> Texts.of(column.heading())).toList());
        boolean together = records.stream().anyMatch(one -> one.owner().isPresent());
        if (together) {
            headings.add(Texts.of("show.heading.owner"));
        }
        Table table = Table.of(headings.toArray(String[]::new));
        for (ShowRecords.Owned<T> one : records) {
            List<String> cells = new ArrayList<>(columns.stream()
                    .map(column -> cell(column.value().apply(one.line())))
                    .toList());
            if (together) {
                cells.add(one.owner().orElse(""));
            }
            table.add(cells.toArray(String[]::new));
        }
        table.print(terminal);
    }

    private static JsonElement tree(ShowRecords.Owned<?> one) {
        JsonElement line = Json.tree(one.line());
        one.owner().ifPresent(owner -> line.getAsJsonObject().addProperty("owner", owner));
        return line;
    }

    private static String cell(Object value) {
        if (value instanceof Optional<?> optional) {
            return optional.map(RecordTable::cell).orElse("");
        }
        if (value instanceof OptionalDouble number) {
            return number.isPresent() ? String.format(Locale.ROOT, "%.1f", number.getAsDouble()) : "";
        }
        if (value instanceof Boolean yes) {
            return yes ? Texts.of("show.yes") : "";
        }
        return value instanceof Message message ? Texts.of(message) : Texts.word(value);
    }
}
