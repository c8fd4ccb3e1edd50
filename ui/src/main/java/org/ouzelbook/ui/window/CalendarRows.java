package org.ouzelbook.ui.window;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.stats.survey.NestsDue;
import org.ouzelbook.stats.survey.SamplesDue;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.ui.app.PlanAnswer;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.CalendarFigure.Item;
import org.ouzelbook.ui.strip.CalendarFigure.Kind;
import org.ouzelbook.ui.strip.CalendarFigure.Row;

/** What a season asks for and what was done of it, row by row: the rivers with their visits, the kick samples, the nests. */
final class CalendarRows {
    private final BookContents contents;
    private final PlanAnswer plan;
    private final LocalDate today;

    /**
     * @param contents what the book holds
     * @param plan the plan of the season
     * @param today the day
     */
    CalendarRows(BookContents contents, PlanAnswer plan, LocalDate today) {
        this.contents = contents;
        this.plan = plan;
        this.today = today;
    }

    /**
     * {@return the rows; nests tell only how many they are unless asked for}
     *
     * @param nests whether nests are told
     */
    List<Row> rows(boolean nests) {
        List<Row> rows = new ArrayList<>();
        contents.records().rivers().rivers().stream()
                .map(this::river)
                .flatMap(Optional::stream)
                .forEach(rows::add);
        if (rows.isEmpty()) {
            rows.add(new Row(Texts.of("window.calendar.visits"), List.of(), Texts.of("cli.plan.noVisit")));
        }
        rows.add(samples());
        rows.add(nests(nests));
        return rows;
    }

    /** A river of which nobody plans or made a visit has no row. */
    private Optional<Row> river(River river) {
        List<Item> items = new ArrayList<>();
        plan.calendar().stream()
                .filter(window -> window.river().equals(river.name()))
                .forEach(window -> items.add(new Item(
                        Kind.VISIT_DUE,
                        window.from(),
                        window.to(),
                        String.valueOf(window.visit()),
                        Texts.of(
                                "window.calendar.visitDue",
                                window.visit(),
                                river.name(),
                                window.from(),
                                window.to()))));
        contents.records().visits().stream()
                .filter(visit -> visit.riverId().equals(river.id())
                        && visit.date().getYear() == plan.season()
                        && visit.lookedFor().contains(plan.species()))
                .map(Visit::date)
                .distinct()
                .forEach(day -> items.add(
                        new Item(Kind.VISITED, day, day, "", Texts.of("window.calendar.visited", river.name(), day))));
        return items.isEmpty()
                ? Optional.empty()
                : Optional.of(new Row(river.name(), items, Texts.of("cli.plan.noVisit")));
    }

    /** {@return the kick samples that are due, in words} */
    List<String> samplesDue() {
        return due().stream().map(this::words).toList();
    }

    private List<SamplesDue.Due> due() {
        return SamplesDue.of(contents.records(), plan.season()).due();
    }

    private String words(SamplesDue.Due due) {
        return Texts.of(
                "window.calendar.sampleDue",
                contents.records().rivers().river(due.place().riverId()).name(),
                due.place().chainage(),
                due.from(),
                due.to(),
                due.last(),
                due.minutes().isPresent() ? 1 : 0,
                due.minutes().orElse(0));
    }

    /** The km alone says where only in a book of one river. */
    private String label(Place place) {
        return contents.records().rivers().rivers().size() == 1
                ? Texts.of("window.calendar.km", place.chainage())
                : Texts.of(
                        "window.calendar.riverKm",
                        contents.records().rivers().river(place.riverId()).name(),
                        place.chainage());
    }

    private Row samples() {
        List<Item> items = new ArrayList<>();
        due().forEach(one ->
                items.add(new Item(Kind.SAMPLE_DUE, one.from(), one.to(), label(one.place()), words(one))));
        contents.records().kickSamples().stream()
                .filter(sample -> sample.date().getYear() == plan.season())
                .forEach(sample -> items.add(new Item(
                        Kind.SAMPLED,
                        sample.date(),
                        sample.date(),
                        "",
                        Texts.of(
                                "window.calendar.sampled",
                                contents.records()
                                        .rivers()
                                        .river(sample.place().riverId())
                                        .name(),
                                sample.place().chainage(),
                                sample.date()))));
        return new Row(Texts.of("window.calendar.samples"), items, Texts.of("window.calendar.noSamples"));
    }

    private Row nests(boolean shown) {
        List<NestsDue.Due> due =
                NestsDue.of(contents.records(), contents.species(), today).due();
        String remark = due.isEmpty()
                ? Texts.of("window.calendar.noNests")
                : Texts.of("window.calendar.nestsHidden", due.size());
        return new Row(
                Texts.of("window.calendar.nestsRow"),
                due.stream()
                        .filter(one -> shown)
                        .map(one -> new Item(
                                Kind.NEST_DUE, one.from(), one.to(), one.nest().label(), words(one)))
                        .toList(),
                remark);
    }

    /**
     * {@return a look at a nest that is due, in words}
     *
     * @param one the nest
     */
    static String words(NestsDue.Due one) {
        return Texts.of(
                "window.calendar.nest",
                one.nest().label(),
                one.nest().place().chainage(),
                one.last(),
                one.stage(),
                one.from(),
                one.to(),
                one.manner());
    }
}
