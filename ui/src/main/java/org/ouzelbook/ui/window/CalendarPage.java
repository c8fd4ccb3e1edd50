package org.ouzelbook.ui.window;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.Clipboard;
import javafx.scene.input.ClipboardContent;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.CalendarFigure;

/** The calendar: visits due, where one more tells most, what the effort can show, and the cautions before each visit. */
final class CalendarPage implements Page {
    private static final double MOST_HIGH = 330;
    private static final double BESIDE = 62;

    private final CalendarViewModel calendar;
    private final Sentences told = new Sentences();
    private final Sentences effort = new Sentences();
    private final Label title = Sentences.line("", "heading");
    private final PictureView picture;
    private final ScrollPane months = new ScrollPane();
    private final Label chosen = Sentences.line("", "sentence");
    private final Button again = new Button(Texts.of("window.calendar.again"));
    private final VBox page = new VBox();
    private boolean justOpened;
    private final Keys keys = new Keys("window.calendar.name");

    /**
     * @param book the book
     * @param work does the planning
     * @param look how the window looks
     */
    CalendarPage(BookViewModel book, Work work, Look look) {
        this.calendar = new CalendarViewModel(book, work, LocalDate.now(ZoneId.systemDefault()));
        this.picture = new PictureView(look);
        page.getStyleClass().addAll("page", "calendar");
        picture.setFocusTraversable(true);
        picture.setAccessibleHelp(Texts.of("window.calendar.legend"));
        picture.setOnMouseClicked(event -> calendar.chooseAt(event.getX(), event.getY()));
        months.getStyleClass().addAll("told", "months");
        months.setContent(picture);
        months.setFocusTraversable(false);
        months.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        months.setMinHeight(Region.USE_PREF_SIZE);
        HBox words = new HBox(24, told, effort);
        VBox.setVgrow(words, Priority.ALWAYS);
        again.setAccessibleText(again.getText());
        again.setOnAction(event -> open());
        again.visibleProperty().bind(calendar.stopped());
        again.managedProperty().bind(again.visibleProperty());
        page.getChildren().setAll(title, months, chosen, again, words);
        page.widthProperty()
                .addListener((property, before, now) -> calendar.resize(Math.floor(now.doubleValue() - BESIDE)));
        calendar.picture().addListener((property, before, now) -> draw(now));
        calendar.chosen().addListener((property, before, now) -> mark(now));
        HBox.setHgrow(told, Priority.ALWAYS);
        HBox.setHgrow(effort, Priority.ALWAYS);
        told.setPrefWidth(500);
        effort.setPrefWidth(500);
        calendar.told().addListener((property, before, now) -> now.ifPresent(this::tell));
        calendar.effort().addListener((property, before, now) -> now.ifPresent(effort::tell));
        keys.on("window.calendar.next", () -> calendar.choose(1), Stroke.of(KeyCode.RIGHT))
                .on("window.calendar.before", () -> calendar.choose(-1), Stroke.of(KeyCode.LEFT))
                .offer(
                        "window.calendar.showNests",
                        "window.calendar.nestsHint",
                        this::switchNests,
                        Stroke.of(KeyCode.P))
                .offer("window.calendar.copy", "window.calendar.copyHint", this::copy, Stroke.command(KeyCode.C));
        calendar.refusal().addListener((property, before, now) -> refuse(now));
        book.contents().addListener((property, before, now) -> {
            if (page.getParent() != null) {
                calendar.read();
            }
        });
    }

    private void tell(Explanation words) {
        title.setText(Texts.of("window.calendar.heading", words.title(), words.subtitle()));
        told.tell(new Explanation("", "", words.sections()));
    }

    private void draw(Optional<CalendarFigure.Figure> figure) {
        months.setVisible(figure.isPresent());
        months.setManaged(figure.isPresent());
        chosen.setManaged(figure.isPresent());
        figure.ifPresent(one -> {
            picture.show(one.picture());
            months.setPrefHeight(Math.min(MOST_HIGH, one.picture().height() + 14));
            if (justOpened) {
                justOpened = false;
                picture.requestFocus();
            }
        });
        mark(calendar.chosen().get());
    }

    /** What is looked at is said under the picture; with nothing looked at, how the picture is to be read. */
    private void mark(Optional<CalendarFigure.Placed> one) {
        one.ifPresentOrElse(placed -> picture.mark(placed.area()), picture::unmark);
        chosen.setText(one.map(placed -> placed.item().words()).orElseGet(() -> Texts.of("window.calendar.legend")));
    }

    private void switchNests() {
        calendar.nestsShown().set(!calendar.nestsShown().get());
    }

    /** Puts the plan among what can be pasted into a letter, or printed from any editor. */
    private void copy() {
        ClipboardContent text = new ClipboardContent();
        text.putString(calendar.asText());
        Clipboard.getSystemClipboard().setContent(text);
    }

    private void refuse(String why) {
        if (!why.isEmpty()) {
            title.setText(name());
            told.tell(new Explanation("", why, List.of()));
            effort.tell(new Explanation("", "", List.of()));
            if (again.isVisible()) {
                again.requestFocus();
            }
        }
    }

    @Override
    public String name() {
        return Texts.of("window.calendar.name");
    }

    @Override
    public Node node() {
        return page;
    }

    @Override
    public Keys keys() {
        return keys;
    }

    @Override
    public void open() {
        if (calendar.picture().get().isEmpty()) {
            title.setText(name());
            told.tell(new Explanation("", Texts.of("window.work.planning"), List.of()));
        }
        justOpened = true;
        calendar.read();
        page.requestFocus();
    }
}
