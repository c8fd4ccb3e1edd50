package org.ouzelbook.ui.window;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.NestsDue;
import org.ouzelbook.stats.survey.SeasonMaps;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.ui.app.PlanAnswer;
import org.ouzelbook.ui.app.Scope;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.TrendWords;
import org.ouzelbook.ui.strip.CalendarFigure;
import org.ouzelbook.ui.strip.CalendarFigure.Figure;
import org.ouzelbook.ui.strip.CalendarFigure.Placed;
import org.ouzelbook.ui.window.Explanation.Section;

/** The calendar: which visits are due, where one more tells most, and what all this effort can show. */
final class CalendarViewModel {
    private final BookViewModel book;
    private final Work work;
    private final LocalDate today;
    private final ReadOnlyObjectWrapper<Optional<Explanation>> told = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<Explanation>> effort = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<Figure>> picture = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<Placed>> chosen = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final BooleanProperty nestsShown = new SimpleBooleanProperty();
    private double width = 900;
    private Optional<PlanAnswer> plan = Optional.empty();
    private final ReadOnlyBooleanWrapper stopped = new ReadOnlyBooleanWrapper();
    private final ReadOnlyStringWrapper refusal = new ReadOnlyStringWrapper("");

    /**
     * @param book the book
     * @param work does the reading
     * @param today no visit is planned before this day
     */
    CalendarViewModel(BookViewModel book, Work work, LocalDate today) {
        this.book = book;
        this.work = work;
        this.today = today;
        nestsShown.addListener((property, before, now) -> plan.ifPresent(this::show));
    }

    /** {@return the visits to make; empty until read, or where there is nothing to plan} */
    ReadOnlyObjectProperty<Optional<Explanation>> told() {
        return told.getReadOnlyProperty();
    }

    /** {@return what the effort can show; empty until read, or where there is nothing to plan} */
    ReadOnlyObjectProperty<Optional<Explanation>> effort() {
        return effort.getReadOnlyProperty();
    }

    /** {@return the season's months with what is due and what was done; empty until read, or where there is nothing to plan} */
    ReadOnlyObjectProperty<Optional<Figure>> picture() {
        return picture.getReadOnlyProperty();
    }

    /** {@return what is looked at on the picture} */
    ReadOnlyObjectProperty<Optional<Placed>> chosen() {
        return chosen.getReadOnlyProperty();
    }

    /**
     * Looks at the next thing on the picture: what is due first, by day, then what was done.
     *
     * @param step 1 for the next, −1 for the one before
     */
    void choose(int step) {
        picture.get().map(Figure::places).filter(places -> !places.isEmpty()).ifPresent(places -> {
            int before = chosen.get().map(places::indexOf).orElse(-1);
            int next = before < 0 && step < 0 ? places.size() - 1 : before + step;
            chosen.set(Optional.of(places.get(Math.floorMod(next, places.size()))));
        });
    }

    /**
     * Looks at what lies at a point of the picture, or at nothing.
     *
     * @param x to the right, in pixels
     * @param y downwards, in pixels
     */
    void chooseAt(double x, double y) {
        chosen.set(picture.get().stream()
                .flatMap(figure -> figure.places().stream())
                .filter(one -> one.area().contains(x, y))
                .findFirst());
    }

    /**
     * Gives the picture other paper.
     *
     * @param newWidth width, in pixels
     */
    void resize(double newWidth) {
        if (Math.abs(newWidth - width) >= 1 && newWidth >= 480) {
            width = newWidth;
            plan.ifPresent(this::draw);
        }
    }

    private void draw(PlanAnswer answer) {
        chosen.set(Optional.empty());
        picture.set(book.contents()
                .get()
                .map(contents -> CalendarFigure.of(
                        Texts.of("window.calendar.picture", answer.season()),
                        new CalendarRows(contents, answer, today).rows(nestsShown.get()),
                        today,
                        MapSettings.usualFor(answer.species()).seasonFrom().atYear(answer.season()),
                        width)));
    }

    /** {@return whether nests are told; where they are is private} */
    BooleanProperty nestsShown() {
        return nestsShown;
    }

    /** {@return whether somebody stopped the planning} */
    ReadOnlyBooleanProperty stopped() {
        return stopped.getReadOnlyProperty();
    }

    /** {@return why there is nothing to plan; blank if there is} */
    ReadOnlyStringProperty refusal() {
        return refusal.getReadOnlyProperty();
    }

    /** Reads the plan of the season that is still to be walked, for the species shown. */
    void read() {
        Optional<SeasonMaps> mapped = book.contents().get().map(BookContents::mapped);
        if (mapped.isEmpty()) {
            return;
        }
        SeasonMaps seasons = mapped.get();
        Scope asked = scope();
        stopped.set(false);
        work.start(
                Texts.of("window.work.planning"),
                progress -> PlanAnswer.of(seasons, asked, today, progress),
                this::show,
                failure -> {
                    stopped.set(failure instanceof CancellationException);
                    plan = Optional.empty();
                    told.set(Optional.empty());
                    effort.set(Optional.empty());
                    picture.set(Optional.empty());
                    chosen.set(Optional.empty());
                    refusal.set(stopped.get() ? Texts.of("window.calendar.stopped") : FailureWords.of(failure));
                });
    }

    /** The season that is still to be walked: this year's, or the next one's once this one's is over. */
    private Scope scope() {
        Species species = book.species();
        boolean over =
                MonthDay.from(today).isAfter(MapSettings.usualFor(species).seasonTo());
        Scope all = Scope.everything().of(species);
        return new Scope(
                species,
                Optional.of(today.getYear() + (over ? 1 : 0)),
                all.from(),
                all.to(),
                all.river(),
                all.reach(),
                all.level());
    }

    private void show(PlanAnswer answer) {
        plan = Optional.of(answer);
        draw(answer);
        tell(answer);
    }

    private void tell(PlanAnswer plan) {
        refusal.set("");
        told.set(Optional.of(new Explanation(
                Texts.of("window.calendar.title", plan.species(), Integer.toString(plan.season())),
                Texts.of("window.calendar.today", today),
                List.of(visits(plan), worth(plan), samples(plan), nests()))));
        effort.set(Optional.of(new Explanation("", "", List.of(beforeYouGo(), power(plan), cautions(plan)))));
    }

    private static Section visits(PlanAnswer plan) {
        List<String> lines = new ArrayList<>();
        plan.calendar()
                .forEach(window -> lines.add(
                        Texts.of("cli.plan.window", window.river(), window.visit(), window.from(), window.to())));
        if (lines.isEmpty()) {
            lines.add(Texts.of("cli.plan.noVisit"));
        } else {
            lines.add(Texts.of(
                    "window.calendar.spacing",
                    MapSettings.usualFor(plan.species()).minimumSpreadDays()));
        }
        return new Section(Texts.of("window.calendar.visits"), lines);
    }

    private static Section worth(PlanAnswer plan) {
        List<String> lines = plan.worthMaking().stream()
                .map(worth -> Texts.of(
                        "window.calendar.worth",
                        worth.river(),
                        worth.fromKm(),
                        worth.toKm(),
                        worth.visits(),
                        worth.territories()))
                .toList();
        return new Section(
                Texts.of("window.calendar.where"),
                lines.isEmpty() ? List.of(Texts.of("window.calendar.nowhere")) : lines);
    }

    private Section samples(PlanAnswer plan) {
        List<String> lines = new ArrayList<>(book.contents().get().stream()
                .flatMap(contents -> new CalendarRows(contents, plan, today).samplesDue().stream())
                .toList());
        lines.add(Texts.of(lines.isEmpty() ? "window.calendar.noSamples" : "window.calendar.samplesHow"));
        return new Section(Texts.of("window.calendar.samples"), lines);
    }

    private Section nests() {
        List<NestsDue.Due> due = book.contents().get().stream()
                .flatMap(contents -> NestsDue.of(contents.records(), contents.species(), today).due().stream())
                .toList();
        if (due.isEmpty()) {
            return new Section(Texts.of("window.calendar.nests"), List.of(Texts.of("window.calendar.noNests")));
        }
        if (!nestsShown.get()) {
            return new Section(
                    Texts.of("window.calendar.nests"), List.of(Texts.of("window.calendar.nestsHidden", due.size())));
        }
        List<String> lines = new ArrayList<>();
        due.forEach(one -> lines.add(CalendarRows.words(one)));
        lines.add(Texts.of("window.calendar.nestsPrivate"));
        return new Section(Texts.of("window.calendar.nests"), lines);
    }

    private static Section beforeYouGo() {
        return new Section(
                Texts.of("window.caution.title"),
                Pattern.compile("\n+")
                        .splitAsStream(Texts.of("window.caution.text"))
                        .toList());
    }

    /** {@return the visits and where one more tells most, as plain text to print; nests are never in it} */
    String asText() {
        return told.get().stream()
                .flatMap(one -> Stream.concat(
                        Stream.of(one.title(), one.subtitle()),
                        one.sections().stream()
                                .filter(section -> !section.heading().equals(Texts.of("window.calendar.nests")))
                                .flatMap(section -> Stream.concat(
                                        Stream.of("", section.heading()),
                                        section.sentences().stream().map(line -> "  " + line)))))
                .collect(Collectors.joining(System.lineSeparator()));
    }

    private static Section power(PlanAnswer plan) {
        List<String> lines = new ArrayList<>();
        plan.why().ifPresent(why -> lines.add(TrendWords.sentence(Texts.of(why))));
        if (!plan.choices().isEmpty()) {
            lines.add(Texts.of(
                    "cli.plan.present",
                    plan.territories(),
                    plan.surveyedKm(),
                    plan.visits(),
                    plan.countedSeasons(),
                    plan.detection()));
        }
        for (PlanAnswer.Choice choice : plan.choices()) {
            lines.add(Texts.of(
                    "window.calendar.choice",
                    TrendWords.sentenceCase(Texts.word(choice.way())),
                    choice.powerForHalving(),
                    choice.smallestFall().isPresent()
                            ? Texts.of(
                                    "window.calendar.fall",
                                    String.format(
                                            Locale.ROOT,
                                            "%.1f",
                                            Math.abs(choice.smallestFall().getAsDouble())))
                            : choice.why().map(Texts::of).orElse("")));
        }
        return new Section(Texts.of("window.calendar.shows"), lines);
    }

    private static Section cautions(PlanAnswer plan) {
        return new Section(
                Texts.of("window.why.warnings"),
                plan.warnings().stream()
                        .map(warning -> TrendWords.sentence(TrendWords.sentenceCase(Texts.of(warning))))
                        .toList());
    }
}
